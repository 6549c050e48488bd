import type { IsoDate } from '#lib/core/dates'
import type { LogData, LogKind } from '#lib/core/log/index'
import type { Who } from '../data/people'
import { type Book, type More, openBook } from './book'
import { coats, seal, tape } from './upkeep'

/** What was written down beside the pulls: heats, pins, measured points, repairs for the time being, open matters. */
export function besideBooks(): Book[] {
  return [deckBook(), portBook(), starboardBook(), tubBook(), ringBook(), spatBook()]
}

/** Entries of a mould in a book of their own, with keys that its diary has not. */
function beside(mould: string): Book {
  const book = openBook(mould)
  const write = <Kind extends LogKind>(
    on: IsoDate,
    by: Who,
    kind: Kind,
    data: LogData[Kind],
    more: More = {},
  ) => book.write(on, by, kind, data, { key: `${mould}/beside/${book.drafts.length + 1}`, ...more })
  return { ...book, write }
}

/** The oldest mould: nobody counted before the book. */
function deckBook(): Book {
  const book = beside('UD-0')
  book.write(
    '2023-09-01',
    'AW',
    'before-book',
    {
      pullsLow: 25,
      pullsBest: 35,
      pullsHigh: 45,
      heatLow: 20,
      heatBest: 35,
      heatHigh: 50,
      what: 'Two seasons of decks by the part list, and what two people remember; repaired decks were cured again',
    },
    { precision: 'before' },
  )
  return book
}

function portBook(): Book {
  const book = beside('LH-P')
  book.write('2025-05-21', 'TA', 'heat', { what: 'post-cure', toC: 150, holdMin: 240, withPart: false })
  book.write(
    '2026-08-12',
    'SL',
    'pins',
    { tag: null, insertions: 24 },
    { note: 'Season 2025/26, both sides.' },
  )
  book.write(
    '2026-09-14',
    'MO',
    'measured',
    {
      instrument: 'measuring arm',
      temperatureC: 21,
      frame: 'area',
      points: [
        { tag: 'D01', xMm: 130.02, yMm: 360.01, zMm: 0.03 },
        { tag: 'D02', xMm: 640.06, yMm: 234.95, zMm: 0.02 },
        { tag: 'D03', xMm: 900.04, yMm: 130.07, zMm: -0.04 },
        { tag: 'D05', xMm: 1350.09, yMm: 215.03, zMm: 0.06 },
      ],
    },
    { area: 'floor', note: 'After-season walk; best fit on D01 and D05 is still to be done.' },
  )
  book.write('2026-11-16', 'SL', 'matter', {
    what: 'Two spare bushes for D05: ask the machine shop for a date',
    who: 'Ravi Nand',
    untilOn: '2026-11-20',
  })
  return book
}

function starboardBook(): Book {
  const book = beside('LH-S')
  book.write('2026-08-12', 'SL', 'pins', { tag: null, insertions: 24 })
  book.write('2026-09-14', 'MO', 'matter', {
    what: 'Bolts of the aft flange: replace the three with worn threads',
    who: 'Tove Aas',
    untilOn: '2026-12-18',
  })
  return book
}

/** Filled for the time being: two parts have come out over it, the third is the last. */
function tubBook(): Book {
  const book = beside('ST-1')
  const place = { area: 'back' } as const
  book.write(
    '2026-09-23',
    'RN',
    'repair',
    {
      method: 'fill',
      what: 'Dull spot at the left shoulder skimmed with filler, 40 by 25 mm',
      interim: true,
      untilPulls: 3,
      untilOn: null,
      maxC: 80,
      uMm: 366,
      vMm: -112,
    },
    place,
  )
  seal(book, '2026-09-24', 'RN', 2, place)
  return book
}

function ringBook(): Book {
  const book = beside('CR-1')
  book.write('2026-09-22', 'TA', 'test-patch', {
    surface: 'flange, 60 by 60 mm',
    sealer: 'Base sealer S',
    agent: 'Semi-permanent agent A',
    result: 'releases',
  })
  return book
}

/** A repair that became one for good. */
function spatBook(): Book {
  const book = beside('WS-L')
  const key = 'WS-L/beside/chip'
  book.write(
    '2026-03-02',
    'TA',
    'repair',
    {
      method: 'surface ply',
      what: 'Chip at the trim edge, one ply over 60 by 30 mm',
      interim: false,
      untilPulls: null,
      untilOn: null,
      maxC: null,
      uMm: null,
      vMm: null,
    },
    { key },
  )
  seal(book, '2026-03-03', 'TA', 2)
  coats(book, '2026-03-03', 'TA', 4)
  tape(book, '2026-03-03', 'TA', 'slips')
  return book
}
