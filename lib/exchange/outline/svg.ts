import { type Finding, worst } from '#lib/core/result'
import { figure } from '#lib/core/units'
import { lineName, look, note, stop } from './finding'
import { joinPaths } from './join'
import { mostOfAKind } from './limits'
import { composed } from './matrix'
import { type SvgPage, svgPage } from './svg-page'
import { reshapingProperties } from './svg-style'
import { type LeftOut, type SvgWalk, walkSvg } from './svg-walk'
import { type SvgElement, svgRoot } from './svg-xml'
import type { ChosenUnit, Drawing } from './types'

/**
 * Closed loops of an SVG 1.1 drawing: what it shows of paths and basic shapes, with all transforms, in mm of its
 * page, mirrored once about the page's bottom edge so that v runs up. Throws Refused where the file is damaged.
 */
export function readSvg(text: string, chosen: ChosenUnit | null): Drawing {
  const root = svgRoot(text)
  const page = svgPage(root, chosen)
  const sheets = styleSheets(root)
  const walked = walkSvg(root, composed([1, 0, 0, -1, 0, page.bottomMm ?? 0], page.matrix), sheets.length > 0)
  const joined = joinPaths(walked.paths, page.unit)
  const findings = [
    ...page.findings,
    ...sheetFindings(sheets),
    ...clipFindings(walked),
    ...leftFindings(walked),
    ...joined.findings,
  ]
  const isEmpty = joined.loops.length === 0 && worst(findings) !== 'stop'
  return {
    unit: page.unit,
    ...joined,
    findings: isEmpty ? [nothingDrawn(), ...findings] : findings,
    ...(joined.loops.length === 0 ? {} : { convention: flipped(page) }),
  }
}

function styleSheets(root: SvgElement): readonly SvgElement[] {
  const found: SvgElement[] = []
  const all = [root]
  for (let each = all.pop(); each !== undefined; each = all.pop()) {
    if (each.name === 'style' && each.text.trim() !== '') found.push(each)
    for (const child of each.children) all.push(child)
  }
  return found
}

function sheetFindings(sheets: readonly SvgElement[]): readonly Finding[] {
  return sheets.slice(0, mostOfAKind).map((sheet) => {
    const names = reshapingProperties(sheet.text)
    if (names.length === 0) {
      return note(
        'svg-style-sheet',
        'A style sheet was not read; it sets colours and lines, not where anything lies.',
        lineName(sheet.line),
      )
    }
    return look(
      'svg-style-sheet',
      `A style sheet sets ${names.slice(0, 10).join(', ')}, by which it can hide, move or reshape what is drawn; it was not read.`,
      lineName(sheet.line),
      'Compare the outline with the drawing; or save it as plain SVG with attributes in place of a style sheet.',
      { line: sheet.line },
    )
  })
}

function clipFindings({ clipped }: SvgWalk): readonly Finding[] {
  const [first] = clipped
  if (first === undefined) return []
  return [
    look(
      'svg-clipped',
      `${clipped.length} of what is drawn may be cut by a clip path or a mask; it was read uncut.`,
      lineName(first.line),
      'Compare the outline with the drawing; or release the clip in the drawing program and save the SVG again.',
      { count: clipped.length, line: first.line },
    ),
  ]
}

const reasons: Readonly<Record<LeftOut, string>> = {
  lettering: 'lettering and pictures',
  hidden: 'hidden',
  unpainted: 'with neither fill nor line',
  stored: 'kept for use elsewhere (in defs, a symbol, clip path, mask, pattern or marker)',
}

function leftFindings({ left }: SvgWalk): readonly Finding[] {
  return (['lettering', 'hidden', 'unpainted', 'stored'] as const).flatMap((why) => {
    const found = left.filter((each) => each.why === why).map(({ element }) => element)
    const [first] = found
    if (first === undefined) return []
    return [
      note(
        why === 'lettering' ? 'lettering-left-out' : `${why}-left-out`,
        `Left out, as no part of an outline: ${namesOf(found)}, ${reasons[why]}.`,
        lineName(first.line),
        { count: found.length, line: first.line },
      ),
    ]
  })
}

/** "2 text, 1 image" */
function namesOf(elements: readonly SvgElement[]): string {
  const counts = new Map<string, number>()
  for (const { name } of elements) counts.set(name, (counts.get(name) ?? 0) + 1)
  return [...counts].map(([name, count]) => `${count} ${name}`).join(', ')
}

function flipped({ bottomMm, unit }: SvgPage): Finding {
  const about =
    bottomMm === null
      ? "mirrored once about the top edge of its page, since nothing tells the page's height: v = -y"
      : `mirrored once about the bottom edge of its page: v = ${figure(bottomMm, 3)} ${unit === null ? '' : 'mm '}- y`
  const text = `An SVG counts y downwards. The outline is ${about}, u = x. Size and shape stay as drawn.`
  return note('svg-flipped', text, null, { bottomMm: bottomMm ?? 0 })
}

function nothingDrawn(): Finding {
  return stop(
    'nothing-drawn',
    'The drawing shows no path, rect, circle, ellipse, line, polyline or polygon.',
    null,
    'Draw the outline as a closed path that can be seen, and save the SVG again.',
  )
}
