/** Marks that tell how a table writes its numbers. */
export type DecimalSign = 'comma' | 'point' | 'unclear'

/** Could be thousands or three decimals: told only by the rest of the table. */
const eitherComma = /^[-+\u2212]?[1-9]\d{0,2},\d{3}$/
const eitherPoint = /^[-+\u2212]?[1-9]\d{0,2}\.\d{3}$/

const surelyComma = /^[-+\u2212]?(\d*,(\d{1,2}|\d{4,})|0\d*,\d+|\d{4,},\d+|\d{1,3}([ '.\u2019]\d{3})+,\d*)$/
const surelyPoint =
  /^[-+\u2212]?(\d*\.(\d{1,2}|\d{4,})|0\d*\.\d+|\d{4,}\.\d+|\d{1,3}([ ',\u2019]\d{3})+\.\d*)([eE][-+]?\d+)?$/

/** What the cells of a table agree on; unclear when nothing tells or when they disagree. */
export function decimalSignOf(cells: readonly string[]): DecimalSign {
  const comma = cells.some((cell) => surelyComma.test(cell))
  const point = cells.some((cell) => surelyPoint.test(cell))
  return comma === point ? 'unclear' : comma ? 'comma' : 'point'
}

/**
 * The cell rewritten so that it can be read in one way only, where the table's decimal sign settles it: "412,350" is
 * 412.350 beside "18,7" and 412350 beside "18.7". A point in a table with decimal commas stays doubtful: null.
 */
export function settled(cell: string, sign: DecimalSign): string | null {
  if (eitherComma.test(cell) && sign !== 'unclear') return cell.replace(',', sign === 'comma' ? '.' : '')
  return eitherPoint.test(cell) && sign === 'comma' ? null : cell
}
