import { type Book, openBook } from './book'
import { type OnePull, pull, run } from './pulls'
import { tellSeason, usualSeason } from './season'
import { clean, coats, freshRelease, leakChecks, moved, walk } from './upkeep'

/** Spats and pods: two hands each. */
export function spatAndPodBooks(): Book[] {
  return [portSpatBook(), starboardSpatBook(), portPodBook(), starboardPodBook()]
}

type Odds = Readonly<Partial<Record<'24' | '25' | '26', Readonly<Record<number, Partial<OnePull>>>>>>

/** The three seasons behind, alike for both hands but for what was odd. */
function spatSeasons(book: Book, part: string, rackPlace: string, odds: Odds): void {
  const story = { place: 'Bay 4, spat bench', part, rack: rackPlace } as const
  tellSeason(
    book,
    usualSeason('24', [8, 6], {
      ...story,
      walkOn: '2023-09-19',
      walkedBy: 'AW',
      crew: ['AW', 'JR'],
      release: 'as new',
      leak: [0.6, 1.1, 0.6, 1.2],
      ...(odds['24'] ? { odd: odds['24'] } : {}),
    }),
  )
  tellSeason(
    book,
    usualSeason('25', [7, 5], {
      ...story,
      walkOn: '2024-09-20',
      walkedBy: 'SL',
      crew: ['TA', 'SL', 'JR'],
      release: 'stripped',
      leak: [0.6, 1.2, 0.7, 1.3],
      ...(odds['25'] ? { odd: odds['25'] } : {}),
    }),
  )
  tellSeason(
    book,
    usualSeason('26', [9, 6], {
      ...story,
      walkOn: '2025-09-12',
      walkedBy: 'MO',
      crew: ['RN', 'TA'],
      release: 'stripped',
      leak: [0.7, 1.3, 0.8, 1.5],
      ...(odds['26'] ? { odd: odds['26'] } : {}),
    }),
  )
}

/** Written on the wrong hand in October 2026 and put right the next day. */
const mixedUp = { layUp: '2026-10-14', on: '2026-10-15', by: 'RN', serial: 'WSP-27-02' } as const

function portSpatBook(): Book {
  const book = openBook('WS-L')
  spatSeasons(book, 'WSP', 'Store, rack C1', {
    '24': { 9: { went: 'harder', note: 'Heel held.' } },
    '26': { 5: { cleared: false }, 12: { went: 'harder' } },
  })
  walk(book, '2026-09-17', 'MO', 'Bay 4, spat bench', 0.8, 1.6)
  coats(book, '2026-09-24', 'TA', 2)
  pull(book, { layUp: '2026-09-30', on: '2026-10-01', by: 'TA', serial: 'WSP-27-01' })
  pull(book, { ...mixedUp, writtenOn: '2026-10-16', note: 'Was written on the starboard hand first.' })
  pull(book, { layUp: '2026-11-03', on: '2026-11-04', by: 'TA', serial: 'WSP-27-03' })
  clean(book, '2026-11-04', 'TA')
  pull(book, { layUp: '2026-11-18', on: '2026-11-19', by: 'RN', serial: 'WSP-27-04' })
  return book
}

function starboardSpatBook(): Book {
  const book = openBook('WS-R')
  spatSeasons(book, 'WSS', 'Store, rack C1', {
    '25': { 3: { went: 'harder', note: 'Lip.' } },
    '26': { 14: { went: 'harder', fate: { partFate: 'rework' }, note: 'Dry at the lip.' } },
  })
  walk(book, '2026-09-17', 'MO', 'Bay 4, spat bench', 0.7, 1.5)
  coats(book, '2026-09-24', 'TA', 2)
  pull(book, { layUp: '2026-10-07', on: '2026-10-08', by: 'RN', serial: 'WSS-27-01' })
  const wrong = pull(book, { ...mixedUp, cleared: false })
  book.write(
    '2026-10-16',
    'RN',
    'correction',
    {},
    {
      correctsKey: wrong,
      note: 'Entered on the wrong hand: it came off WS-L and stands there.',
    },
  )
  pull(book, { layUp: '2026-10-27', on: '2026-10-28', by: 'TA', serial: 'WSS-27-02' })
  book.write(
    '2026-11-05',
    'TA',
    'damage',
    {
      weight: 'stop',
      uMm: 95,
      vMm: 118,
      what: 'Dropped off the bench: flange cracked at the heel, crack runs 40 mm into the face',
    },
    { area: 'outer' },
  )
  book.write(
    '2026-11-09',
    'SL',
    'inspection',
    {
      verdict: 'not sound',
      what: 'Crack goes through all plies. Patch or second mould off the pattern: to be priced.',
    },
    { area: 'outer' },
  )
  return book
}

function podSeasons(book: Book, part: string, odds: Odds): void {
  const story = { place: 'Bay 4, spat bench', part, rack: 'Store, drawer 3' } as const
  moved(book, '2024-01-29', 'AW', 'Bay 4, spat bench')
  leakChecks(book, '2024-01-29', 'JR', 0.3, 0.5, 'First check.')
  freshRelease(book, '2024-01-31', 'JR')
  run(book, { from: '2024-02-07', to: '2024-06-14', count: 6, serials: `${part}-24`, by: ['JR'] })
  tellSeason(
    book,
    usualSeason('25', [7, 5], {
      ...story,
      walkOn: '2024-09-21',
      walkedBy: 'SL',
      crew: ['TA', 'JR'],
      release: 'touched up',
      leak: [0.3, 0.5, 0.3, 0.6],
      ...(odds['25'] ? { odd: odds['25'] } : {}),
    }),
  )
  tellSeason(
    book,
    usualSeason('26', [7, 6], {
      ...story,
      walkOn: '2025-09-15',
      walkedBy: 'SL',
      crew: ['RN', 'TA'],
      release: 'stripped',
      leak: [0.3, 0.6, 0.4, 0.6],
      ...(odds['26'] ? { odd: odds['26'] } : {}),
    }),
  )
}

function portPodBook(): Book {
  const book = openBook('MP-L')
  podSeasons(book, 'MPP', { '26': { 6: { went: 'harder' } } })
  return book
}

/** In daily use, touched up too seldom. */
function starboardPodBook(): Book {
  const book = openBook('MP-R')
  podSeasons(book, 'MPS', { '25': { 4: { cleared: false } }, '26': { 7: { cleared: false } } })
  walk(book, '2026-09-19', 'TA', 'Bay 4, spat bench', 0.4, 0.7)
  coats(book, '2026-09-28', 'RN', 2)
  run(book, {
    from: '2026-10-01',
    to: '2026-11-20',
    count: 6,
    serials: 'MPS-27',
    by: ['RN', 'TA'],
    touchUpEvery: 9,
  })
  return book
}
