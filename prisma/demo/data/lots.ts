import type { IsoDate } from '#lib/core/dates'
import type { Closing, Container } from '#lib/core/stores/words'
import type { Who } from './people'

/** A lot of the story: of a material by its code, or of a product by its name. */
export interface LotStory {
  readonly of: string
  readonly lot: string
  readonly container: Container
  readonly quantity: number
  readonly came: IsoDate
  readonly goodUntil?: IsoDate
  readonly opened?: IsoDate
  readonly place: string
  readonly note?: string
  readonly closed?: { readonly on: IsoDate; readonly why: Closing }
  readonly moves?: readonly LotMoveStory[]
}

interface LotMoveStory {
  readonly on: IsoDate
  readonly by: Who
  readonly kind: 'used' | 'counted' | 'out of freezer'
  readonly amount: number
  readonly note?: string
}

const freezer = 'freezer 1'
const cupboard = 'solvent cupboard'

function roll(
  of: string,
  lot: string,
  quantity: number,
  came: IsoDate,
  more: Partial<LotStory> = {},
): LotStory {
  const goodUntil = `${Number(came.slice(0, 4)) + 1}${came.slice(4)}`
  return { of, lot, container: 'roll', quantity, came, goodUntil, place: freezer, ...more }
}

function tin(
  of: string,
  lot: string,
  quantity: number,
  came: IsoDate,
  more: Partial<LotStory> = {},
): LotStory {
  return { of, lot, container: 'tin', quantity, came, place: cupboard, ...more }
}

const used = (on: IsoDate, by: Who, amount: number, note: string): LotMoveStory => ({
  on,
  by,
  kind: 'used',
  amount,
  note,
})
const out = (on: IsoDate, by: Who, amount: number, note = ''): LotMoveStory => ({
  on,
  by,
  kind: 'out of freezer',
  amount,
  note,
})

const rolls: readonly LotStory[] = [
  roll('S200', 'S2-0398', 20, '2024-11-04', {
    closed: { on: '2025-04-28', why: 'used up' },
    moves: [
      used('2025-01-20', 'MO', 14.5, 'spat and pod moulds'),
      used('2025-04-28', 'MO', 4, 'test panels'),
    ],
  }),
  roll('S200', 'S2-0412', 30, '2025-04-22', {
    closed: { on: '2026-04-23', why: 'thrown away' },
    moves: [used('2025-11-10', 'TA', 21, 'fairing mould'), out('2025-11-10', 'TA', 46)],
  }),
  roll('S200', 'S2-0533', 40, '2026-06-15', {
    moves: [
      used('2026-08-24', 'RN', 22.5, 'battery tray mould'),
      out('2026-08-24', 'RN', 53, 'two days of lay-up'),
      out('2026-10-29', 'RN', 8.5, 'patch, thawed overnight'),
    ],
  }),
  roll('S200', 'S2-0547', 31.25, '2026-11-09', { note: 'Roll of 25 m.' }),
  roll('S245', 'S45-0117', 12, '2025-09-29', { note: 'Rest of the 2021 system.' }),
  roll('B416', 'B4-0208', 25, '2025-12-05', {
    moves: [used('2026-03-02', 'TA', 15.5, 'mirror pod moulds'), out('2026-03-02', 'TA', 31)],
  }),
  roll('B650', 'B6-0371', 50, '2024-11-04', {
    closed: { on: '2025-05-02', why: 'used up' },
    moves: [used('2025-01-21', 'MO', 46, 'spat and pod moulds')],
  }),
  roll('B650', 'B6-0387', 60, '2025-04-22', {
    closed: { on: '2026-03-12', why: 'used up' },
    moves: [used('2025-11-11', 'TA', 55.5, 'fairing mould'), out('2025-11-11', 'TA', 72)],
  }),
  roll('B650', 'B6-0519', 60, '2026-05-11', {
    moves: [
      out('2026-08-25', 'RN', 118, 'battery tray mould: five days of lay-up'),
      used('2026-08-28', 'RN', 33, 'battery tray mould'),
      out('2026-09-21', 'TA', 74, 'left on the bench over a weekend'),
      out('2026-10-29', 'RN', 8.5, 'patch, thawed overnight'),
      { on: '2026-11-02', by: 'RN', kind: 'counted', amount: 24, note: 'measured along the roll' },
    ],
  }),
]

const tins: readonly LotStory[] = [
  ...(
    [
      ['S-031', '2023-01-01', '2024-09-01'],
      ['S-038', '2024-09-01', '2025-09-01'],
      ['S-044', '2025-09-01', '2026-09-01'],
    ] as const
  ).map(([lot, came, end]) =>
    tin('Base sealer S', lot, 2.5, came, { opened: came, closed: { on: end, why: 'thrown away' } }),
  ),
  tin('Base sealer S', 'S-051', 2.5, '2026-09-01', { goodUntil: '2028-06-30', opened: '2026-09-01' }),
  ...(
    [
      ['A-072', 8.5, '2023-01-01', '2024-02-15'],
      ['A-085', 2.5, '2024-02-15', '2024-09-01'],
      ['A-091', 6.5, '2024-09-01', '2025-02-20'],
      ['A-099', 3.5, '2025-02-20', '2025-09-01'],
      ['A-106', 9, '2025-09-01', '2026-02-20'],
      ['A-112', 2.5, '2026-02-20', '2026-09-01'],
      ['A-118', 5, '2026-09-01', '2026-11-16'],
    ] as const
  ).map(([lot, quantity, came, end]) =>
    tin('Semi-permanent agent A', lot, quantity, came, { opened: came, closed: { on: end, why: 'used up' } }),
  ),
  tin('Semi-permanent agent A', 'A-121', 1, '2026-11-10', { goodUntil: '2028-10-31', opened: '2026-11-16' }),
  tin('Strip paste P', 'P-015', 2, '2024-10-28', {
    goodUntil: '2026-10-31',
    opened: '2026-03-30',
    moves: [used('2026-08-31', 'MO', 1.1, 'after-season strip')],
  }),
  tin('Mould cleaner C', 'C-077', 10, '2026-08-17', {
    goodUntil: '2029-08-31',
    opened: '2026-09-01',
    moves: [used('2026-10-05', 'TA', 3.5, 'autumn walk, all moulds')],
  }),
  tin('Tooling resin T', 'T-204', 6, '2025-12-08', {
    goodUntil: '2026-12-08',
    place: 'resin shelf',
    moves: [used('2026-09-14', 'RN', 2.2, 'loose block')],
  }),
  tin('Surface filler F', 'F-033', 1, '2025-05-12', {
    opened: '2025-09-08',
    place: 'resin shelf',
    moves: [used('2025-09-08', 'TA', 0.35, 'scratches of the season')],
  }),
  tin('Bush adhesive B', 'B-019', 0.5, '2026-02-09', {
    place: 'resin shelf',
    moves: [
      used('2026-02-16', 'RN', 0.3, 'bushes of the deck'),
      used('2026-10-30', 'RN', 0.2, 'bush of the patch'),
    ],
  }),
  {
    of: 'Bagging film G',
    lot: 'G-07',
    container: 'roll',
    quantity: 200,
    came: '2026-03-16',
    place: 'bagging rack',
    moves: [
      used('2026-08-28', 'RN', 62, 'battery tray mould'),
      used('2026-11-05', 'RN', 9, 'patch and leak checks'),
    ],
  },
  {
    of: 'Breather cloth W',
    lot: 'W-22',
    container: 'roll',
    quantity: 60,
    came: '2026-03-16',
    place: 'bagging rack',
    moves: [used('2026-08-28', 'RN', 31, 'battery tray mould')],
  },
]

export const lots: readonly LotStory[] = [...rolls, ...tins]
