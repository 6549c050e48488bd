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
import { layDownPatch, provePatch } from './patched'
import { pull } from './pulls'
import { coats, freshRelease, leakChecks, rack, stripAndRelease } from './upkeep'

/** The piece that leaks a little more every season, and that once held a hull. */
export function starboardBook(placeOf: (mould: string, number: number) => string): Book {
  const book = openBook('LH-S')
  seasonWalk(book, '2023-09-13', 'AW', 1.0, 2.1)
  freshRelease(book, '2023-09-21', 'JR')
  take(book, first.slice(0, 5))
  leakChecks(book, '2024-02-23', 'JR', 1.1, 2.4)
  take(book, first.slice(5), {
    'LH-24-07': {
      went: 'forced',
      fate: { mouldFate: 'marked' },
      note: 'Aft end of the side gripped; wedges over two hours.',
    },
  })
  book.write(
    '2024-05-29',
    'AW',
    'damage',
    { weight: 'mark', uMm: 1520, vMm: 200, what: 'Wedge marks of LH-24-07, dressed out' },
    { area: 'side' },
  )
  rack(book, '2024-08-14', 'AW', 'Store, rack A2')

  seasonWalk(book, '2024-09-16', 'SL', 1.3, 3.0)
  coats(book, '2024-09-19', 'JR', 2, { note: 'Not stripped: no time before the first hull.' })
  take(book, second, { 'LH-25-04': { went: 'harder', note: 'Same place again: aft end of the side.' } })
  tornSide(book)
  provePatch(book, { number: 1, area: 'side' }, placeOf('LH-S', 1), proofStarboard)
  take(book, [...afterStarboard, proofPort, lastOfSecond])
  rack(book, '2025-08-11', 'SL', 'Store, rack A2')

  seasonWalk(book, '2025-09-08', 'MO', 1.9, 4.8)
  stripAndRelease(book, '2025-09-12', 'TA')
  book.write('2025-09-18', 'SL', 'dowel-changed', {
    tag: 'D04',
    what: 'plugged',
    uMm: 1180,
    vMm: 140,
    diameterMm: 8,
  })
  book.write('2025-09-18', 'SL', 'dowel-changed', {
    tag: 'D04',
    what: 'set new',
    uMm: 1186,
    vMm: 140,
    diameterMm: 8,
  })
  coats(book, '2025-09-19', 'TA', 3, { area: 'floor', note: 'Ground round D04.' })
  take(book, third.slice(0, 6))
  leakChecks(
    book,
    '2026-02-20',
    'RN',
    2.4,
    6.1,
    'Up again. Soap film shows nothing on the face; the bush of D06 is suspected.',
  )
  take(book, third.slice(6))
  book.write(
    '2026-06-23',
    'SL',
    'dowel-changed',
    { tag: 'D06', what: 're-bushed', uMm: 1880, vMm: 110, diameterMm: 10 },
    { note: 'For the leak; it was not the bush.' },
  )
  rack(book, '2026-08-12', 'SL', 'Store, rack A2')

  seasonWalk(book, '2026-09-14', 'MO', 3.1, 8.4)
  stripAndRelease(book, '2026-09-18', 'RN')
  book.write(
    '2026-09-21',
    'MO',
    'note',
    {},
    {
      note: 'Hot leak in mbar over 10 min: 2.1, 2.4, 3.0, 3.4, 4.8, 6.1, 8.4 since 2023. The limit is 10. Next check before the third hull.',
    },
  )
  take(book, ahead)
  return book
}

function tornSide(book: Book): void {
  pull(book, {
    ...stuck,
    went: 'stuck',
    fate: { partFate: 'scrapped', mouldFate: 'damaged' },
    note: 'Stuck at the aft end of the side. Cut out in strips; it took the surface ply along.',
  })
  book.write(
    '2025-02-12',
    'JR',
    'damage',
    {
      weight: 'stop',
      uMm: 1510,
      vMm: 211,
      what: 'Surface ply and two bulk plies torn out, 60 by 45 mm, delaminated round it',
    },
    { area: 'side' },
  )
  book.write('2025-02-12', 'MO', 'state', {
    state: 'held',
    on: true,
    reason: 'Torn side after the stuck hull',
  })
  book.write(
    '2025-02-14',
    'SL',
    'inspection',
    { verdict: 'not sound', what: 'Tap test: delaminated on 64 mm round. Patch 1 to be drawn.' },
    { area: 'side' },
  )
  book.write(
    '2025-02-14',
    'SL',
    'note',
    {},
    {
      note: 'Why it stuck: that spot was dressed out in May and never sealed again. Not stripped in September either.',
    },
  )
  layDownPatch(book, {
    number: 1,
    area: 'side',
    on: '2025-03-06',
    by: 'JR',
    lots: ['S2-0398', 'B6-0371'],
    leak: ['2025-03-11', 1.4, 3.4],
    release: '2025-03-13',
    taped: '2025-03-14',
  })
  book.write('2025-03-17', 'MO', 'state', {
    state: 'held',
    on: false,
    reason: 'Patch 1 laid and looked over; proof pull only',
  })
}
