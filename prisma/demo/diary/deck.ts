import { type Book, openBook } from './book'
import { pull, run } from './pulls'
import { tellSeason, usualSeason } from './season'
import { coats, freshRelease, leakChecks, moved, stripAndRelease, walk } from './upkeep'

export function deckBooks(): Book[] {
  return [oldDeckBook(), deckBook()]
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
      uMm: 2568,
      vMm: -478,
      what: 'Chipped corner, aft starboard: lifted by the tail. No leak seen',
    },
    { area: 'deck' },
  )
  coats(book, '2026-11-19', 'TA', 1, { note: 'New tin.' })
  return book
}
