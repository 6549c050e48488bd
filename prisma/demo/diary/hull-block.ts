import { type Book, openBook } from './book'
import {
  afterStarboard,
  ahead,
  first,
  lastOfSecond,
  proofPort,
  proofStarboard,
  seasonWalk,
  second,
  stuck,
  take,
  third,
} from './hull-builds'
import { freshRelease, leakChecks, rack, stripAndRelease } from './upkeep'

export function blockBook(): Book {
  const book = openBook('LH-B')
  seasonWalk(book, '2023-09-14', 'AW', 0.6, 1.1)
  freshRelease(book, '2023-09-21', 'JR')
  take(book, first.slice(0, 5))
  leakChecks(book, '2024-02-23', 'JR', 0.6, 1.1)
  take(book, first.slice(5))
  rack(book, '2024-08-14', 'AW', 'Store, rack A2')

  seasonWalk(book, '2024-09-17', 'SL', 0.6, 1.2)
  take(book, [...second, stuck], {
    'LH-25-04': { cleared: false, note: 'The block was forgotten when the other two were cleared.' },
    'LH-25-06': { fate: { partFate: 'scrapped' } },
  })
  leakChecks(book, '2025-03-11', 'TA', 0.7, 1.2)
  take(book, [proofStarboard, ...afterStarboard, proofPort, lastOfSecond])
  rack(book, '2025-08-11', 'SL', 'Store, rack A2')

  seasonWalk(book, '2025-09-09', 'MO', 0.7, 1.3)
  stripAndRelease(book, '2025-09-22', 'TA')
  take(book, third.slice(0, 6))
  leakChecks(book, '2026-02-20', 'RN', 0.7, 1.3)
  take(book, third.slice(6), {
    'LH-26-08': { went: 'harder', note: 'Jack-screw thread full of resin.' },
    'LH-26-10': { cleared: false },
  })
  rack(book, '2026-08-12', 'SL', 'Store, rack A2')

  seasonWalk(book, '2026-09-15', 'TA', 0.7, 1.4)
  take(book, ahead)
  return book
}
