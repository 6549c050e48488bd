import {
  builtPartLotsTable,
  builtPartsTable,
  hardwareTable,
  partsTable,
  patternsTable,
  picturesTable,
  seasonsTable,
  setsTable,
} from './book'
import type { ShopTable } from './define'
import { areasTable, outlinesTable, pointsTable, readingsTable } from './face'
import { logTable, mattersTable, pullsTable } from './log'
import { mouldsTable, releaseTable } from './moulds'
import { findingsTable, jobLinesTable, patchesTable, plansPliesTable, takeOffTable } from './patches'
import { auditTable, peopleTable, tokensTable } from './people'
import {
  lotMovesTable,
  lotsTable,
  materialsTable,
  pricesTable,
  productsTable,
  ratesTable,
  stacksTable,
} from './stores'

export type { Narrowing, ShopTable } from './define'
export { type LoggedEntry, logRow } from './log'
export { releaseRows, standingCells } from './moulds'
export { findingRows, patchRow } from './patches'
export { materialRow, pricedRow, stackPlyRow } from './stores'

/**
 * The tables of the shop that can be taken out, as they are offered. A new one: its description here, its rows in
 * lib/services/tables-out.
 */
export const tableGroups = [
  { title: 'Moulds', tables: [mouldsTable, logTable, pullsTable, releaseTable, mattersTable] },
  { title: 'Faces', tables: [areasTable, outlinesTable, readingsTable, pointsTable] },
  { title: 'Patches', tables: [patchesTable, plansPliesTable, takeOffTable, jobLinesTable, findingsTable] },
  {
    title: 'The book',
    tables: [
      partsTable,
      builtPartsTable,
      builtPartLotsTable,
      patternsTable,
      setsTable,
      hardwareTable,
      seasonsTable,
      picturesTable,
    ],
  },
  {
    title: 'Stores',
    tables: [materialsTable, stacksTable, productsTable, lotsTable, lotMovesTable, pricesTable, ratesTable],
  },
  { title: 'For the lead', tables: [peopleTable, tokensTable, auditTable] },
] as const

export type TableName = (typeof tableGroups)[number]['tables'][number]['name']

export const shopTables: readonly ShopTable<TableName>[] = tableGroups.flatMap(
  ({ tables }) => tables as readonly ShopTable<TableName>[],
)

/** A table by its name; null when there is none. */
export function shopTableNamed(name: string): ShopTable<TableName> | null {
  return shopTables.find((table) => table.name === name) ?? null
}
