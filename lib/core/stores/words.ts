import type { StockUnit } from './amount'

export const productUses = [
  'stripper',
  'cleaner',
  'sealer',
  'release',
  'resin',
  'adhesive',
  'filler',
  'consumable',
  'other',
] as const
export type ProductUse = (typeof productUses)[number]

export const productUseWords: Readonly<Record<ProductUse, string>> = {
  stripper: 'stripper',
  cleaner: 'cleaner',
  sealer: 'sealer',
  release: 'release agent',
  resin: 'resin',
  adhesive: 'adhesive',
  filler: 'filler',
  consumable: 'consumable',
  other: 'other',
}

export const containers = ['roll', 'tin', 'drum', 'bag', 'box', 'other'] as const
export type Container = (typeof containers)[number]

export const closings = ['used up', 'thrown away', 'sent back'] as const
export type Closing = (typeof closings)[number]

/** Products and materials that the entries of a kind use, for the lots that are offered; other kinds use none. */
export const usesOfKind: Readonly<Record<string, readonly (ProductUse | 'surface' | 'bulk')[]>> = {
  strip: ['stripper'],
  clean: ['cleaner'],
  seal: ['sealer'],
  coat: ['release'],
  repair: ['surface', 'bulk', 'resin', 'adhesive', 'filler'],
  'dowel-changed': ['adhesive', 'resin', 'filler'],
  pull: ['surface', 'bulk', 'resin', 'adhesive'],
}

export const moveKinds = ['used', 'counted', 'out of freezer', 'correction'] as const
export type MoveKind = (typeof moveKinds)[number]

export const bases = ['hour', 'm2', 'ply m2', 'm', 'piece', 'run'] as const
export type Basis = (typeof bases)[number]

/** What one of the basis is, after "a". */
export const basisWords: Readonly<Record<Basis, string>> = {
  hour: 'hour',
  m2: 'm²',
  'ply m2': 'm² of ply',
  m: 'm',
  piece: 'piece',
  run: 'run',
}

/** What a price stands for, after "a". */
export const perUnitWords: Readonly<Record<StockUnit, string>> = {
  l: 'l',
  kg: 'kg',
  piece: 'piece',
  m: 'm',
  m2: 'm²',
}
