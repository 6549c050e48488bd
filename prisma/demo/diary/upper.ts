import { type Book, openBook } from './book'
import { layDownPatch } from './patched'
import { pull, run } from './pulls'
import { tellSeason, usualSeason } from './season'
import { coats, freshRelease, leakChecks, moved, offTheRack, stripAndRelease, walk } from './upkeep'

export function upperBooks(): Book[] {
  return [oldDeckBook(), deckBook(), ringBook(), noseBook(), fairingBook()]
}

/** The old deck: older than the book, leaking more and more, retired when the pattern was changed. */
function oldDeckBook(): Book {
  const book = openBook('UD-0')
  book.write(
    '2023-09-01',
    'AW',
    'note',
    {},
    {
      precision: 'before',
      note: 'Some 30 to 50 pulls before this book was begun; nobody counted. Built in 2021.',
    },
  )
  tellSeason(
    book,
    usualSeason('24', [5, 4], {
      place: 'Bay 2, deck trestles',
      walkOn: '2023-09-14',
      walkedBy: 'AW',
      crew: ['AW', 'JR'],
      release: 'stripped',
      leak: [3.0, 7.5, 3.6, 9.2],
      part: 'UD',
      odd: { 6: { went: 'harder', note: 'Tail held; print-through gets worse there.' } },
      rack: 'Store, floor space',
    }),
  )
  walk(book, '2024-09-18', 'SL', 'Bay 2, deck trestles', 4.8, 13.6)
  coats(book, '2024-09-23', 'JR', 2)
  const leaks =
    "Leak over the limit: 13.6 mbar in 10 min on 18 Sep, hot, pins out; the shop's rule is 10 mbar in 10 min"
  for (const [layUp, on, serial] of [
    ['2024-10-21', '2024-10-22', 'UD-25-01'],
    ['2024-12-02', '2024-12-03', 'UD-25-02'],
  ] as const) {
    pull(book, {
      layUp,
      on,
      serial,
      by: 'MO',
      open: [leaks],
      because: 'Leaks at the tail only: bagged in an envelope, and the tail is cut away on this part.',
    })
  }
  book.write(
    '2025-01-20',
    'MO',
    'inspection',
    { verdict: 'not sound', what: 'Microcracks across the tail land under raking light; weave shows' },
    { area: 'deck' },
  )
  leakChecks(book, '2025-01-21', 'JR', 5.9, 16.2, 'Third check over the limit or near it.')
  moved(book, '2025-03-31', 'MO', 'Store, outside rack')
  book.write('2025-03-31', 'MO', 'state', {
    state: 'retired',
    on: true,
    reason: 'Leaks hot, and the pattern has the new tail; UD-1 takes over',
  })
  return book
}

function deckBook(): Book {
  const book = openBook('UD-1')
  moved(book, '2025-03-12', 'SL', 'Oven room')
  book.write('2025-03-12', 'SL', 'state', {
    state: 'being built',
    on: true,
    reason: 'On the pattern, first cure',
  })
  book.write('2025-03-24', 'JR', 'note', {}, { note: 'Post-cured to 190 °C over 31 h; coupon sent for Tg.' })
  leakChecks(book, '2025-03-28', 'JR', 0.5, 0.9, 'First check, bushes in.')
  book.write('2025-03-31', 'MO', 'state', {
    state: 'being built',
    on: false,
    reason: 'Finished, measured, checked',
  })
  moved(book, '2025-03-31', 'MO', 'Bay 2, deck trestles')
  freshRelease(book, '2025-04-01', 'JR')
  run(book, {
    from: '2025-04-07',
    to: '2025-06-18',
    count: 3,
    serials: 'UD-25',
    firstNo: 3,
    by: ['SL', 'TA', 'JR'],
  })
  tellSeason(
    book,
    usualSeason('26', [5, 4], {
      place: 'Bay 2, deck trestles',
      walkOn: '2025-09-10',
      walkedBy: 'SL',
      crew: ['SL', 'RN', 'TA'],
      release: 'touched up',
      leak: [0.5, 1.0, 0.6, 1.1],
      part: 'UD',
      odd: { 7: { cleared: false, note: 'Night shift; nobody wrote the clearance.' } },
      rack: 'Store, floor space',
    }),
  )
  walk(book, '2026-09-15', 'SL', 'Bay 2, deck trestles', 0.6, 1.2)
  stripAndRelease(book, '2026-09-22', 'TA')
  run(book, { from: '2026-10-05', to: '2026-11-14', count: 3, serials: 'UD-27', by: ['TA', 'RN'] })
  book.write(
    '2026-11-17',
    'RN',
    'damage',
    {
      weight: 'open matter',
      uMm: 2575,
      vMm: -520,
      what: 'Chipped corner, aft starboard: lifted by the tail. No leak seen',
    },
    { area: 'deck' },
  )
  coats(book, '2026-11-19', 'TA', 1, { note: 'New tin.' })
  return book
}

function ringBook(): Book {
  const book = openBook('CR-1')
  const story = { place: 'Bay 3', part: 'CR', rack: 'Store, rack B1' } as const
  tellSeason(
    book,
    usualSeason('24', [6, 4], {
      ...story,
      walkOn: '2023-09-15',
      walkedBy: 'AW',
      crew: ['JR', 'AW'],
      release: 'as new',
      leak: [0.7, 1.3, 0.7, 1.4],
    }),
  )
  tellSeason(
    book,
    usualSeason('25', [6, 4], {
      ...story,
      walkOn: '2024-09-18',
      walkedBy: 'SL',
      crew: ['SL', 'TA', 'JR'],
      release: 'touched up',
      leak: [0.8, 1.5, 0.8, 1.5],
      odd: { 6: { went: 'harder', note: 'Port side ran ahead.' } },
    }),
  )
  tellSeason(
    book,
    usualSeason('26', [7, 5], {
      ...story,
      walkOn: '2025-09-10',
      walkedBy: 'MO',
      crew: ['TA', 'RN'],
      release: 'stripped',
      leak: [0.8, 1.6, 0.9, 1.7],
      odd: { 4: { went: 'harder', note: 'Seal line full of resin.' } },
    }),
  )
  walk(book, '2026-09-16', 'MO', 'Bay 3', 0.9, 1.8)
  coats(book, '2026-09-24', 'RN', 2)
  run(book, { from: '2026-10-12', to: '2026-11-10', count: 2, serials: 'CR-27', by: ['TA', 'RN'] })
  book.write('2026-11-23', 'TA', 'cleared', { open: [], because: null, proof: false }, { at: '09:20' })
  book.write(
    '2026-11-23',
    'TA',
    'note',
    {},
    { at: '16:45', note: 'CR-27-03 is bagged; cure at 120 °C on the 24th, out on the 25th.' },
  )
  return book
}

/** No pattern any more; a crack, and a patch that no pull has proved yet. */
function noseBook(): Book {
  const book = openBook('NC-1')
  const story = { place: 'Bay 3', part: 'NC', rack: 'Store, rack B2' } as const
  tellSeason(
    book,
    usualSeason('24', [5, 4], {
      ...story,
      walkOn: '2023-09-15',
      walkedBy: 'AW',
      crew: ['AW', 'JR'],
      release: 'as new',
      leak: [0.9, 1.8, 0.9, 1.8],
    }),
  )
  tellSeason(
    book,
    usualSeason('25', [5, 3], {
      ...story,
      walkOn: '2024-09-19',
      walkedBy: 'SL',
      crew: ['SL', 'JR'],
      release: 'stripped',
      leak: [0.9, 1.9, 1.0, 2.0],
    }),
  )
  tellSeason(
    book,
    usualSeason('26', [5, 4], {
      ...story,
      walkOn: '2025-09-11',
      walkedBy: 'SL',
      crew: ['RN', 'TA'],
      release: 'touched up',
      leak: [1.0, 2.0, 1.1, 2.2],
      odd: {
        9: {
          went: 'harder',
          fate: { mouldFate: 'marked' },
          note: 'A wedge slipped off the rim.',
        },
      },
    }),
  )
  offTheRack(book, '2026-10-05', 'MO', 'Bay 3')
  leakChecks(book, '2026-10-06', 'RN', 4.4, 14.9, 'Soap film: beside the centreline, upper half.')
  book.write(
    '2026-10-06',
    'RN',
    'damage',
    { weight: 'stop', uMm: 235, vMm: 55, what: 'Crack of 60 mm beside the centreline, through to the back' },
    { area: 'upper' },
  )
  book.write(
    '2026-10-08',
    'SL',
    'inspection',
    { verdict: 'not sound', what: 'Crack opens when warm. No pattern: splash first, then patch 1 in place.' },
    { area: 'upper' },
  )
  layDownPatch(book, {
    number: 1,
    area: 'upper',
    on: '2026-10-30',
    by: 'RN',
    lots: ['S2-0533', 'B6-0519'],
    leak: ['2026-11-03', 1.1, 2.3],
    release: '2026-11-05',
    taped: '2026-11-06',
  })
  book.write(
    '2026-11-06',
    'SL',
    'note',
    {},
    {
      note: 'Proof pull with a test cone of old cloth, as soon as the oven is free after the canopy ring.',
    },
  )
  return book
}

function fairingBook(): Book {
  const book = openBook('RF-1')
  const story = { place: 'Bay 4', part: 'RF', rack: 'Store, rack B3' } as const
  moved(book, '2024-02-21', 'AW', 'Bay 4')
  leakChecks(book, '2024-02-21', 'JR', 0.6, 1.2, 'First check.')
  freshRelease(book, '2024-02-23', 'JR')
  run(book, { from: '2024-03-04', to: '2024-06-14', count: 4, serials: 'RF-24', by: ['JR', 'AW'] })
  tellSeason(
    book,
    usualSeason('25', [5, 3], {
      ...story,
      walkOn: '2024-09-19',
      walkedBy: 'SL',
      crew: ['TA', 'JR'],
      release: 'touched up',
      leak: [0.6, 1.3, 0.7, 1.3],
    }),
  )
  tellSeason(
    book,
    usualSeason('26', [5, 3], {
      ...story,
      walkOn: '2025-09-11',
      walkedBy: 'SL',
      crew: ['RN', 'TA'],
      release: 'stripped',
      leak: [0.7, 1.4, 0.7, 1.5],
      odd: { 8: { went: 'harder', note: 'Pins of D02 and D12 had to be driven out.' } },
    }),
  )
  offTheRack(book, '2026-09-17', 'SL', 'Bay 4')
  book.write('2026-09-17', 'SL', 'inspection', {
    verdict: 'look',
    what: 'Bushes D02 and D12 oval by 0.15 mm',
  })
  moved(book, '2026-10-05', 'SL', 'Outside shop, the boring mill (invented)')
  book.write('2026-10-05', 'SL', 'state', {
    state: 'away',
    on: true,
    reason: 'Bushes D02 and D12 bored out and set anew; promised for 30 November',
  })
  return book
}
