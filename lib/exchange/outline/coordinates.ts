import type { Point } from '#lib/core/geometry/index'
import type { Finding } from '#lib/core/result'
import { cellsOf, numberIn, rowFault, tooFar } from './coordinate-cells'
import { type Header, headerOf, isHeader } from './coordinate-header'
import { delimiterOf, type Row, rowsOf } from './coordinate-rows'
import { columnUnits } from './coordinate-units'
import { type Corner, withoutRepeatedCorners } from './corners'
import { decimalSignOf } from './decimal-sign'
import { counted, lineName, note, Refused, someOf, stop } from './finding'
import { mostPoints } from './limits'
import type { ChosenUnit, Drawing } from './types'

/** Room for headers and repeated points beside those of the outline. */
const mostLines = mostPoints + 5000

/**
 * The outline that a table of two columns gives, one corner a line: parted by comma, semicolon, tab or blanks, with
 * a header or without, # before a comment. Every line that can't be read is named; none is passed over.
 */
export function readCoordinates(text: string, chosen: ChosenUnit | null): Drawing {
  const given = linesOf(text)
  const lines = given.map((line) => line.replace(/#.*$/, ''))
  const delimiter = delimiterOf(lines)
  const { rows, blankRows } = rowsOf(lines, delimiter)
  const header = rows.length > 0 && isHeader(rows[0]!) ? headerOf(rows[0]!, delimiter) : null
  const data = header === null ? rows : rows.slice(1)
  if (data.length === 0) throw nothingThere()
  const units = columnUnits(header, chosen, rows[0]!.line)
  const { corners, faults } = cornersOf(data, header, units.mm)
  const findings = [
    ...someOf(faults),
    ...units.findings,
    ...leftOut(header, blankRows),
    ...blankBetween(given, data),
  ]
  if (faults.length > 0) return { unit: units.unit, loops: [], dropped: 0, findings }
  const kept = withoutRepeatedCorners(corners)
  return {
    unit: units.unit,
    loops: [{ points: kept.points, layers: [], asGiven: true, role: null }],
    dropped: 0,
    findings: [...findings, ...kept.findings],
  }
}

function linesOf(text: string): readonly string[] {
  const lines = text
    .replaceAll('\x1a', '')
    .replaceAll('\u00a0', ' ')
    .split(/\r\n|\r|\n/)
  const filled = lines.reduce((count, line) => count + (line.trim() === '' ? 0 : 1), 0)
  if (filled <= mostLines) return lines
  throw new Refused(
    stop(
      'too-many-points',
      `There are ${filled} lines; an outline has at most ${mostPoints} points.`,
      null,
      'Give the corners of the outline only.',
      { lines: filled, mostPoints },
    ),
  )
}

function cornersOf(
  data: readonly Row[],
  header: Header | null,
  mm: readonly [number, number],
): { readonly corners: readonly Corner[]; readonly faults: readonly Finding[] } {
  const sign = decimalSignOf(data.flatMap((row) => cellsOf(row, header)))
  const corners: Corner[] = []
  const faults: Finding[] = []
  for (const row of data) {
    const fault = rowFault(row, header)
    if (fault !== null) {
      faults.push(fault)
      continue
    }
    const [u, v] = cellsOf(row, header).map((cell) => numberIn(cell, row.line, sign))
    if (typeof u === 'number' && typeof v === 'number') {
      const point: Point = [u * mm[0], v * mm[1]]
      corners.push({ point, place: lineName(row.line) })
      faults.push(...[tooFar(point, row.line)].filter((far) => far !== null))
    } else {
      faults.push(...[u!, v!].filter((cell) => typeof cell !== 'number'))
    }
  }
  return { corners, faults }
}

/** What a table holds beside its corners. */
function leftOut(header: Header | null, blankRows: readonly number[]): readonly Finding[] {
  const findings: Finding[] = []
  if (header !== null && header.others.length > 0) {
    findings.push(
      note('columns-left-out', `Not read: the columns ${header.others.slice(0, 20).join(', ')}.`, null),
    )
  }
  if (blankRows.length > 0) {
    findings.push(
      note(
        'blank-rows',
        `${counted(blankRows.length, 'row holds', 'rows hold')} nothing between the delimiters.`,
        lineName(blankRows[0]!),
        { count: blankRows.length, lines: blankRows },
      ),
    )
  }
  return findings
}

/** Some programs part loops by a blank line; here all corners make one loop, and that is told. */
function blankBetween(lines: readonly string[], data: readonly Row[]): readonly Finding[] {
  const [first, last] = [data[0]!.line, data.at(-1)!.line]
  const blank = lines.flatMap((line, index) => {
    return line.trim() === '' && index + 1 > first && index + 1 < last ? [index + 1] : []
  })
  if (blank.length === 0) return []
  return [
    note(
      'blank-lines-between',
      `${counted(blank.length, 'blank line stands', 'blank lines stand')} between corners; the corners on both sides are read as one outline.`,
      lineName(blank[0]!),
      { count: blank.length },
    ),
  ]
}

function nothingThere(): Refused {
  return new Refused(
    stop(
      'no-coordinates',
      'There are no coordinates in it.',
      null,
      'Give each corner of the outline a line with u and v, for example 12.5, 40.',
    ),
  )
}
