import { type Book, openBook } from './book'
import { layDownPatch } from './patched'
import { run } from './pulls'
import { tellSeason, usualSeason } from './season'
import { coats, freshRelease, leakChecks, moved, offTheRack, walk } from './upkeep'

export function ringNoseFairingBooks(): Book[] {
  return [ringBook(), noseBook(), fairingBook()]
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
