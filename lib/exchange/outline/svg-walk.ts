import { counted, lineName, Refused, stop } from './finding'
import { mostVertices } from './limits'
import { composed, type Matrix, translation } from './matrix'
import type { Path } from './path'
import { shapeLength } from './svg-length'
import { transformOf } from './svg-matrix'
import { nestedView } from './svg-page'
import { svgPaths, tooManyPoints } from './svg-paths'
import { isShape, segmentsOfShape } from './svg-shapes'
import { property } from './svg-style'
import type { SvgElement } from './svg-xml'

/** Why something on the drawing is no part of an outline. */
export type LeftOut = 'hidden' | 'unpainted' | 'stored' | 'lettering'

export interface SvgWalk {
  readonly paths: readonly Path[]
  /** Names of what was left out, with the reason, one for each element. */
  readonly left: readonly { readonly why: LeftOut; readonly element: SvgElement }[]
  /** Elements that a clip path or a mask cuts. */
  readonly clipped: readonly SvgElement[]
}

interface Context {
  readonly toMm: Matrix
  /** Nearest group with a name. */
  readonly layer: string
  readonly visible: boolean
  readonly fill: string
  readonly stroke: string
  readonly clipped: boolean
  /** Elements that `use` is drawing at present, so that none draws itself. */
  readonly using: readonly SvgElement[]
  /** Size that a `use` gives a symbol or drawing. */
  readonly size: Pick<SvgElement, 'attributes'> | null
}

/** Elements drawn, those drawn again by `use` included. */
const mostDrawn = 100_000

/** Copies of copies. */
const deepestUse = 30

const groups = new Set(['svg', 'g', 'a'])
/** Kept for use elsewhere; drawn only where something calls for them. */
const stores = new Set(['defs', 'symbol', 'clipPath', 'mask', 'pattern', 'marker'])
const lettering = new Set([
  'text',
  'image',
  'foreignObject',
  'video',
  'canvas',
  'iframe',
  'textPath',
  'tspan',
])

/**
 * All that the drawing shows, as pieces in mm. `hasSheet`: a style sheet may paint what has a class. Throws Refused on
 * values that can't be used, on links that lead nowhere, and on drawings that grow beyond measure.
 */
export function walkSvg(root: SvgElement, toMm: Matrix, hasSheet: boolean): SvgWalk {
  const named = namedElements(root)
  const paths: Path[] = []
  const left: { why: LeftOut; element: SvgElement }[] = []
  const clipped = new Set<SvgElement>()
  // Once each, however often a copy comes by.
  const stored = new Set<SvgElement>()
  const hidden = new Set<SvgElement>()
  const drawn = new Set<SvgElement>()
  let visits = 0
  let vertices = 0

  const walk = (element: SvgElement, outer: Context): void => {
    visits += 1
    if (visits > mostDrawn) throw growsTooLarge(element)
    if (stores.has(element.name) && outer.size === null) {
      stored.add(element)
      return
    }
    if (property(element, 'display') === 'none') {
      hidden.add(element)
      return
    }
    if (lettering.has(element.name)) {
      left.push({ why: 'lettering', element })
      return
    }
    const inner = contextOf(element, outer, element === root)
    if (isShape(element)) drawShape(element, inner)
    else if (element.name === 'use') drawUse(element, inner)
    else if (element.name === 'switch') {
      const first = element.children.find(({ attributes }) => attributes.requiredExtensions === undefined)
      if (first !== undefined) walk(first, inner)
    } else if (groups.has(element.name) || element.name === 'symbol') {
      drawn.add(element)
      for (const child of element.children) walk(child, { ...inner, size: null })
    }
  }

  const drawShape = (element: SvgElement, context: Context): void => {
    drawn.add(element)
    if (!context.visible) left.push({ why: 'hidden', element })
    else if (isUnpainted(element, context, hasSheet)) left.push({ why: 'unpainted', element })
    else {
      const pieces = svgPaths(element, segmentsOfShape(element), context.toMm, context.layer)
      vertices += pieces.reduce((sum, piece) => sum + piece.vertices.length, 0)
      if (vertices > mostVertices) throw tooManyPoints(element)
      for (const piece of pieces) paths.push(piece)
      if (context.clipped) clipped.add(element)
    }
  }

  const drawUse = (element: SvgElement, context: Context): void => {
    drawn.add(element)
    const target = targetOf(element, named)
    if (context.using.length >= deepestUse) throw growsTooLarge(element)
    if (context.using.includes(target) || target === root) throw drawsItself(element)
    const [x, y] = [shapeLength(element, 'x', 0), shapeLength(element, 'y', 0)]
    walk(target, {
      ...context,
      toMm: composed(context.toMm, translation(x, y)),
      using: [...context.using, target],
      size: element,
    })
  }

  walk(root, {
    toMm,
    layer: '',
    visible: true,
    fill: 'black',
    stroke: 'none',
    clipped: false,
    using: [],
    size: null,
  })
  const notShown = new Set([...hidden].flatMap(shapesIn))
  const unused = new Set([...stored].flatMap(shapesIn).filter((shape) => !drawn.has(shape)))
  return {
    paths,
    left: [
      ...left,
      ...[...notShown].map((element) => ({ why: 'hidden' as const, element })),
      ...[...unused].map((element) => ({ why: 'stored' as const, element })),
    ],
    clipped: [...clipped],
  }
}

function contextOf(element: SvgElement, outer: Context, isRoot: boolean): Context {
  const own = ownTransform(element, isRoot)
  const toMm = composed(outer.toMm, own)
  const isView = !isRoot && (element.name === 'svg' || element.name === 'symbol')
  const visibility = property(element, 'visibility')
  const cut = [property(element, 'clip-path'), property(element, 'mask')]
  return {
    ...outer,
    toMm: isView ? composed(toMm, viewOf(element, outer.size)) : toMm,
    layer: layerName(element) ?? outer.layer,
    visible: visibility === undefined || visibility === 'inherit' ? outer.visible : visibility === 'visible',
    fill: inherited(property(element, 'fill'), outer.fill),
    stroke: inherited(property(element, 'stroke'), outer.stroke),
    clipped: outer.clipped || cut.some((value) => value !== undefined && value !== 'none' && value !== ''),
  }
}

function inherited(own: string | undefined, outer: string): string {
  return own === undefined || own === '' || own === 'inherit' ? outer : own
}

/** The transform of an element. Throws Refused on one that can't be read, or that stands where it isn't read. */
function ownTransform(element: SvgElement, isRoot: boolean): Matrix {
  const { transform } = element.attributes
  const byStyle = property(element, 'transform')
  const matrix = transformOf(transform ?? '')
  const elsewhere =
    (byStyle !== transform && byStyle !== 'none') ||
    property(element, 'transform-origin') !== undefined ||
    (isRoot && transform !== undefined)
  if (matrix !== null && !elsewhere) return matrix
  const what =
    matrix === null
      ? `"${transform!.slice(0, 60)}" of this ${element.name} can't be read`
      : `of this ${element.name} stands in a style or on the page itself, where it is not read`
  throw new Refused(
    stop(
      'svg-transform',
      `The transform ${what}.`,
      lineName(element.line),
      'In the drawing program apply the transforms to the shapes themselves, or put the shapes into a new group, and save it as plain SVG.',
      { line: element.line },
    ),
  )
}

/** The viewport that a symbol or an inner drawing opens; only one with a viewBox needs a size. */
function viewOf(element: SvgElement, size: Context['size']): Matrix {
  const sized: SvgElement = {
    ...element,
    attributes: {
      ...element.attributes,
      ...(size?.attributes.width === undefined ? {} : { width: size.attributes.width }),
      ...(size?.attributes.height === undefined ? {} : { height: size.attributes.height }),
    },
  }
  const isSymbol = element.name === 'symbol'
  const [x, y] = isSymbol ? [0, 0] : [shapeLength(sized, 'x', 0), shapeLength(sized, 'y', 0)]
  if (element.attributes.viewBox === undefined) return translation(x, y)
  const [width, height] = [shapeLength(sized, 'width', 0), shapeLength(sized, 'height', 0)]
  if (width > 0 && height > 0) return nestedView(sized, { x, y, width, height })
  throw new Refused(
    stop(
      'svg-inner-size',
      `This ${element.name} has a viewBox, but no width and height of its own.`,
      lineName(element.line),
      'In the drawing program ungroup it or turn it into paths, and save the SVG again.',
      { line: element.line },
    ),
  )
}

/** A group's name for people where a program gave one, else its id. */
function layerName({ name, attributes }: SvgElement): string | null {
  if (name !== 'g') return null
  const label = Object.keys(attributes).find((key) => key.endsWith(':label'))
  return (label === undefined ? attributes.id : attributes[label]) ?? null
}

/** Neither filled nor drawn with a line, so that nobody has seen it. */
function isUnpainted({ attributes }: SvgElement, { fill, stroke }: Context, hasSheet: boolean): boolean {
  if (hasSheet && attributes.class !== undefined) return false
  return [fill, stroke].every((paint) => paint === 'none' || paint === 'transparent')
}

function namedElements(root: SvgElement): ReadonlyMap<string, SvgElement> {
  const named = new Map<string, SvgElement>()
  const all = [root]
  for (let element = all.pop(); element !== undefined; element = all.pop()) {
    const { id } = element.attributes
    if (id !== undefined && !named.has(id)) named.set(id, element)
    for (const child of [...element.children].reverse()) all.push(child)
  }
  return named
}

function shapesIn(element: SvgElement): readonly SvgElement[] {
  const found: SvgElement[] = []
  const all = [element]
  for (let each = all.pop(); each !== undefined; each = all.pop()) {
    if (isShape(each) || each.name === 'use') found.push(each)
    for (const child of each.children) all.push(child)
  }
  return found
}

function targetOf(element: SvgElement, named: ReadonlyMap<string, SvgElement>): SvgElement {
  const { attributes } = element
  const href =
    attributes.href ?? attributes[Object.keys(attributes).find((key) => key.endsWith(':href')) ?? ''] ?? ''
  const target = href.startsWith('#') ? named.get(href.slice(1)) : undefined
  if (target !== undefined) return target
  throw new Refused(
    stop(
      'svg-use',
      href.startsWith('#')
        ? `This use draws "${href.slice(0, 60)}", which is not in the file.`
        : `This use draws "${href.slice(0, 60)}" from outside the file; nothing outside is fetched.`,
      lineName(element.line),
      'In the drawing program turn copies into shapes of their own, and save the SVG again.',
      { line: element.line },
    ),
  )
}

function drawsItself(element: SvgElement): Refused {
  return new Refused(
    stop(
      'svg-use',
      'This use draws a group that it stands in itself.',
      lineName(element.line),
      'In the drawing program turn copies into shapes of their own, and save the SVG again.',
      { line: element.line },
    ),
  )
}

function growsTooLarge(element: SvgElement): Refused {
  return new Refused(
    stop(
      'svg-too-much',
      `With its copies (use) the drawing shows more than ${counted(mostDrawn, 'element', 'elements')}.`,
      lineName(element.line),
      'Save a drawing that holds nothing but the outline.',
      { mostDrawn },
    ),
  )
}
