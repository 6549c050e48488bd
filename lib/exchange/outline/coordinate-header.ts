import { parseQuantity } from '#lib/core/units'
import type { Row } from './coordinate-rows'
import { lineName, Refused, stop } from './finding'
import type { FileUnit } from './types'
import { isFileUnit } from './unit'

export interface Column {
  readonly index: number
  readonly name: string
  readonly unit: FileUnit | null
}

export interface Header {
  readonly u: Column
  readonly v: Column
  /** Names of further columns, which are not read. */
  readonly others: readonly string[]
}

const uNames = /^[ux]$/i
const vNames = /^[vy]$/i
const unitNames = /^(units?|uom|einheit|unité|unidad)$/i

/** Whether a row names columns: none of its cells begins as a number does. */
export function isHeader({ cells }: Row): boolean {
  return cells.every((cell) => !/^[-+\u2212]?[.,]?\d/.test(cell)) && cells.some((cell) => cell !== '')
}

/**
 * Columns u and v by their names (u or x, v or y, in either order), or by their order when there are just two with
 * other names. Throws Refused when they can't be told, or when a unit is not known.
 */
export function headerOf(row: Row): Header {
  const columns = joinUnits(row.cells).map((cell, index) => columnOf(cell, index, row.line))
  while (columns.at(-1)?.name === '') columns.pop()
  const byName = (names: RegExp) => columns.filter(({ name }) => names.test(name))
  const [u, v] = [byName(uNames), byName(vNames)]
  if (columns.some(({ name }) => unitNames.test(name))) {
    throw refused(
      row,
      'A column with a unit for each row is not read here.',
      'Bring all rows to one unit and write it into the header.',
    )
  }
  if (u.length === 1 && v.length === 1) {
    const others = columns.filter((column) => column !== u[0] && column !== v[0])
    return {
      u: u[0]!,
      v: v[0]!,
      others: others.map(({ name }) => (name === '' ? 'one without a name' : name)),
    }
  }
  if (
    columns.length === 2 &&
    u.length === 0 &&
    v.length === 0 &&
    !columns.some(({ name }) => /^z$/i.test(name))
  ) {
    return { u: columns[0]!, v: columns[1]!, others: [] }
  }
  throw refused(
    row,
    `The header does not tell which columns are u and v: ${row.cells.join(' | ').slice(0, 80)}.`,
    'Name one column u (or x) and one v (or y).',
  )
}

/** "u [mm]", "x (in)", "X mm", "u_mm", "uMm" */
function columnOf(cell: string, index: number, line: number): Column {
  const bracketed = /^(.*?)\s*[[(]\s*([^\])]*?)\s*[\])]$/.exec(cell)
  const spelt = /^([uvxy])(?:[\s_/,-]+(\S+)|(Mm|Cm|M|In))$/i.exec(cell)
  const [name, unitText] = bracketed
    ? [bracketed[1]!, bracketed[2]!]
    : spelt
      ? [spelt[1]!, spelt[2] ?? spelt[3]!.toLowerCase()]
      : [cell, '']
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
function joinUnits(cells: readonly string[]): readonly string[] {
  const joined: string[] = []
  for (const cell of cells) {
    const isUnit = /^[[(].*[\])]$/.test(cell) || parseQuantity(`1 ${cell}`, 'length').ok
    if (isUnit && cell !== '' && joined.length > 0) joined.push(`${joined.pop()} ${cell}`)
    else joined.push(cell)
  }
  return joined
}

function refused({ line }: Row, text: string, cure: string): Refused {
  return new Refused(stop('header-not-read', text, lineName(line), cure, { line }))
}
