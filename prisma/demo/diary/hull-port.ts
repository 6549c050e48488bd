import { addDays } from '../base/calendar'
import { type Book, openBook } from './book'
import {
  afterStarboard,
  ahead,
  first,
  type Hull,
  lastOfSecond,
  type Odd,
  proofPort,
  proofStarboard,
  seasonWalk,
  second,
  stuck,
  take,
  third,
} from './hull-builds'
import { layDownPatch, provePatch } from './patched'
import { care, pull } from './pulls'
import { coats, freshRelease, leakChecks, rack, stripAndRelease } from './upkeep'

export function portBook(placeOf: (mould: string, number: number) => string): Book {
  const book = openBook('LH-P')
  seasonWalk(book, '2023-09-13', 'AW', 0.8, 1.6)
  freshRelease(book, '2023-09-20', 'JR')
  take(book, first.slice(0, 5), {
    'LH-24-05': { went: 'harder', note: 'Aft end of the floor held; air helped.' },
  })
  leakChecks(book, '2024-02-23', 'JR', 0.8, 1.7)
  take(book, first.slice(5))
  rack(book, '2024-08-14', 'AW', 'Store, rack A1')

  seasonWalk(book, '2024-09-16', 'SL', 0.9, 1.9)
  stripAndRelease(book, '2024-09-18', 'JR')
  take(book, [...second, stuck], {
    'LH-25-06': {
      went: 'harder',
      fate: { partFate: 'scrapped' },
      note: 'Came off the port piece; it stuck to starboard.',
    },
  })
  leakChecks(book, '2025-03-11', 'TA', 0.9, 1.9)
  take(book, [proofStarboard, ...afterStarboard], {
    'LH-25-09': {
      went: 'forced',
      fate: { partFate: 'rework', mouldFate: 'damaged' },
      note: 'The pin of D05 seized in its bush and turned it out.',
    },
  })
  bushTornOut(book)
  provePatch(book, { number: 1, area: 'floor' }, placeOf('LH-P', 1), proofPort)
  take(book, [lastOfSecond])
  rack(book, '2025-08-11', 'SL', 'Store, rack A1')

  seasonWalk(book, '2025-09-08', 'MO', 1.0, 2.2)
  moveFourth(book)
  takeThird(book, third.slice(0, 6))
  leakChecks(book, '2026-02-20', 'RN', 1.0, 2.3)
  takeThird(book, third.slice(6))
  book.write(
    '2026-06-22',
    'RN',
    'damage',
    {
      weight: 'mark',
      uMm: 1720,
      vMm: 300,
      what: 'Scratch of 30 mm from a trimming knife; can be felt, not deep',
    },
    { area: 'floor' },
  )
  rack(book, '2026-08-12', 'SL', 'Store, rack A1')

  seasonWalk(book, '2026-09-14', 'MO', 1.1, 2.4)
  stripAndRelease(book, '2026-09-17', 'RN')
  take(book, ahead)
  book.write(
    '2026-11-13',
    'SL',
    'note',
    {},
    {
      note: 'Patch 2 (D02) is signed. It waits until the first two hulls are trimmed; the pattern pin was moved on 27 October.',
    },
  )
  return book
}

function bushTornOut(book: Book): void {
  book.write(
    '2025-05-02',
    'TA',
    'damage',
    {
      weight: 'stop',
      uMm: 1350,
      vMm: 215,
      what: 'Bush of D05 turned out; laminate round it torn on 45 mm, front to back',
    },
    { area: 'floor' },
  )
  book.write(
    '2025-05-05',
    'SL',
    'inspection',
    { verdict: 'not sound', what: 'D05: tap test dull on 50 mm round. To be patched.' },
    { area: 'floor' },
  )
  layDownPatch(book, {
    number: 1,
    area: 'floor',
    on: '2025-05-20',
    by: 'TA',
    lots: ['S2-0412', 'B6-0387'],
    leak: ['2025-05-21', 0.9, 2.0],
    release: '2025-05-22',
    taped: '2025-05-23',
    dowel: { tag: 'D05', uMm: 1350, vMm: 215 },
  })
}

function moveFourth(book: Book): void {
  book.write(
    '2025-09-16',
    'TA',
    'dowel-changed',
    { tag: 'D03', what: 're-bushed', uMm: 900, vMm: 130, diameterMm: 8 },
    { note: 'Old bush worn to 8.09; reamed and set off the pattern pin.' },
  )
  book.write('2025-09-17', 'SL', 'dowel-changed', {
    tag: 'D04',
    what: 'plugged',
    uMm: 1180,
    vMm: 330,
    diameterMm: 8,
  })
  book.write(
    '2025-09-17',
    'SL',
    'dowel-changed',
    { tag: 'D04', what: 'set new', uMm: 1186, vMm: 330, diameterMm: 8 },
    {
      note: 'Issue of 10 September: 6 mm aft. The old hole lies under the new bush: filled and bonded in one go.',
    },
  )
  coats(book, '2025-09-19', 'TA', 3, { area: 'floor', note: 'Ground round D03 and D04.' })
}

const thirdOdd: Odd = { 'LH-26-06': { went: 'harder', note: 'Cold mould, 14 °C in the hall.' } }

/** One serial of the season was written down wrong and put right the next morning. */
function takeThird(book: Book, some: readonly Hull[]): void {
  for (const hull of some) {
    const wrong = hull.serial === 'LH-26-03'
    const key = pull(book, { ...hull, ...(wrong ? { serial: 'LH-26-30' } : {}), ...thirdOdd[hull.serial] })
    if (wrong) {
      book.write(
        hull.on,
        hull.by,
        'pull',
        { went: 'usual', serial: hull.serial, partFate: 'good', mouldFate: 'unharmed', cureC: 120 },
        { correctsKey: key, writtenOn: addDays(hull.on, 1), note: 'The serial was typed 30 for 03.' },
      )
    }
    care(book, hull.on, hull.by)
  }
}
