import { daysBetween } from '#lib/core/dates'
import { type Book, openBook } from './book'
import { type OnePull, pull, run } from './pulls'
import { tellSeason, usualSeason } from './season'
import {
  clean,
  coats,
  freshRelease,
  leakChecks,
  moved,
  offTheRack,
  stripAndRelease,
  tape,
  walk,
} from './upkeep'

export function smallBooks(): Book[] {
  return [
    portSpatBook(),
    starboardSpatBook(),
    tubBook(),
    trayBook(),
    wideTrayBook(),
    portPodBook(),
    starboardPodBook(),
  ]
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

function tubBook(): Book {
  const book = openBook('ST-1')
  const story = { place: 'Bay 5', part: 'ST', rack: 'Store, rack C2' } as const
  tellSeason(
    book,
    usualSeason('24', [5, 4], {
      ...story,
      walkOn: '2023-09-20',
      walkedBy: 'AW',
      crew: ['JR', 'AW'],
      release: 'as new',
      leak: [0.7, 1.5, 0.8, 1.6],
    }),
  )
  tellSeason(
    book,
    usualSeason('25', [6, 4], {
      ...story,
      walkOn: '2024-09-20',
      walkedBy: 'SL',
      crew: ['TA', 'JR'],
      release: 'touched up',
      leak: [0.8, 1.7, 0.9, 1.8],
      odd: { 2: { went: 'harder', note: 'Pulled cold; do it at 45 °C.' } },
    }),
  )
  tellSeason(
    book,
    usualSeason('26', [6, 4], {
      ...story,
      walkOn: '2025-09-12',
      walkedBy: 'SL',
      crew: ['RN', 'TA'],
      release: 'stripped',
      leak: [0.9, 1.9, 1.0, 2.0],
      odd: {
        9: { went: 'harder', note: 'Left shoulder grips.' },
        10: { went: 'harder', fate: { partFate: 'rework' }, note: 'Left shoulder again; dull there.' },
      },
    }),
  )
  offTheRack(book, '2026-09-18', 'SL', 'Bay 5')
  book.write(
    '2026-09-18',
    'SL',
    'damage',
    {
      weight: 'open matter',
      uMm: 366,
      vMm: -112,
      what: 'Dull spot of 40 by 25 mm at the left shoulder; tape grips there',
    },
    { area: 'back' },
  )
  coats(book, '2026-09-25', 'RN', 4, { area: 'back', note: 'Over the dull spot; it slips for now.' })
  tape(book, '2026-09-25', 'RN', 'slips', { area: 'back', afterMin: 80 })
  for (const [layUp, on, serial] of [
    ['2026-10-19', '2026-10-20', 'ST-27-01'],
    ['2026-11-09', '2026-11-10', 'ST-27-02'],
  ] as const) {
    const open = `Last leak check ${daysBetween('2026-02-23', layUp)} days ago: 2 mbar in 10 min on 23 Feb, hot, pins out`
    pull(book, {
      layUp,
      on,
      serial,
      by: 'TA',
      open: [open],
      note: 'By hand at 45 °C; touched up at the shoulder.',
    })
    coats(book, on, 'TA', 1, { area: 'back' })
  }
  return book
}

function trayBook(): Book {
  const book = openBook('BT-1')
  const story = { place: 'Bay 5', part: 'BT', rack: 'Store, rack C2' } as const
  moved(book, '2023-10-23', 'AW', 'Bay 5')
  leakChecks(book, '2023-10-23', 'JR', 0.5, 0.9, 'First check.')
  freshRelease(book, '2023-10-25', 'JR')
  run(book, { from: '2023-11-02', to: '2024-04-16', count: 11, serials: 'BT-24', by: ['JR', 'AW'] })
  tellSeason(
    book,
    usualSeason('25', [8, 6], {
      ...story,
      walkOn: '2024-09-21',
      walkedBy: 'SL',
      crew: ['SL', 'TA', 'JR'],
      release: 'stripped',
      leak: [0.5, 1.0, 0.6, 1.1],
    }),
  )
  tellSeason(
    book,
    usualSeason('26', [8, 6], {
      ...story,
      walkOn: '2025-09-13',
      walkedBy: 'MO',
      crew: ['RN', 'TA'],
      release: 'touched up',
      leak: [0.6, 1.1, 0.6, 1.2],
      odd: { 11: { cleared: false } },
    }),
  )
  walk(book, '2026-09-18', 'MO', 'Bay 5', 0.6, 1.2)
  stripAndRelease(book, '2026-09-29', 'RN')
  run(book, { from: '2026-10-08', to: '2026-11-06', count: 2, serials: 'BT-27', by: ['RN', 'TA'] })
  book.write(
    '2026-11-09',
    'TA',
    'damage',
    {
      weight: 'stop',
      uMm: 300,
      vMm: 269,
      what: 'Burnt at the heater plug: resin gone over 50 mm, fibres loose',
    },
    { area: 'floor' },
  )
  book.write(
    '2026-11-10',
    'SL',
    'inspection',
    { verdict: 'not sound', what: 'Burnt through four of six plies. Patch 1 against the pattern.' },
    { area: 'floor' },
  )
  moved(book, '2026-11-12', 'TA', 'Bench 2')
  return book
}

function wideTrayBook(): Book {
  const book = openBook('BT-2')
  moved(book, '2026-11-09', 'SL', 'Oven room')
  book.write('2026-11-09', 'SL', 'state', {
    state: 'being built',
    on: true,
    reason: 'Laid on the new pattern for the wide pack',
  })
  book.write(
    '2026-11-13',
    'RN',
    'note',
    {},
    { note: 'First cure of 8 h at 60 °C done; vacuum held all night.' },
  )
  book.write(
    '2026-11-17',
    'RN',
    'note',
    {},
    {
      note: 'Off the pattern below 40 °C, trimmed, thickness taken. Post-cure to 190 °C booked for 8 December; bushes after it.',
    },
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
