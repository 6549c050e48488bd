import type { IsoDate } from '../dates'

/** What a search finds, in the order in which it is shown. */
export const hitKinds = [
  'mould',
  'set',
  'pattern',
  'part',
  'built-part',
  'patch',
  'damage',
  'point',
  'material',
  'product',
  'lot',
  'stack',
  'person',
  'picture',
  'entry',
] as const
export type HitKind = (typeof hitKinds)[number]

/** How well it fits: the code itself, the begin of a code or name, the words somewhere, or only nearly. */
export const hitFits = ['exact', 'begins', 'words', 'near'] as const
export type HitFit = (typeof hitFits)[number]

/** One thing that was found. */
export interface Hit {
  readonly kind: HitKind
  readonly id: string
  /** By what it is known: the code, "Patch 7", a tag, a serial, a name. */
  readonly title: string
  readonly name: string
  /** How it stands, in a few words; blank where it has no state. */
  readonly state: string
  /** Where it is. */
  readonly place: string
  /** What more tells it from others. */
  readonly detail: string
  /** The shop's day that it was done on or that it shows; null for what has none. */
  readonly on: IsoDate | null
  /** The mould or pattern that it belongs to, by code; null for what stands by itself. */
  readonly of: { readonly kind: 'mould' | 'pattern' | 'set' | 'built-part'; readonly code: string } | null
  readonly fit: HitFit
}

/** Names of the groups, as headings. */
export const hitKindNames: Readonly<Record<HitKind, string>> = {
  mould: 'Moulds',
  set: 'Split moulds',
  pattern: 'Patterns',
  part: 'Parts',
  'built-part': 'Built parts',
  patch: 'Patches',
  damage: 'Damage and repairs at this place',
  point: 'Locating points',
  material: 'Materials',
  product: 'Products',
  lot: 'Lots',
  stack: 'Stacks',
  person: 'People',
  picture: 'Photos and drawings',
  entry: 'In the log',
}

/** The same for one of them, as it stands beside a suggestion. */
export const hitKindWords: Readonly<Record<HitKind, string>> = {
  mould: 'mould',
  set: 'split mould',
  pattern: 'pattern',
  part: 'part',
  'built-part': 'built part',
  patch: 'patch',
  damage: 'damage or repair',
  point: 'locating point',
  material: 'material',
  product: 'product',
  lot: 'lot',
  stack: 'stack',
  person: 'person',
  picture: 'photo or drawing',
  entry: 'entry',
}
