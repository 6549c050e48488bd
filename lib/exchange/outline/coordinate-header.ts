import { parseQuantity } from '#lib/core/units'
import type { Delimiter, Row } from './coordinate-rows'
import { lineName, Refused, stop } from './finding'
import type { FileUnit } from './types'
import { isFileUnit } from './unit'

export interface Column {
  readonly index: number
  readonly name: string
  readonly unit: FileUnit | null
}

/** A cell of the header; the unit is looked up only where its column is read. */
interface Heading {
  readonly index: number
  readonly name: string
  readonly unitText: string
}

export interface Header {
  readonly u: Column
  readonly v: Column
  /** Names of further columns, which are not read. */
  readonly others: readonly string[]
}

const uNames = /^[ux]$/i
const vNames = /^[vy]$/i
const unitColumnNames = /^(units?|uom|einheit|unité|unidad)$/i

/** Whether a row names columns: none of its cells begins as a number does. */
export function isHeader({ cells }: Row): boolean {
  return cells.every((cell) => !/^[-+\u2212]?[.,]?\d/.test(cell)) && cells.some((cell) => cell !== '')
}

/**
 * Columns u and v by their names (u or x, v or y, in either order), or by their order when there are just two with
 * other names. Throws Refused when they can't be told, or when a unit is not known.
 */
export function headerOf(row: Row, delimiter: Delimiter): Header {
  const cells = delimiter === ' ' ? withUnits(row.cells) : row.cells
  const headings = cells.map(headingOf)
  while (headings.at(-1)?.name === '') headings.pop()
  if (headings.some(({ name }) => unitColumnNames.test(name))) {
    throw refused(
      row,
      'A column with a unit for each row is not read here.',
      'Bring all rows to one unit and write it into the header.',
    )
  }
  const pair = namedPair(headings) ?? plainPair(headings)
  if (pair === null) {
    throw refused(
      row,
      `The header does not tell which columns are u and v: ${row.cells.join(' | ').slice(0, 80)}.`,
      'Name one column u (or x) and one v (or y).',
    )
  }
  const others = headings.filter((heading) => !pair.includes(heading))
  return {
    u: columnOf(pair[0], row.line),
    v: columnOf(pair[1], row.line),
    others: others.map(({ name }) => (name === '' ? 'one without a name' : name)),
  }
}

function namedPair(headings: readonly Heading[]): readonly [Heading, Heading] | null {
  const u = headings.filter(({ name }) => uNames.test(name))
  const v = headings.filter(({ name }) => vNames.test(name))
  return u.length === 1 && v.length === 1 ? [u[0]!, v[0]!] : null
}

/** Two columns with names of their own, none of them an axis of another plane. */
function plainPair(headings: readonly Heading[]): readonly [Heading, Heading] | null {
  const [first, second] = headings
  if (headings.length !== 2 || headings.some(({ name }) => /^[uvxyz]$/i.test(name))) return null
  return [first!, second!]
}

/** "u [mm]", "x (in)", "X mm", "u_mm", "uMm" */
function headingOf(cell: string, index: number): Heading {
  const bracketed = /^(.*?)\s*[[(]\s*([^\])]*?)\s*[\])]$/.exec(cell)
  if (bracketed !== null) return { index, name: bracketed[1]!, unitText: bracketed[2]! }
  const spelt = /^([uvxy])(?:[\s_/,-]+(\S+)|(Mm|Cm|M|In))$/i.exec(cell)
  if (spelt !== null) return { index, name: spelt[1]!, unitText: spelt[2] ?? spelt[3]!.toLowerCase() }
  return { index, name: cell, unitText: '' }
}

function columnOf({ index, name, unitText }: Heading, line: number): Column {
  return { index, name, unit: unitText === '' ? null : unitOf(unitText, line) }
}

function unitOf(text: string, line: number): FileUnit {
  const quantity = parseQuantity(`1 ${text}`, 'length')
  if (quantity.ok && isFileUnit(quantity.unit)) return quantity.unit
  throw new Refused(
    stop(
      'unit-not-read',
      quantity.ok ? `"${text}" is not a unit.` : quantity.reason,
      lineName(line),
      'Write the unit into the header, such as "u [mm],v [mm]".',
      { line },
    ),
  )
}

/** In a header parted by blanks a unit stands as a cell of its own: it goes with the name before it. */
function withUnits(cells: readonly string[]): readonly string[] {
  const joined: string[] = []
  for (const cell of cells) {
    const isUnit = /^[[(].*[\])]$/.test(cell) || parseQuantity(`1 ${cell}`, 'length').ok
    if (isUnit && joined.length > 0) joined.push(`${joined.pop()} ${cell}`)
    else joined.push(cell)
  }
  return joined
}

function refused({ line }: Row, text: string, cure: string): Refused {
  return new Refused(stop('header-not-read', text, lineName(line), cure, { line }))
}
