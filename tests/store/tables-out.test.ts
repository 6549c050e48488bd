import { randomUUID } from 'node:crypto'
import { parse } from 'csv-parse/sync'
import { readSheet } from 'read-excel-file/node'
import { beforeAll, describe, expect, test } from 'vitest'
import { csvText, type Row, unguard } from '#lib/exchange/tables/index'
import { shopTableNamed, shopTables } from '#lib/exchange/tables/shop/index'
import { cellOf } from '#lib/exchange/tables/types'
import { addPointIssue } from '#lib/services/moulds'
import { listTables, openLeadTable, openTable } from '#lib/services/tables-out'
import { db } from '#lib/store/db'
import { serveTable } from '#lib/web/table-route'
import { ada, aMould, anArea, book, bulkId, lam, log, refusal, vi } from './book'
import { get, problem, tokens, withTokens } from './calls'
import { aPatch } from './patch-book'

book()
withTokens()

const ids = { mould: '', code: '', area: '', patch: '', plan: '', wrong: '', struck: '' }
const formula = '=HYPERLINK("http://x.example","y")'
const all = { mould: null, patch: null, version: null, issue: null }

/** All rows of a table as a role reads them. */
async function rowsOf(name: string, asked: Partial<typeof all> | object = {}): Promise<Row[]> {
  const open = shopTableNamed(name)?.forLead ? openLeadTable : openTable
  const opened = await open(ada, open.schema.parse({ name, ...all, ...asked }))
  const rows: Row[] = []
  for await (const batch of opened.batches) rows.push(...batch)
  return rows
}

const download = (path: string, token: string | null = tokens.viewer) =>
  serveTable(get(`/out/${path}`, { token }), path.split('?')[0] ?? '')

async function csvOf(path: string, token = tokens.viewer): Promise<Record<string, string>[]> {
  const answer = await download(path, token)
  const bytes = Buffer.from(await answer.arrayBuffer())
  expect(answer.status, bytes.toString()).toBe(200)
  return parse(bytes, { bom: true, columns: true, record_delimiter: '\r\n' })
}

beforeAll(async () => {
  const { sql } = db()
  const [part] = await sql`insert into part (code, name) values ('LH', 'lower hull') returning id`
  const [pattern] =
    await sql`insert into pattern (code, name, made_of) values ('LH-PT', 'hull', 'board') returning id`
  const [set] =
    await sql`insert into mould_set (code, name, part_id) values ('LH-S', 'hull', ${part?.id}) returning id`
  await sql`insert into set_hardware (set_id, position, kind, name) values (${set?.id}, 1, 'bolt', 'M8')`
  await sql`insert into season (name, starts_on, ends_on) values ('2024', '2024-01-01', '2024-12-31')`
  const mould = await aMould({
    code: 'LH-P',
    partId: part?.id,
    patternId: pattern?.id,
    setId: set?.id,
    pieceNo: 1,
  })
  const area = await anArea(mould.id, {
    lines: [
      {
        name: 'edge',
        kind: 'trim',
        closed: false,
        points: [
          [0, 0],
          [10, 0],
        ],
      },
    ],
  })
  for (const [number, u] of [
    [1, 10],
    [2, 12.5],
  ] as const) {
    await addPointIssue(ada, {
      id: randomUUID(),
      mouldId: mould.id,
      name: `issue ${number}`,
      issuedOn: '2024-03-01',
      note: '',
      points: [
        {
          tag: 'D01',
          areaName: 'floor',
          kind: 'dowel',
          uMm: u,
          vMm: -300,
          diameterMm: 8,
          bushDiameterMm: null,
          through: true,
          isDatum: false,
          toleranceMm: null,
          notYetFixed: false,
        },
      ],
    })
  }
  await sql`
    insert into thickness_reading (area_id, u_mm, v_mm, thickness_mm, measured_on, by_name, struck_at, struck_by_name, struck_because)
    values (${area.id}, 0, 0, 3.1, '2024-03-01', 'Ada', null, null, null), (${area.id}, 5, 0, 31, '2024-03-01', 'Ada', now(), 'Ada', 'slipped')`
  const { patchId, planId } = await aPatch(mould.id, area.id, 'laid')
  const wrong = await log(mould.id, 'pull', { doneOn: '2024-06-10', note: formula, data: { serial: 'S1' } })
  await log(mould.id, 'pull', {
    doneOn: '2024-06-10',
    correctsId: wrong,
    data: { went: 'harder', serial: 'S1' },
  })
  const struck = await log(mould.id, 'coat', { doneOn: '2024-06-11' })
  await log(mould.id, 'correction', { doneOn: '2024-06-11', correctsId: struck })
  await sql`
    insert into log_entry (id, mould_id, kind, done_on, precision, day_order, by_name, data, content_hash)
    values (gen_random_uuid(), ${mould.id}, 'matter', '2024-06-12', 'day', 720, 'Ada', ${sql.json({ what: 'seal land', who: 'Lam', untilOn: null })}, 'x')`
  await sql`
    insert into log_entry (id, pattern_id, kind, done_on, precision, day_order, by_name, data, content_hash)
    values (gen_random_uuid(), ${pattern?.id}, 'moved', '2024-06-12', 'day', 720, 'Ada', ${sql.json({ place: 'loft' })}, 'x')`
  const [built] = await sql`
    insert into built_part (serial, part_id) values ('S1', ${part?.id})
    on conflict (lower(btrim(serial))) do update set part_id = excluded.part_id returning id`
  await sql`insert into built_part_lot (built_part_id, position, material, lot) values (${built?.id}, 1, 'B650', '7')`
  const [product] = await sql`insert into product (name, use) values ('sealer', 'sealer') returning id`
  const [lot] = await sql`
    insert into stock_lot (material_id, lot, container, quantity, received_on) values (${bulkId}, '7', 'roll', 50, '2024-01-01') returning id`
  await sql`
    insert into lot_move (id, lot_id, kind, amount, done_on, by_name, plan_id)
    values (gen_random_uuid(), ${lot?.id}, 'used', 4.5, '2024-06-01', 'Lam', ${planId})`
  await sql`
    insert into lot_move (id, lot_id, kind, amount, done_on, by_name, entry_id)
    values (gen_random_uuid(), ${lot?.id}, 'used', 2, '2024-06-11', 'Lam', ${struck})`
  await sql`
    insert into price (product_id, minor_per_unit, unit, currency, from_on, by_name) values
      (${product?.id}, 4205, 'l', 'EUR', '2024-01-01', 'Ada'), (${product?.id}, 9900, 'l', 'EUR', '2999-01-01', 'Ada')`
  await sql`
    insert into price (product_id, minor_per_unit, unit, currency, from_on, by_name, written_at) values
      (${product?.id}, 1, 'l', 'EUR', '2024-01-01', 'Ada', '2024-01-01T00:00:00Z')`
  await sql`
    insert into rate (operation, basis, minor_per_basis, currency, from_on, by_name) values ('lay', 'hour', 1500, 'JPY', '2024-01-01', 'Ada')`
  await sql`
    insert into rate (operation, basis, minor_per_basis, currency, from_on, by_name, written_at) values
      ('Lay ', 'hour', 15, 'JPY', '2024-01-01', 'Ada', '2024-01-01T00:00:00Z'),
      ('lay', 'ply m2', 900, 'JPY', '2024-01-01', 'Ada', '2024-01-01T00:00:00Z')`
  await sql`
    insert into picture (id, kind, mime_type, width_px, height_px, size_bytes, taken_on, mould_id, by_name, content_hash)
    values (gen_random_uuid(), 'photo', 'image/jpeg', 10, 10, 100, '2024-06-01', ${mould.id}, 'Ada', 'x')`
  Object.assign(ids, {
    mould: mould.id,
    code: mould.code,
    area: area.id,
    patch: patchId,
    plan: planId,
    wrong,
    struck,
  })
})

describe('every table', () => {
  test.each(shopTables.map(({ name }) => name))('%s has rows, each with all of its cells', async (name) => {
    const head = shopTableNamed(name)
    if (!head) throw new Error('no head')
    const rows = await rowsOf(name)
    expect(rows.length).toBeGreaterThan(0)
    for (const row of rows) for (const column of head.columns) cellOf(head, column, row)
    // Dates and moments are such, or writing them is refused.
    await expect(csvText(head, rows, { decimal: 'point', timeZone: 'Europe/Berlin' })).resolves.toContain(
      '\r\n',
    )
    const days = head.columns.filter(({ kind }) => kind === 'date').map(({ key }) => key)
    for (const row of rows)
      for (const key of days) expect(row[key] ?? '2024-01-01').toMatch(/^\d{4}-\d\d-\d\d$/)
  })

  test('a rate is put right by a later one of the same operation and basis, a price is one of the unit kept', async () => {
    const rates = await rowsOf('rates')
    expect(rates.map(({ basis, putRight }) => [basis, putRight]).sort()).toEqual([
      ['hour', false],
      ['hour', true],
      ['ply m2', false],
    ])
    const [before] = await rowsOf('products')
    expect(before?.priceFromOn).toBe('2024-01-01')
    await db().sql`update product set unit = 'kg' where name = 'sealer'`
    const [after] = await rowsOf('products')
    await db().sql`update product set unit = 'l' where name = 'sealer'`
    expect(after?.priceFromOn).toBeNull()
  })

  test('says what the screens say', async () => {
    const [mould] = await rowsOf('moulds', { mould: 'lh-p' })
    expect(mould).toMatchObject({
      code: 'LH-P',
      state: 'proof pull only',
      pulls: 1,
      part: 'LH',
      pattern: 'LH-PT',
      set: 'LH-S',
      stack: 'M141',
    })
    expect(await rowsOf('pulls')).toMatchObject([
      { mould: 'LH-P', pullNo: 1, went: 'harder', serial: 'S1', cleared: false },
    ])
    expect(await rowsOf('patches')).toMatchObject([
      { patch: 1, version: 1, planState: 'laid', side: 'pattern, back', laidOn: '2024-06-01' },
    ])
    expect(await rowsOf('stock-lots')).toMatchObject([{ of: 'B650', remaining: 45.5, unit: 'm2' }])
    expect(await rowsOf('stock-moves')).toMatchObject([
      { amount: 4.5, mould: 'LH-P', standing: 'yes' },
      { amount: 2, mould: 'LH-P', standing: 'no, struck out' },
    ])
    expect((await rowsOf('log')).find(({ id }) => id === ids.struck)?.taken).toBe('650 twill lot 7: 2 m²')
    expect(await rowsOf('products')).toMatchObject([{ name: 'sealer', price: 42.05, currency: 'EUR' }])
    expect((await rowsOf('prices')).map(({ price, putRight }) => [price, putRight])).toEqual([
      [0.01, true],
      [42.05, false],
      [99, false],
    ])
    expect((await rowsOf('rates')).slice(-1)).toMatchObject([
      { operation: 'lay', price: 1500, currency: 'JPY' },
    ])
    expect(await rowsOf('patterns')).toMatchObject([{ code: 'LH-PT', place: 'loft', moulds: 'LH-P' }])
    expect(await rowsOf('built-parts')).toMatchObject([
      { serial: 'S1', moulds: 'LH-P', pulledOn: '2024-06-10' },
    ])
    expect(await rowsOf('open-matters')).toMatchObject([{ what: 'seal land', who: 'Lam' }])
    const readings = await rowsOf('thickness-readings')
    expect(readings.map(({ counts }) => counts).sort()).toEqual([false, true])
    expect((await rowsOf('face-areas'))[0]).toMatchObject({
      readings: 1,
      meanThicknessMm: 3.1,
      stack: 'M141',
    })
    const outline = await rowsOf('face-outlines')
    expect(outline.map(({ kind, no }) => `${kind} ${no}`)).toEqual([
      'boundary 1',
      'boundary 2',
      'boundary 3',
      'boundary 4',
      'trim 1',
      'trim 2',
    ])
    const plies = await rowsOf('patch-plies')
    const takeOff = await rowsOf('take-off')
    expect(plies).toHaveLength(6)
    expect(takeOff.map(({ material }) => material).sort()).toEqual(['200 twill', '650 twill'])
    const stacks = await rowsOf('stacks')
    expect(stacks.map(({ ply, material }) => `${ply} ${material}`).slice(0, 2)).toEqual(['1 S200', '2 B650'])
    // t = FAW / (1000 rho Vf) for the surface ply: 200 / (1000 x 1.78 x 0.5).
    expect(stacks[0]?.plyThicknessMm).toBeCloseTo(200 / 890, 9)
  })
})

describe('the log of a shop with corrections', () => {
  test('says which entry counts, which is struck out, which is put right, and by which', async () => {
    const rows = await csvOf('log.csv?mould=lh-p')
    const byId = new Map(rows.map((row) => [row.Id, row]))
    expect(byId.get(ids.wrong)?.Counts).toBe('no, put right')
    expect(byId.get(ids.struck)?.Counts).toBe('no, struck out')
    const right = rows.find((row) => row['Puts right'] === ids.wrong)
    expect(right).toMatchObject({ Counts: 'yes', Went: 'harder', Serial: 'S1' })
    expect(byId.get(ids.wrong)?.['Put right by']).toBe(right?.Id)
    expect(rows.find((row) => row['Puts right'] === ids.struck)).toMatchObject({
      Kind: 'Struck out',
      Counts: 'strikes out',
    })
  })

  test('newest first, with the patterns after the moulds; one mould alone leaves them out', async () => {
    const rows = await rowsOf('log')
    const days = rows.filter(({ mould }) => mould === 'LH-P').map(({ doneOn }) => doneOn)
    expect(days).toEqual([...days].sort().reverse())
    expect(rows.at(-1)).toMatchObject({ mould: null, pattern: 'LH-PT', place: 'loft' })
    expect((await rowsOf('log', { mould: 'LH-P' })).every(({ mould }) => mould === 'LH-P')).toBe(true)
  })

  test('a note that is a formula is guarded in CSV and comes back; in XLSX it is text', async () => {
    const note = (await csvOf('log.csv')).find((row) => row.Id === ids.wrong)?.Note ?? ''
    expect(note).toBe(`'${formula}`)
    expect(unguard(note)).toBe(formula)
    const answer = await download('log.xlsx')
    const sheet = (await readSheet(Buffer.from(await answer.arrayBuffer()))) as unknown[][]
    const [titles = []] = sheet
    const of = (title: string) => titles.indexOf(title)
    const row = sheet.find((cells) => cells[of('Id')] === ids.wrong)
    expect(row?.[of('Note')]).toBe(formula)
    expect(row?.[of('Done on')]).toEqual(new Date('2024-06-10T00:00:00Z'))
    expect(row?.[of('Written (Europe/Berlin)')]).toBeInstanceOf(Date)
  })
})

describe('narrowed', () => {
  test('to an issue of points, or to what is in force', async () => {
    expect((await csvOf('locating-points.csv?issue=1')).map((row) => row['u (mm)'])).toEqual(['10'])
    expect((await csvOf('locating-points.csv?issue=current')).map((row) => row['u (mm)'])).toEqual(['12.5'])
    expect((await csvOf('locating-points.csv')).map((row) => row['In force'])).toEqual(['yes', 'no'])
  })

  test('to a version of a patch', async () => {
    expect((await csvOf(`job-lines.csv?patch=${ids.patch}&v=1`)).length).toBeGreaterThan(5)
    expect(await csvOf(`job-lines.csv?patch=${ids.patch}&v=2`)).toEqual([])
    expect(await csvOf(`findings.csv?patch=${randomUUID()}`)).toEqual([])
  })

  test('with a decimal comma', async () => {
    const answer = await download('locating-points.csv?issue=2&decimal=comma')
    expect(await answer.text()).toContain(';12,5;-300;')
  })

  test.each([
    ['log.csv?mould=NO-SUCH', 404],
    ['log.csv?mold=LH-P', 422],
    ['log.csv?decimal=both', 422],
    ['parts.csv?mould=LH-P', 422],
    ['moulds.csv?patch=1', 422],
    ['job-lines.csv?v=0', 422],
    ['job-lines.csv?v=one', 422],
    ['locating-points.csv?issue=last', 422],
    ['no-such.csv', 404],
    ['log.pdf', 404],
    ['log', 404],
    ['..%2Flog.csv', 404],
  ])('%s is refused with %i', async (path, status) => {
    await problem(await download(path), status)
  })
})

describe('who may', () => {
  test.each(['people', 'tokens', 'audit'])('%s: the lead alone', async (name) => {
    for (const token of [tokens.viewer, tokens.laminator])
      await problem(await download(`${name}.csv`, token), 403)
    await problem(await download(`${name}.xlsx`, tokens.laminator), 403)
    expect((await download(`${name}.csv`, tokens.lead)).status).toBe(200)
    const open = { name, ...all } as never
    expect((await refusal(openLeadTable(lam, open))).status).toBe(403)
    // Nor by the door that is open to everyone.
    expect(openTable.schema.safeParse({ name, ...all }).success).toBe(false)
  })

  test('the others: everybody who is signed in', async () => {
    for (const token of [tokens.viewer, tokens.laminator, tokens.lead]) {
      expect((await download('moulds.csv', token)).status).toBe(200)
    }
    await problem(await download('moulds.csv', null), 401)
    await problem(await download('people.csv', null), 401)
  })

  test('the list shows what one may take', async () => {
    const names = async (actor: typeof ada) =>
      (await listTables(actor, {})).flatMap(({ tables }) => tables.map(({ name }) => name))
    expect(await names(ada)).toEqual(shopTables.map(({ name }) => name))
    for (const actor of [lam, vi]) {
      expect(await names(actor)).toEqual(shopTables.filter(({ forLead }) => !forLead).map(({ name }) => name))
    }
  })

  test('no secret leaves with any of them', async () => {
    const { sql } = db()
    const secrets = (
      await sql`select password as secret from account union all select token_hash from api_token union all select token from session`
    ).map((row) => row.secret as string)
    expect(secrets.length).toBeGreaterThan(4)
    for (const { name } of shopTables) {
      const text = await (await download(`${name}.csv`, tokens.lead)).text()
      for (const secret of secrets) expect(text.includes(secret), name).toBe(false)
    }
  })
})

test('a download is named after shop, table and day, and kept by no cache', async () => {
  const { headers } = await download('log.csv?mould=lh-p')
  expect(headers.get('content-type')).toBe('text/csv; charset=utf-8; header=present')
  expect(headers.get('content-disposition')).toMatch(
    /^attachment; filename="Test-shop-log-LH-P-\d{4}-\d\d-\d\d\.csv"; filename\*=UTF-8''Test-shop-log-LH-P-/,
  )
  expect(headers.get('cache-control')).toBe('no-store')
  const sheet = await download('parts.xlsx')
  expect(sheet.headers.get('content-type')).toMatch(/spreadsheetml\.sheet$/)
  expect(sheet.headers.get('content-disposition')).toContain('.xlsx"')
})

describe('a long log', () => {
  const long = 1300
  let code = ''
  beforeAll(async () => {
    const moulds = await Promise.all(Array.from({ length: 18 }, () => aMould()))
    code = moulds[0]?.code ?? ''
    // Many on the same day and in the same millisecond: only the id tells them apart.
    await db().sql`
      insert into log_entry (id, mould_id, kind, done_on, precision, day_order, written_at, by_name, data, note, content_hash)
      select gen_random_uuid(), m.id, 'coat', date '2024-01-01' + n / 500, 'day', 720,
        timestamptz '2024-01-01' + make_interval(secs => n / 100), 'Lam', '{"product": "release", "lot": "7", "coats": 2, "minutesBetween": 20}',
        'entry ' || n, 'x' from mould m, generate_series(1, ${long}) n
      where m.id = any(${moulds.map(({ id }) => id)}::uuid[]) and (n <= 490 or m.code = ${code})`
  })

  test('goes out page by page: every entry once, newest first', async () => {
    const rows = await csvOf(`log.csv?mould=${code}`)
    expect(rows).toHaveLength(long)
    expect(new Set(rows.map((row) => row.Id)).size).toBe(long)
    const days = rows.map((row) => row['Done on'])
    expect(days).toEqual([...days].sort().reverse())
  })

  test('of many moulds goes out mould by mould, every entry once', async () => {
    const rows = await csvOf('log.csv')
    const [stored] = await db().sql`select count(*)::int as entries from log_entry`
    expect(new Set(rows.map((row) => row.Id)).size).toBe(stored?.entries)
    expect(rows).toHaveLength(stored?.entries)
    const changes = rows.filter((row, index) => row.Mould !== rows[index - 1]?.Mould)
    expect(changes.length).toBe(new Set(rows.map((row) => row.Mould)).size)
  })

  test('is sent as it is read: whoever stops taking it stops the reading', async () => {
    const answer = await download(`log.csv?mould=${code}`)
    const reader = answer.body?.getReader()
    const first = await reader?.read()
    expect(new TextDecoder().decode(first?.value).split('\r\n').length).toBeLessThan(3)
    await reader?.cancel()
  })

  test('is refused as XLSX, with what to do instead', async () => {
    const told = await problem(await download('log.xlsx'), 422)
    expect(told.detail).toMatch(/too long for XLSX .* Take it as CSV, .* one mould with \?mould=/)
  })
})
