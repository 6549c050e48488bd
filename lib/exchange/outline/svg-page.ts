import type { Finding } from '#lib/core/result'
import { figure } from '#lib/core/units'
import { lineName, note, Refused, stop } from './finding'
import { composed, type Matrix, translation } from './matrix'
import { fixedUnit, lengthOf, type SvgLength } from './svg-length'
import { numbersOf } from './svg-matrix'
import type { SvgElement } from './svg-xml'
import type { ChosenUnit, FileUnit } from './types'
import { heldUnit, mmPerUnit, overridden } from './unit'

/** How the numbers of a drawing become millimetres of its page, y down. */
export interface SvgPage {
  readonly matrix: Matrix
  /** Height of the page's bottom edge, mm; null where nothing tells the page's height. */
  readonly bottomMm: number | null
  readonly unit: FileUnit | null
  readonly findings: readonly Finding[]
}

interface Box {
  readonly x: number
  readonly y: number
  readonly width: number
  readonly height: number
}

const pxMm = mmPerUnit('px')

/**
 * The page by width, height and viewBox (SVG 1.1, sections 7.2 and 7.7). A bare number is a pixel of 1/96 inch unless
 * a unit was chosen for it. Without a size, or with one in percent, nothing tells the unit.
 */
export function svgPage(root: SvgElement, chosen: ChosenUnit | null): SvgPage {
  const sizes = [lengthOf(root, 'width'), lengthOf(root, 'height')] as const
  const view = viewBoxOf(root)
  const stated = sizes.find((size) => size !== null && fixedUnit(size) !== null) ?? null
  const relative = sizes.filter((size) => size !== null && fixedUnit(size) === null)
  const told = relative.map((size) => relativeSize(root, size!))
  if (stated === null) {
    const { unit, findings } = heldUnit(null, chosen, lineName(root.line))
    const mm = unit === null ? 1 : mmPerUnit(unit)
    const scaled: Matrix = [mm, 0, 0, mm, 0, 0]
    return {
      matrix: view === null ? scaled : composed(scaled, translation(-view.x, -view.y)),
      bottomMm: view === null ? null : view.height * mm,
      unit,
      findings: [...told, ...findings],
    }
  }
  const bare = stated.unit === ''
  const held =
    bare && chosen !== null
      ? { unit: chosen, findings: [] }
      : heldUnit(fixedUnit(stated), chosen, lineName(root.line))
  const bareMm = bare && chosen !== null ? mmPerUnit(chosen) : pxMm
  const [width, height] = sizes.map((size) => sizeMm(size, bareMm)) as [number | null, number | null]
  for (const mm of [width, height]) if (mm !== null && !(mm > 0)) throw noPage(root)
  const unitFindings = [
    ...held.findings,
    ...(bare && chosen !== null
      ? [overridden('pixels, for want of a unit', chosen, lineName(root.line))]
      : []),
  ]
  if (view === null) {
    return {
      matrix: [bareMm, 0, 0, bareMm, 0, 0],
      bottomMm: height,
      unit: held.unit,
      findings: [...told, ...unitFindings, ...(held.unit === chosen && bare ? [] : [inPixels(root, stated)])],
    }
  }
  const scale = (width ?? Number.NaN) / view.width
  const across = Number.isNaN(scale) ? height! / view.height : scale
  const page = { x: 0, y: 0, width: width ?? across * view.width, height: height ?? across * view.height }
  return {
    matrix: viewMatrix(view, page, root.attributes.preserveAspectRatio),
    bottomMm: page.height,
    unit: held.unit,
    findings: [
      ...told,
      ...unitFindings,
      ...(held.unit === 'px' ? [pagePixels(root, page)] : []),
      ...stretched(root, view, page),
    ],
  }
}

/** A viewport inside the drawing: where its contents lie in the numbers round it. */
export function nestedView(element: SvgElement, box: Box): Matrix {
  const view = viewBoxOf(element)
  if (view === null) return translation(box.x, box.y)
  return viewMatrix(view, box, element.attributes.preserveAspectRatio)
}

/** The viewBox; null where there is none. Throws Refused on one without an area. */
export function viewBoxOf(element: SvgElement): Box | null {
  const text = element.attributes.viewBox
  if (text === undefined) return null
  const values = numbersOf(text)
  const [x, y, width, height] = values ?? []
  if (values?.length === 4 && values.every(Number.isFinite) && width! > 0 && height! > 0) {
    return { x: x!, y: y!, width: width!, height: height! }
  }
  throw new Refused(
    stop(
      'svg-view-box',
      `The viewBox "${text.slice(0, 60)}" is not four numbers with a width and a height above 0.`,
      lineName(element.line),
      'Save the drawing again as plain SVG, with its page set to the drawing.',
      { line: element.line },
    ),
  )
}

/** The viewBox laid into its viewport, after preserveAspectRatio: stretched for none, else evenly and aligned. */
function viewMatrix(view: Box, port: Box, preserve: string | undefined): Matrix {
  const words = (preserve ?? 'xMidYMid meet')
    .trim()
    .split(/\s+/)
    .filter((word) => word !== 'defer')
  const [align = 'xMidYMid', fit = 'meet'] = words
  const [sx, sy] = [port.width / view.width, port.height / view.height]
  if (align === 'none') return [sx, 0, 0, sy, port.x - view.x * sx, port.y - view.y * sy]
  const scale = fit === 'slice' ? Math.max(sx, sy) : Math.min(sx, sy)
  const share = (way: string | undefined) => (way === 'Min' ? 0 : way === 'Max' ? 1 : 0.5)
  const [, across, down] = /^x(Min|Mid|Max)Y(Min|Mid|Max)$/.exec(align) ?? []
  const left = port.x + (port.width - view.width * scale) * share(across)
  const top = port.y + (port.height - view.height * scale) * share(down)
  return [scale, 0, 0, scale, left - view.x * scale, top - view.y * scale]
}

function sizeMm(size: SvgLength | null, bareMm: number): number | null {
  const unit = size === null ? null : fixedUnit(size)
  if (size === null || unit === null) return null
  return size.value * (size.unit === '' ? bareMm : mmPerUnit(unit))
}

function relativeSize(root: SvgElement, { value, unit }: SvgLength): Finding {
  return note(
    'svg-relative-size',
    `A size of the page is given as ${value}${unit}, which tells no length; it was not used.`,
    lineName(root.line),
  )
}

function inPixels(root: SvgElement, { value, unit }: SvgLength): Finding {
  return note(
    'svg-pixels',
    `The page is given as ${value}${unit || ' pixels'}, but without a viewBox: the numbers inside it are pixels of 1/96 inch. Check the size.`,
    lineName(root.line),
  )
}

function pagePixels(root: SvgElement, { width, height }: Box): Finding {
  return note(
    'svg-pixels',
    `The page is given in pixels, which are 1/96 inch: it is ${figure(width, 1)} x ${figure(height, 1)} mm. Check the size.`,
    lineName(root.line),
  )
}

/** Stretching more than a rounded page size makes. */
function stretched(root: SvgElement, view: Box, page: Box): readonly Finding[] {
  const [sx, sy] = [page.width / view.width, page.height / view.height]
  if (!/^\s*none/.test(root.attributes.preserveAspectRatio ?? '')) return []
  if (Math.abs(sx / sy - 1) < 1e-3) return []
  const text = `The page stretches the drawing: 1 across becomes ${figure(sx, 4)} mm, 1 down ${figure(sy, 4)} mm. It was read so.`
  return [note('svg-stretched', text, lineName(root.line), { acrossMm: sx, downMm: sy })]
}

function noPage(root: SvgElement): Refused {
  return new Refused(
    stop(
      'svg-page',
      'Width and height of the page must be above 0.',
      lineName(root.line),
      'Set the page to the drawing and save the SVG again.',
      { line: root.line },
    ),
  )
}
