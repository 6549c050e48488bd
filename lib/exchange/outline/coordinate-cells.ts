import type { Point } from '#lib/core/geometry/index'
import type { Finding } from '#lib/core/result'
import { parseNumber } from '#lib/core/units'
import type { Header } from './coordinate-header'
import type { Row } from './coordinate-rows'
import { type DecimalSign, settled } from './decimal-sign'
import { lineName, look, stop } from './finding'
import { farthestMm } from './limits'

/** The two cells of a row; the first two where no header names the columns. Blank ones are ''. */
export function cellsOf({ cells }: Row, header: Header | null): readonly [string, string] {
  const [u, v] = header === null ? [0, 1] : [header.u.index, header.v.index]
  return [cells[u] ?? '', cells[v] ?? '']
}

/** Why a row does not hold just two values; null when it does. */
export function rowFault(row: Row, header: Header | null): Finding | null {
  const fault = (text: string, cure: string) =>
    stop('row-not-read', text, lineName(row.line), cure, { line: row.line })
  if (header === null && row.cells.slice(2).some((cell) => cell !== '')) {
    const count = row.cells.filter((cell) => cell !== '').length
    return fault(
      `There are ${count} values here; a corner has two.`,
      'Give two columns u and v, or a header that names them. A decimal comma needs a semicolon, a tab or a blank between the columns.',
    )
  }
  const missing = cellsOf(row, header).flatMap((cell, index) =>
    cell === '' ? [index === 0 ? 'u' : 'v'] : [],
  )
  if (missing.length === 0) return null
  return fault(
    `${missing.join(' and ')} ${missing.length === 1 ? 'is' : 'are'} missing here: "${row.cells.join(' ').slice(0, 40)}".`,
    'Give both coordinates, or put # before a line that is no corner.',
  )
}

/** The number in a cell, or why it can't be told. */
export function numberIn(cell: string, line: number, sign: DecimalSign): number | Finding {
  const clear = settled(cell, sign)
  if (clear === null) {
    const [plain, comma] = [cell.replace('.', ''), cell.replace('.', ',')]
    return unclear(`"${cell}" can be ${plain} or ${comma}: other cells have a decimal comma.`, line)
  }
  const number = parseNumber(clear)
  if (number.ok) return number.value
  if (number.verdict === 'ask') return unclear(number.reason, line)
  return stop(
    'cell-not-a-number',
    `"${cell.slice(0, 40)}" is not a number that can be used.`,
    lineName(line),
    'Write digits with one decimal point or comma, the unit in the header; put # before a line that is no corner.',
    { line },
  )
}

/** Coordinates beyond what a face can have; null when they can be. */
export function tooFar([u, v]: Point, line: number): Finding | null {
  if (Math.abs(u) <= farthestMm && Math.abs(v) <= farthestMm) return null
  return stop(
    'too-far',
    `This corner lies at u ${u.toPrecision(4)}, v ${v.toPrecision(4)} mm; at most ${farthestMm / 1000} m from the origin can be used.`,
    lineName(line),
    'Check the digits and the unit.',
    { line },
  )
}

function unclear(text: string, line: number): Finding {
  return look('number-unclear', text, lineName(line), 'Write the number so that it can be read in one way.', {
    line,
  })
}
