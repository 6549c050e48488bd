import { readFileSync } from 'node:fs'
import { join } from 'node:path'
import { parse } from 'csv-parse/sync'
import fc from 'fast-check'
import { readSheet } from 'read-excel-file/node'
import { describe, expect, test } from 'vitest'
import type { LogEntry } from '#lib/core/log/index'
import {
  attachment,
  csvText,
  type DecimalMark,
  guard,
  mayRun,
  type Row,
  sheetName,
  type TableColumn,
  tableFileName,
  unguard,
  xlsxBytes,
} from '#lib/exchange/tables/index'
import { mostSignsInCell, sheetText } from '#lib/exchange/tables/sheet-text'
import { type LoggedEntry, logRow, shopTables } from '#lib/exchange/tables/shop/index'
import { logTable } from '#lib/exchange/tables/shop/log'
import { wallClock } from '#lib/exchange/tables/wall-clock'
import { logData } from '#lib/schema/log-data'

const zone = { timeZone: 'Europe/Berlin' }
const table = (columns: readonly TableColumn[]) => ({ name: 'trial', title: 'Trial', columns })
const texts = table([{ key: 'text', title: 'Text', kind: 'text' }])
const figures = table([{ key: 'figure', title: 'Figure (mm)', kind: 'number' }])

/** A CSV file as a program reads it that knows the standard and nothing of us. */
async function csvCells(
  head: ReturnType<typeof table>,
  rows: readonly Row[],
  decimal: DecimalMark = 'point',
): Promise<string[][]> {
  const file = Buffer.from(await csvText(head, rows, { ...zone, decimal }), 'utf8')
  return parse(file, {
    bom: true,
    delimiter: decimal === 'comma' ? ';' : ',',
    record_delimiter: '\r\n',
    relax_column_count: false,
    skip_empty_lines: false,
  })
}

async function sheetCells(head: ReturnType<typeof table>, rows: readonly Row[]) {
  return (await readSheet(Buffer.from(await xlsxBytes(head, rows, zone)), { trim: false })) as unknown[][]
}

describe('T13a: notes that begin with = + - @ beside negative numbers', () => {
  const folder = join(import.meta.dirname, '../cases/T13a-csv-injection-on-export')
  const read = (name: string) => JSON.parse(readFileSync(join(folder, name), 'utf8'))
  const records = read('records.json') as { mould: string; note: string; deviation_mm: string }[]
  const expected = read('expected.json') as {
    export_note_starts_with_guard: string[]
    export_number_unchanged: Record<string, string | string[]>
  }
  const head = table([
    { key: 'mould', title: 'Mould', kind: 'text' },
    { key: 'note', title: 'Note', kind: 'text' },
    { key: 'deviationMm', title: 'Deviation (mm)', kind: 'number' },
  ])
  const rows = records.map(({ mould, note, deviation_mm }) => ({
    mould,
    note,
    deviationMm: Number(deviation_mm),
  }))

  test('the notes are guarded and quoted, the numbers stay as they are', async () => {
    const lines = (await csvText(head, rows, { ...zone, decimal: 'point' })).split('\r\n')
    for (const mould of expected.export_note_starts_with_guard) {
      expect(lines.find((line) => line.startsWith(`${mould},`))).toMatch(/^M-0\d,"'[=+\-@]/)
    }
    const cells = (await csvCells(head, rows)).slice(1)
    expect(cells).toHaveLength(5)
    for (const [mould = '', , figure = ''] of cells) {
      expect([expected.export_number_unchanged[mould]].flat()).toContain(figure)
    }
  })

  test('numbers that came as text are left alone too', async () => {
    const asText = table([{ key: 'text', title: 'Text', kind: 'text' }])
    const cells = await csvCells(
      asText,
      records.map(({ deviation_mm }) => ({ text: deviation_mm })),
    )
    expect(cells.slice(1).flat()).toEqual(records.map(({ deviation_mm }) => deviation_mm))
  })

  test('reading our own file again gives the notes as they were', async () => {
    const cells = (await csvCells(head, rows)).slice(1)
    expect(cells.map(([, note = '']) => unguard(note))).toEqual(records.map(({ note }) => note))
  })

  test('in a worksheet they are text as written, and no cell is a formula', async () => {
    const cells = (await sheetCells(head, rows)).slice(1)
    expect(cells.map(([, note]) => note)).toEqual(records.map(({ note }) => note))
    expect(cells.map(([, , figure]) => figure)).toEqual([-12.5, -0.25, 3, -1e-7, 0])
  })
})

describe('the guard', () => {
  test.each([
    '=1+2',
    '+49 30',
    '-x',
    '@home',
    ' =1',
    '\t=1',
    '\r=1',
    '\n-',
    '\t1',
    '＝1',
    '＋1',
    '－1',
    '＠x',
    '\u00a0=1',
    '\u200b=1',
    '﹣1',
    '-',
    '-1-1',
    '+1,2,3',
    '=',
    '−1+cmd',
  ])('%j is taken for a formula somewhere', (text) => {
    expect(mayRun(text)).toBe(true)
    expect(guard(text)).toBe(`'${text}`)
  })

  test.each([
    '',
    'a=b',
    '-12.5',
    '+3',
    '-1e-7',
    '-12,5',
    '-.5',
    '10 °C',
    '(=1)',
    "it's",
    '#1',
    '1-2',
    'D-01',
  ])('%j is left alone', (text) => expect(guard(text)).toBe(text))

  test('a text with an apostrophe in front gets another, so that taking one off is always right', () => {
    expect(guard("'=1")).toBe("''=1")
    expect(guard("'t was")).toBe("''t was")
    fc.assert(
      fc.property(anyText, (text) => {
        expect(unguard(guard(text))).toBe(text)
        expect(mayRun(guard(text))).toBe(false)
      }),
      { numRuns: 2000 },
    )
  })
})

/** Texts of all kinds of signs, and texts made of what is hard on CSV, on formulas and on XML. */
const hard = fc.constantFrom(
  '=',
  '+',
  '-',
  '@',
  "'",
  '"',
  ',',
  ';',
  '\r',
  '\n',
  '\t',
  ' ',
  '\u00a0',
  '\ufeff',
  '<',
  '&',
  ']]>',
  '_x000D_',
  '_x',
  '_',
  'é',
  '😀',
  '1',
  '.',
  '＝',
  '\u0085',
  '\ufffd',
  '\u2028',
)
const anyText = fc.oneof(
  fc.string({ unit: 'binary', maxLength: 30 }),
  fc.array(hard, { maxLength: 12 }).map((parts) => parts.join('')),
  fc.constantFrom('constructor', '__proto__', 'toString', 'hasOwnProperty', 'valueOf'),
)

describe('any text comes back', () => {
  test.each(['point', 'comma'] as const)('from CSV with a decimal %s', async (decimal) => {
    await fc.assert(
      fc.asyncProperty(fc.array(anyText, { minLength: 1, maxLength: 8 }), async (all) => {
        const cells = await csvCells(
          table([...texts.columns, { key: 'last', title: 'Last', kind: 'text' }]),
          all.map((text) => ({ text, last: text })),
          decimal,
        )
        expect(cells.slice(1).map((row) => row.map(unguard))).toEqual(all.map((text) => [text, text]))
      }),
      { numRuns: 300 },
    )
  })

  test('from XLSX, but for what a worksheet cannot hold', async () => {
    await fc.assert(
      fc.asyncProperty(fc.array(anyText, { minLength: 1, maxLength: 12 }), async (all) => {
        const numbered = table([{ key: 'no', title: 'No.', kind: 'number' }, ...texts.columns])
        const cells = await sheetCells(
          numbered,
          all.map((text, no) => ({ no, text })),
        )
        expect(cells.slice(1).map(([, text]) => text ?? '')).toEqual(all.map(sheetText))
      }),
      { numRuns: 150 },
    )
  })

  test('control characters are taken out of a worksheet, everything else stays', () => {
    expect(sheetText('a\u0000b\u0007c\u001fd\ud800e\uffff')).toBe('abcde')
    expect(sheetText('\t\r\n é 😀 \u0085 \ufffd')).toBe('\t\r\n é 😀 \u0085 \ufffd')
  })

  test('a text too long for a cell is cut there and says so; the CSV has all of it', async () => {
    const long = `${'x'.repeat(mostSignsInCell - 1)}😀${'y'.repeat(9)}`
    const [, [cut = ''] = []] = (await sheetCells(texts, [{ text: long }])) as string[][]
    expect(cut.length).toBeLessThanOrEqual(mostSignsInCell)
    expect(cut).toMatch(/x … \[cut: the CSV has all of it\]$/)
    const [, [whole = ''] = []] = await csvCells(texts, [{ text: long }])
    expect(whole).toBe(long)
  })
})

describe('any number keeps its value', () => {
  const anyNumber = fc.oneof(
    fc.double({ noNaN: true, noDefaultInfinity: true }),
    fc.integer(),
    fc.constantFrom(0, -0, -1e-7, 1e21, 5e-324, 0.1 + 0.2),
  )

  test('in CSV and XLSX', async () => {
    await fc.assert(
      fc.asyncProperty(fc.array(anyNumber, { minLength: 1, maxLength: 20 }), async (all) => {
        const rows = all.map((figure) => ({ figure }))
        const same = all.map((value) => value + 0)
        expect((await csvCells(figures, rows)).slice(1).map(([cell]) => Number(cell))).toEqual(same)
        const comma = (await csvCells(figures, rows, 'comma')).slice(1)
        expect(comma.map(([cell = '']) => Number(cell.replace(',', '.')))).toEqual(same)
        expect((await sheetCells(figures, rows)).slice(1).flat()).toEqual(same)
      }),
      { numRuns: 100 },
    )
  })

  test('a figure that is none leaves its cell empty, as one that is not known', async () => {
    const rows = [{ figure: Number.NaN }, { figure: Number.POSITIVE_INFINITY }, { figure: null }]
    expect((await csvCells(figures, [...rows, { figure: 1 }])).slice(1)).toEqual([[''], [''], [''], ['1']])
    expect((await sheetCells(figures, [...rows, { figure: 1 }])).slice(1)).toEqual([
      [null],
      [null],
      [null],
      [1],
    ])
  })
})

describe('a file', () => {
  const head = table([
    { key: 'on', title: 'On', kind: 'date' },
    { key: 'at', title: 'At', kind: 'moment' },
    { key: 'good', title: 'Good', kind: 'yes-no' },
    { key: 'depthMm', title: 'Depth (mm)', kind: 'number', decimals: 2 },
    { key: 'note', title: 'Note; more', kind: 'text' },
  ])
  const rows = [
    { on: '2026-03-14', at: '2026-07-01T22:30:00.000Z', good: true, depthMm: 1.23456, note: 'a, "b"\nc' },
    { on: '1899-12-31', at: null, good: false, depthMm: -2, note: '' },
  ]

  test('is CSV as RFC 4180 has it: a mark, commas, CRLF at every end, quotes doubled', async () => {
    expect(await csvText(head, rows, { ...zone, decimal: 'point' })).toBe(
      '\uFEFFOn,At,Good,Depth (mm),"Note; more"\r\n' +
        '2026-03-14,2026-07-02T00:30:00+02:00,yes,1.23456,"a, ""b""\nc"\r\n' +
        '1899-12-31,,no,-2,\r\n',
    )
  })

  test('with a decimal comma has semicolons', async () => {
    const text = await csvText(head, rows, { ...zone, decimal: 'comma' })
    expect(text.split('\r\n')[1]).toBe('2026-03-14;2026-07-02T00:30:00+02:00;yes;1,23456;"a, ""b""\nc"')
  })

  test('as a worksheet has dates as dates, on the right day; days before its calendar as text', async () => {
    const [titles, first, second] = await sheetCells(head, rows)
    expect(titles).toEqual(['On', 'At (Europe/Berlin)', 'Good', 'Depth (mm)', 'Note; more'])
    const [on, at, ...rest] = first ?? []
    expect(on).toEqual(new Date('2026-03-14T00:00:00Z'))
    // A sheet counts in parts of a day: the reader may be off by a thousandth of a second.
    expect(Math.abs((at as Date).getTime() - Date.parse('2026-07-02T00:30:00Z'))).toBeLessThanOrEqual(1)
    expect(rest).toEqual([true, 1.23456, 'a, "b"\nc'])
    expect(second?.[0]).toBe('1899-12-31')
  })

  test('without rows has its heading', async () => {
    expect(await csvCells(head, [])).toHaveLength(1)
    expect(await sheetCells(head, [])).toHaveLength(1)
  })

  test('is not made of rows of another table', async () => {
    await expect(csvText(figures, [{ text: 'x' }], { ...zone, decimal: 'point' })).rejects.toThrow(
      /no "figure"/,
    )
    await expect(xlsxBytes(figures, [{ figure: '1' }], zone)).rejects.toThrow(/is number, got string/)
  })
})

describe('moments', () => {
  test('stand as the clock on the wall showed them, with the offset, also when it is put back', () => {
    const clock = wallClock('Europe/Berlin')
    expect(clock('2026-10-25T00:30:00Z').iso).toBe('2026-10-25T02:30:00+02:00')
    expect(clock('2026-10-25T01:30:00.250Z').iso).toBe('2026-10-25T02:30:00.250+01:00')
    expect(wallClock('America/St_Johns')('2026-01-01T12:00:00Z').iso).toBe('2026-01-01T08:30:00-03:30')
    expect(() => clock('yesterday')).toThrow(RangeError)
  })

  test('come back as the same moment, whatever the zone', () => {
    const zones = fc.constantFrom(
      'UTC',
      'Asia/Kathmandu',
      'America/New_York',
      'Pacific/Apia',
      'Australia/Lord_Howe',
    )
    const when = fc.date({ min: new Date('1850-01-01'), max: new Date('2200-01-01'), noInvalidDate: true })
    fc.assert(
      fc.property(zones, when, (timeZone, date) => {
        expect(Date.parse(wallClock(timeZone)(date.toISOString()).iso)).toBe(date.getTime())
      }),
      { numRuns: 300 },
    )
  })
})

describe('names', () => {
  test.each([
    ['Moulds: [all]/*?', 'Moulds all'],
    ["'quoted'", 'quoted'],
    ['', 'Table 1'],
    ['History', 'History 1'],
    ['A very long title of a table that goes on', 'A very long title of a table t…'],
  ])('of a sheet: %j is %j', (title, name) => expect(sheetName(title)).toBe(name))

  test('of sheets are different for all tables, and taken as they are', () => {
    const names = shopTables.map(({ title }) => sheetName(title))
    expect(new Set(names).size).toBe(names.length)
    for (const name of names) expect(name.length).toBeLessThanOrEqual(31)
  })

  test('of files hold nothing that breaks a path or a header', () => {
    const name = tableFileName(['Müller & Söhne', '../log', 'LH"P\r\nX: 1'], '2026-11-25', 'csv')
    expect(name).toBe('Müller-Söhne-log-LH-P-X-1-2026-11-25.csv')
    expect(attachment(name)).toBe(
      'attachment; filename="Muller-Sohne-log-LH-P-X-1-2026-11-25.csv"; ' +
        "filename*=UTF-8''M%C3%BCller-S%C3%B6hne-log-LH-P-X-1-2026-11-25.csv",
    )
    expect(attachment("a'(b)*.csv")).toContain("UTF-8''a%27%28b%29%2A.csv")
  })

  test('any shop name makes a header that can be sent', () => {
    fc.assert(
      fc.property(anyText, (shop) => {
        const header = attachment(tableFileName([shop, 'log'], '2026-11-25', 'xlsx'))
        expect(header).toMatch(/^attachment; filename="[\w.-]+"; filename\*=UTF-8''[\w.%~!-]+$/)
        expect(() => new Headers({ 'content-disposition': header })).not.toThrow()
      }),
    )
  })
})

describe("the shop's tables", () => {
  test.each(shopTables.map((each) => [each.name, each] as const))(
    '%s has columns of its own names',
    (_name, each) => {
      const keys = each.columns.map(({ key }) => key)
      const titles = each.columns.map(({ title }) => title)
      expect(new Set(keys).size).toBe(keys.length)
      expect(new Set(titles).size).toBe(titles.length)
      expect(each.about).toMatch(/^One row .*\.$/)
    },
  )

  const entry = {
    id: 'e1',
    kind: 'leak-check',
    doneOn: '2026-03-14',
    doneAt: null,
    precision: 'day',
    writtenAt: '2026-03-14T10:00:00Z',
    byName: 'Ada',
    areaId: null,
    areaName: null,
    place: null,
    patchId: null,
    patchNumber: null,
    note: '',
    correctsId: null,
    correctedById: null,
    groupId: null,
    uses: [{ lotId: 'l1', name: 'bag film', lot: '9', amount: 0.5, unit: 'm2' }],
    data: {
      bagging: 'mould alone',
      heat: 'cold',
      temperatureC: null,
      pins: 'out',
      volumeL: null,
      startMbar: 20,
      endMbar: 26,
      minutes: 10,
    },
    mould: 'LH-P',
    pattern: null,
    correctedByKind: null,
  }
  const logged = (changes: object = {}) => ({ ...entry, ...changes }) as unknown as LoggedEntry

  test('the log has a cell for every column, figures in columns of their own', () => {
    const row = logRow(logged())
    expect(Object.keys(row).sort()).toEqual(logTable.columns.map(({ key }) => key).sort())
    expect(row).toMatchObject({
      words: 'Leak check',
      startMbar: 20,
      lossMbar: 6,
      coats: null,
      standing: 'yes',
      other: '',
    })
  })

  test('every figure that an entry can carry has a column', () => {
    const keys = new Set(logTable.columns.map(({ key }) => key))
    for (const [kind, schema] of Object.entries(logData)) {
      for (const key of Object.keys(schema.shape)) expect(keys.has(key), `${kind}: ${key}`).toBe(true)
    }
  })

  test('what was taken from stock stands with its lot', () => {
    expect(logRow(logged()).taken).toBe('bag film lot 9: 0.5 m²')
  })

  test('what an entry carries and has no column is not lost', () => {
    const data = { ...entry.data, sealedBy: 'tape', marks: [1, 2], minutes: 'ten' }
    expect(logRow(logged({ data }))).toMatchObject({ other: 'sealedBy: tape; marks: 1; 2', minutes: null })
  })

  test('lists stand in one cell', () => {
    const data: LogEntry['data'] = {
      planId: 'p',
      number: 3,
      lots: [
        { material: 'S200', lot: '12' },
        { material: 'B650', lot: '7' },
      ],
    }
    expect(logRow(logged({ kind: 'patch-laid', data })).lots).toBe('S200 12; B650 7')
  })

  test.each([
    [{}, 'yes'],
    [{ correctedById: 'e2', correctedByKind: 'correction' }, 'no, struck out'],
    [{ correctedById: 'e2', correctedByKind: 'leak-check' }, 'no, put right'],
  ])('an entry with %j counts: %s', (changes, standing) => {
    expect(logRow(logged(changes)).standing).toBe(standing)
  })
})
