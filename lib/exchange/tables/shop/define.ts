import type { ColumnKind, TableColumn, TableHead } from '../types'

/** What a table can be narrowed to in its address: ?mould=LH-P, ?patch=<id>&v=2, ?issue=3 or ?issue=current. */
export type Narrowing = 'mould' | 'patch' | 'issue'

/** A table of the shop that can be taken out. */
export interface ShopTable<Name extends string = string> extends TableHead {
  readonly name: Name
  /** What stands in it, in one line: one row is ... */
  readonly about: string
  readonly narrowedBy: readonly Narrowing[]
  /** People, tokens, audit: for the lead alone. */
  readonly forLead: boolean
}

type Told = Omit<ShopTable, 'name' | 'narrowedBy' | 'forLead'> &
  Partial<Pick<ShopTable, 'narrowedBy' | 'forLead'>>

/** Describes a table under its name. */
export function shopTable<const Name extends string>(name: Name, told: Told): ShopTable<Name> {
  return { narrowedBy: [], forLead: false, ...told, name }
}

const column =
  (kind: ColumnKind) =>
  (key: string, title: string, decimals?: number): TableColumn =>
    decimals === undefined ? { key, title, kind } : { key, title, kind, decimals }

export const text = column('text')
export const figure = column('number')
export const day = column('date')
export const moment = column('moment')
export const yesNo = column('yes-no')
