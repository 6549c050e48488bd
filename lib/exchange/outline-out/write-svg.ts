import type { Loop } from '#lib/core/geometry/index'
import type { PatchSheet } from '../sheets/types'
import { layOutNotes, type NoteLine, type NoteText } from './notes-layout'
import { loopsOfLayer, mmText, type OutlineLayer, type OutlineView, planOutlines } from './plan-outlines'

const marginMm = 10
/** Width of a letter at most, share of its height. */
const letterWidth = 0.65

/**
 * Outlines of a plan as SVG 1.1, true to size (width and height in mm, one unit of the viewBox is 1 mm): a group with
 * id and title for the opening, each ply and the footprint; words and fibre arrows in the group NOTES. RangeError for
 * a plan without plies.
 */
export function writeOutlinesSvg(sheet: PatchSheet, view: OutlineView): string {
  const plan = planOutlines(sheet, view)
  const [xMin, yMin, xMax, yMax] = plan.boundsMm
  const left = xMin - marginMm
  const top = yMax + marginMm
  const numbers = `x = ${plan.mirrored ? '-u' : 'u'} ${plus(-left)}, y = -v ${plus(top)}, y down`
  const notes = layOutNotes(plan, numbers)
  const right = notes.texts.reduce((most, each) => Math.max(most, rightOf(each)), xMax) + marginMm
  const bottom = notes.texts.reduce((least, { at }) => Math.min(least, at[1]), yMin) - marginMm
  const place = ([x, y]: readonly [number, number]) => `${mmText(x - left)} ${mmText(top - y)}`
  const [width, height] = [mmText(right - left), mmText(top - bottom)]
  return [
    '<?xml version="1.0" encoding="UTF-8"?>',
    `<svg xmlns="http://www.w3.org/2000/svg" width="${width}mm" height="${height}mm" viewBox="0 0 ${width} ${height}">`,
    `<title>${xml(plan.title)}</title>`,
    `<desc>${xml(`${plan.view}. ${numbers}.`)}</desc>`,
    ...plan.layers.map((layer) => group(layer, place)),
    `<g id="NOTES" font-family="sans-serif" stroke="none" fill="black">`,
    ...notes.texts.map((text) => words(text, place)),
    `<path d="${notes.lines.map((line) => strokeData(line, place)).join('')}" fill="none" stroke="black" stroke-width="0.25"/>`,
    '</g>',
    '</svg>',
    '',
  ].join('\n')
}

/** "+ 12.5", "- 3" */
function plus(mm: number): string {
  return `${mm < 0 ? '-' : '+'} ${mmText(Math.abs(mm))}`
}

type Place = (point: readonly [number, number]) => string

function group(layer: OutlineLayer, place: Place): string {
  const data = loopsOfLayer(layer)
    .map((loop) => loopData(loop, place))
    .join('')
  return (
    `<g id="${layer.code}" fill="none" stroke="black" stroke-width="0.18"><title>${xml(layer.title)}</title>` +
    `<path fill-rule="evenodd" d="${data}"/></g>`
  )
}

function loopData(loop: Loop, place: Place): string {
  return `M${loop.map(place).join('L')}Z`
}

function strokeData([from, to]: NoteLine, place: Place): string {
  return `M${place(from)}L${place(to)}`
}

function words({ at, heightMm, text }: NoteText, place: Place): string {
  const [x, y] = place(at).split(' ')
  return `<text x="${x}" y="${y}" font-size="${mmText(heightMm)}">${xml(text)}</text>`
}

function rightOf({ at, heightMm, text }: NoteText): number {
  return at[0] + text.length * heightMm * letterWidth
}

/** Text that XML takes for text: its own signs written out, control characters as blanks. */
function xml(text: string): string {
  return text
    .replace(/[\p{Cc}\p{Cs}\uFFFE\uFFFF]+/gu, ' ')
    .replaceAll('&', '&amp;')
    .replaceAll('<', '&lt;')
    .replaceAll('>', '&gt;')
    .replaceAll('"', '&quot;')
}
