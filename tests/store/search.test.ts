import { randomUUID } from 'node:crypto'
import { beforeAll, describe, expect, test } from 'vitest'
import { cellOf } from '#lib/core/geometry/index'
import { fold, type HitKind, squeeze } from '#lib/core/search/index'
import { SearchAnswerSchema } from '#lib/schema/answers/search'
import { addPointIssue } from '#lib/services/moulds'
import { findInBook } from '#lib/services/search'
import { db } from '#lib/store/db'
import { GET } from '../../app/api/v1/find/route'
import { ada, aMould, anArea, book, lam, log, vi } from './book'
import { answered, get, problem, tokens, withTokens } from './calls'
import { aPatch } from './patch-book'

book()
withTokens()

const hull = { id: '', code: 'LH-P2' }
const area = { id: '' }

beforeAll(async () => {
  const mould = await aMould({ code: hull.code, name: 'Lower hull, port', note: 'Großer Rahmen, 100 % eben' })
  hull.id = mould.id
  await aMould({ code: 'LH-S2', name: 'Lower hull, starboard' })
  await aMould({ code: 'DK_1', name: 'Upper deck' })
  await aMould({ code: 'DKX1', name: 'Upper deck, older' })
  area.id = (await anArea(mould.id)).id
  await log(mould.id, 'moved', { data: { place: 'Regal B4' } })
  await log(mould.id, 'damage', {
    areaId: area.id,
    data: { what: 'hairline crack along the radius', uMm: -380, vMm: 330 },
  })
  await log(mould.id, 'note', { note: 'Wedges under the flange; it’s 50% dry' })
  await aPatch(mould.id, area.id, 'sketched')
  await addPointIssue(ada, {
    id: randomUUID(),
    mouldId: mould.id,
    name: 'First',
    issuedOn: '2024-01-10',
    note: '',
    points: [
      {
        tag: 'D03',
        areaName: 'floor',
        kind: 'dowel',
        uMm: -380,
        vMm: 330,
        diameterMm: 8,
        bushDiameterMm: null,
        through: false,
        isDatum: false,
        toleranceMm: null,
        notYetFixed: false,
      },
    ],
  })
})

const look = (q: string, actor = ada) => findInBook(actor, { q })

async function titles(q: string, kind: HitKind): Promise<string[]> {
  const { groups } = await look(q)
  return (groups.find((group) => group.kind === kind)?.hits ?? []).map(({ title }) => title)
}

describe('codes', () => {
  test.each(['LH-P2', 'lh-p2', ' LHP2 ', 'lh p2', 'Lh_p2'])('%j is the mould itself', async (q) => {
    expect((await look(q)).exact).toMatchObject({ kind: 'mould', title: 'LH-P2', fit: 'exact' })
  })

  test('the code itself first, then what begins so, then words', async () => {
    const long = await aMould({ code: 'LH-P2-OLD', name: 'spare' })
    const noted = await aMould({ code: 'A-9', name: 'tray', note: 'fits LH-P2' })
    expect(await titles('LH-P2', 'mould')).toEqual(['LH-P2', long.code, noted.code])
  })

  test('a code that is begun finds all that begin so, and none of them is exact', async () => {
    const answer = await look('LH')
    expect(answer.exact).toBeNull()
    expect(await titles('LH', 'mould')).toEqual(expect.arrayContaining(['LH-P2', 'LH-S2']))
  })
})

describe('words', () => {
  test('all have to stand in the thing, in its place or in its part', async () => {
    expect(await titles('hull port', 'mould')).toContain('LH-P2')
    expect(await titles('hull port', 'mould')).not.toContain('LH-S2')
    expect(await titles('hull regal', 'mould')).toEqual(['LH-P2'])
    expect(await titles('hull canopy', 'mould')).toEqual([])
  })

  test('umlauts, accents and ß are no hindrance, from either side', async () => {
    expect(await titles('grosser', 'mould')).toEqual(['LH-P2'])
    expect(await titles('GROßER', 'mould')).toEqual(['LH-P2'])
    expect(await titles('gròsser', 'mould')).toEqual(['LH-P2'])
  })

  test('state and place of a mould are those of now', async () => {
    const hit = (await look('LH-P2')).groups[0]?.hits[0]
    expect(hit).toMatchObject({ place: 'Regal B4', state: 'held' })
  })

  test('what is folded in the database is folded alike here', async () => {
    const words = [
      'Großer Kratzer',
      'HÜLLE',
      'Zoë',
      'Łódź',
      'Øre',
      'đak',
      'Ærø',
      'œuvre',
      '5 µm',
      'Ⅻ',
      'ﬁn',
      'naïve',
      'LH-P 2',
      'ſ',
    ]
    const rows = await db()
      .sql`select w, plain_words(w) as plain, squeezed(w) as code from unnest(${words}::text[]) w`
    for (const row of rows) {
      expect(row.plain, row.w).toBe(fold(row.w))
      expect(row.code, row.w).toBe(squeeze(row.w))
    }
  })
})

describe('signs that mean something elsewhere', () => {
  test('stand for themselves: no pattern, no quote, no end of a statement', async () => {
    expect(await titles('DK_1', 'mould')).toEqual(['DK_1'])
    expect(await titles('100 %', 'mould')).toEqual(['LH-P2'])
    expect(await titles('50%', 'entry')).toHaveLength(1)
    for (const q of [
      "x'; drop table mould; --",
      'h%l',
      '_____',
      'a\\',
      '\\',
      'hull\\',
      '(hull',
      '$1',
      '{}',
      '😀',
      '\u0000hull',
      'null',
    ]) {
      const answer = await look(q)
      expect(answer.groups.flatMap(({ hits }) => hits).filter(({ fit }) => fit === 'exact')).toEqual([])
    }
    expect(await titles('h%l', 'mould')).toEqual([])
    expect(await db().sql`select 1 from mould limit 1`).toHaveLength(1)
  })

  test('blank, or without a letter or figure: nothing was asked', async () => {
    for (const q of ['', '   ', '%', '—']) expect(await look(q)).toMatchObject({ asked: false, groups: [] })
  })

  test('one and two letters look where words begin', async () => {
    expect(await titles('de', 'mould')).toEqual(expect.arrayContaining(['DK_1', 'DKX1']))
    expect(await titles('ck', 'mould')).toEqual([])
    expect((await look('u')).groups.length).toBeGreaterThan(0)
  })
})

describe('places on a face', () => {
  const cell = cellOf({ originMm: [-600, 400], cellMm: 50 }, [-380, 330])

  test('a cell of the grid finds what lies in it', async () => {
    const { groups } = await look(`floor ${cell}`)
    const found = Object.fromEntries(groups.map(({ kind, hits }) => [kind, hits]))
    expect(found.damage?.[0]).toMatchObject({
      name: 'hairline crack along the radius',
      place: `floor ${cell}`,
      of: { code: 'LH-P2' },
    })
    expect(found.point?.[0]).toMatchObject({ title: 'D03', place: `floor ${cell}` })
    expect((await look('floor A1')).groups.map(({ kind }) => kind)).not.toContain('damage')
  })

  test('the borders of a cell belong to it as they do in the core', async () => {
    const mould = await aMould({ code: 'GRID-1', name: 'grid' })
    const face = await anArea(mould.id, { name: 'bulkhead' })
    const spots = [-600, -575, -550, -500].flatMap((uMm) => [400, 375, 350, 300].map((vMm) => ({ uMm, vMm })))
    for (const spot of spots)
      await log(mould.id, 'damage', { areaId: face.id, data: { weight: 'mark', what: 'dot', ...spot } })
    const by = new Map<string, number>()
    for (const { uMm, vMm } of spots) {
      const name = cellOf({ originMm: [-600, 400], cellMm: 50 }, [uMm, vMm])
      by.set(name, (by.get(name) ?? 0) + 1)
    }
    for (const [name, count] of by) {
      const { groups } = await findInBook(ada, { q: `bulkhead ${name}`, in: 'damage', limit: 100 })
      expect(groups[0]?.hits.length, name).toBe(count)
    }
  })

  test('a patch by its number, alone and with the mould; by the cell that it lies in', async () => {
    const patch = (await look('patch 1')).groups.find(({ kind }) => kind === 'patch')?.hits[0]
    expect(patch).toMatchObject({ title: 'Patch 1', of: { kind: 'mould', code: 'LH-P2' }, state: 'sketched' })
    expect(await titles('lh-p2 patch 1', 'patch')).toEqual(['Patch 1'])
    expect(await titles('lh-s2 patch 1', 'patch')).toEqual([])
    expect(await titles('lh-p2 patches', 'patch')).toEqual(['Patch 1'])
    expect(await titles(patch?.place ?? '', 'patch')).toEqual(['Patch 1'])
  })

  test('a locating point by its tag', async () => {
    expect(await titles('D03', 'point')).toEqual(['D03'])
    expect(await titles('lh-p2 d03', 'point')).toEqual(['D03'])
    expect(await titles('lh-s2 d03', 'point')).toEqual([])
  })
})

describe('the log', () => {
  test('by words, by mould, by who wrote, by kind, all together', async () => {
    expect(await titles('hairline', 'entry')).toHaveLength(1)
    expect(await titles('LH-P2 hairline', 'entry')).toHaveLength(1)
    expect(await titles('LH-S2 hairline', 'entry')).toHaveLength(0)
    expect(await titles('hairline ada', 'entry')).toHaveLength(1)
    expect(await titles('hairline lam', 'entry')).toHaveLength(0)
    expect(await titles('LH-P2 damage', 'entry')).toHaveLength(1)
  })

  test('an entry that was put right says so', async () => {
    const mould = await aMould({ code: 'COR-1' })
    const wrong = await log(mould.id, 'note', { note: 'zebra stripes' })
    await log(mould.id, 'correction', { correctsId: wrong })
    const { groups } = await look('zebra')
    expect(groups[0]?.hits[0]).toMatchObject({ id: wrong, state: 'put right' })
  })
})

describe('slips of typing', () => {
  test.each([
    ['hlul port', 'hull port'],
    ['starbord', 'starboard'],
    ['hairlnie', 'hairline'],
    ['LH-P7', 'LH-P2'],
  ])('%s is taken for %s, and told', async (typed, meant) => {
    const answer = await look(typed)
    expect(answer.meant?.toLowerCase()).toBe(meant.toLowerCase())
    expect(answer.exact).toBeNull()
    expect(answer.groups.flatMap(({ hits }) => hits).every(({ fit }) => fit === 'near')).toBe(true)
    expect(answer.groups.length).toBeGreaterThan(0)
  })

  test('what comes near nothing is not found, and nothing is made up', async () => {
    expect(await look('xylophone')).toMatchObject({ meant: null, groups: [], asked: true })
  })
})

describe('who asks', () => {
  test('everyone finds the names on the entries; e-mail addresses are the lead’s', async () => {
    expect((await look('lam', vi)).groups.find(({ kind }) => kind === 'person')?.hits[0]).toMatchObject({
      title: 'Lam Hands',
      detail: 'laminator',
    })
    expect((await look('lam@shop.example', lam)).groups.map(({ kind }) => kind)).not.toContain('person')
    expect((await look('lam@shop.example', ada)).groups.map(({ kind }) => kind)).toContain('person')
  })

  test('the route answers what its description says', async () => {
    const answer = await answered(
      await GET(get('/api/v1/find?q=hull', { token: tokens.viewer })),
      SearchAnswerSchema,
    )
    expect(answer.groups[0]?.kind).toBe('mould')
    const brief = await answered(await GET(get('/api/v1/find?q=hairline&brief')), SearchAnswerSchema)
    expect(brief.groups).toEqual([])
    const one = await answered(await GET(get('/api/v1/find?q=hull&in=mould&limit=1')), SearchAnswerSchema)
    expect(one.groups).toMatchObject([{ kind: 'mould', hits: [{}], more: true }])
  })

  test('the route refuses what it can’t read, and who is not signed in', async () => {
    for (const bad of ['in=nothing', 'limit=0', 'limit=x', `q=${'a'.repeat(201)}`]) {
      await problem(await GET(get(`/api/v1/find?q=a&${bad}`.replace('q=a&q=', 'q='))), 422)
    }
    await problem(await GET(get('/api/v1/find?q=a', { token: null })), 401)
  })
})
