import { daysBetween } from '#lib/core/dates'
import { type Book, openBook } from './book'
import { pull, run } from './pulls'
import { tellSeason, usualSeason } from './season'
import { coats, freshRelease, leakChecks, moved, offTheRack, stripAndRelease, tape, walk } from './upkeep'

export function tubAndTrayBooks(): Book[] {
  return [tubBook(), trayBook(), wideTrayBook()]
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
