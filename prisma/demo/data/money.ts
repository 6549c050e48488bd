import type { IsoDate } from '#lib/core/dates'
import type { Basis } from '#lib/core/stores/words'

/** What one unit cost from each day on, in EUR cents; invented. */
export const prices: Readonly<
  Record<string, readonly (readonly [from: IsoDate, minor: number, where: string])[]>
> = {
  S200: [
    ['2024-10-01', 5450, 'list of the season, invented'],
    ['2025-09-15', 5800, 'list of the season, invented'],
    ['2026-09-21', 6120, 'quote for 30 m², invented'],
  ],
  S245: [['2024-10-01', 6100, 'list of the season, invented']],
  B416: [
    ['2024-10-01', 5900, 'list of the season, invented'],
    ['2025-09-15', 6200, 'list of the season, invented'],
  ],
  B650: [
    ['2024-10-01', 6980, 'list of the season, invented'],
    ['2025-09-15', 7400, 'list of the season, invented'],
    ['2026-09-21', 7750, 'quote for 60 m², invented'],
  ],
  'Strip paste P': [['2024-10-28', 3890, 'invoice, invented']],
  'Mould cleaner C': [['2025-09-01', 1650, 'invoice, invented']],
  'Base sealer S': [
    ['2024-09-01', 5800, 'invoice, invented'],
    ['2026-09-01', 6150, 'invoice, invented'],
  ],
  'Semi-permanent agent A': [
    ['2024-09-01', 4700, 'invoice, invented'],
    ['2025-09-01', 4950, 'invoice, invented'],
    ['2026-09-01', 5200, 'invoice, invented'],
  ],
  'Tooling resin T': [['2025-12-08', 2840, 'invoice, invented']],
  'Bush adhesive B': [['2026-02-09', 6400, 'invoice, invented']],
  'Bagging film G': [['2026-03-16', 260, 'invoice, invented']],
}

export interface RateStory {
  readonly operation: string
  readonly basis: Basis
  readonly hours: number | null
  readonly minor: number | null
  readonly from: IsoDate
  readonly where: string
}

const memory = 'from memory'
const timed = 'own timing, invented'

export const rates: readonly RateStory[] = [
  {
    operation: 'labour',
    basis: 'hour',
    hours: null,
    minor: null,
    from: '2025-09-01',
    where: 'students: hours counted, no money',
  },
  {
    operation: 'router',
    basis: 'hour',
    hours: null,
    minor: 5500,
    from: '2025-09-01',
    where: 'university workshop, invented',
  },
  {
    operation: 'router',
    basis: 'hour',
    hours: null,
    minor: 6000,
    from: '2026-09-01',
    where: 'university workshop, invented',
  },
  {
    operation: 'autoclave',
    basis: 'run',
    hours: 2,
    minor: 24000,
    from: '2025-09-01',
    where: 'lent by a neighbour, invented',
  },
  {
    operation: 'oven',
    basis: 'hour',
    hours: null,
    minor: 400,
    from: '2025-09-01',
    where: 'power only, invented',
  },
  { operation: 'cut opening', basis: 'piece', hours: 1, minor: null, from: '2025-09-01', where: memory },
  { operation: 'scarf', basis: 'm', hours: 1.5, minor: null, from: '2025-09-01', where: memory },
  { operation: 'scarf', basis: 'm', hours: 2.25, minor: null, from: '2026-11-02', where: timed },
  { operation: 'lay', basis: 'ply m2', hours: 1.25, minor: null, from: '2025-09-01', where: memory },
  { operation: 'lay', basis: 'ply m2', hours: 1.6, minor: null, from: '2026-09-01', where: timed },
  { operation: 'debulk', basis: 'run', hours: 0.75, minor: null, from: '2025-09-01', where: memory },
  { operation: 'bag', basis: 'run', hours: 2, minor: 2200, from: '2025-09-01', where: memory },
  { operation: 'post-cure', basis: 'run', hours: 1.5, minor: null, from: '2025-09-01', where: memory },
  { operation: 'dress', basis: 'piece', hours: 2, minor: null, from: '2025-09-01', where: memory },
  { operation: 'coat', basis: 'm2', hours: 0.25, minor: null, from: '2025-09-01', where: memory },
]
