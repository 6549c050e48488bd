import { randomUUID } from 'node:crypto'
import { readFileSync } from 'node:fs'
import { describe, expect, test } from 'vitest'
import { sharp } from '#lib/exchange/picture/sharp.js'
import { type NewPicture, pictureLimits } from '#lib/schema/picture'
import {
  addPicture,
  bringPictureBack,
  changePicture,
  listPictures,
  picturesBeside,
  putPictureAway,
  readPicture,
  readPictureFile,
  readViews,
} from '#lib/services/pictures'
import { db } from '#lib/store/db'
import { ada, aMould, book, lam, log, refusal, today, vi } from './book'

/** Photos and drawings with moulds, patterns, split moulds and parts, through the verbs, in a real database. */

book()

const jpegs = new Map<string, Uint8Array<ArrayBuffer>>()

/** A photo of one colour, with the day that a camera wrote into it. */
async function photo(background = '#808080', taken: string | null = null): Promise<Uint8Array<ArrayBuffer>> {
  const key = `${background} ${taken}`
  const kept = jpegs.get(key)
  if (kept) return kept
  const plain = sharp({ create: { width: 64, height: 48, channels: 3, background } }).jpeg()
  const told = taken === null ? plain : plain.withExif({ IFD2: { DateTimeOriginal: taken } })
  const bytes = new Uint8Array(await told.toBuffer())
  jpegs.set(key, bytes)
  return bytes
}

async function picture(onId: string, changes: Partial<NewPicture> = {}, bytes?: Uint8Array<ArrayBuffer>) {
  return {
    id: randomUUID(),
    kind: 'photo' as const,
    on: 'mould' as const,
    onId,
    entryId: null,
    caption: '',
    view: '',
    takenOn: null,
    ...changes,
    bytes: bytes ?? (await photo()),
  }
}

const rows = async (table: 'picture' | 'picture_bytes' | 'creation' | 'audit') =>
  (await db().sql`select count(*)::int as rows from ${db().sql(table)}`)[0]?.rows as number

const all = () => Promise.all((['picture', 'picture_bytes', 'creation', 'audit'] as const).map(rows))

describe('a photo', () => {
  test('is stored with both sizes, who added it, and what it is with', async () => {
    const mould = await aMould()
    const sent = await picture(mould.id, { caption: ' a crack ', view: 'floor from the front' })
    const { picture: stored, written, notices } = await addPicture(lam, sent)
    expect({ written, notices }).toEqual({ written: true, notices: [] })
    expect(stored).toMatchObject({
      on: 'mould',
      onId: mould.id,
      subjectCode: mould.code,
      subjectName: mould.name,
      mimeType: 'image/jpeg',
      widthPx: 64,
      heightPx: 48,
      byName: 'Lam Hands',
      takenOn: await today(),
      view: 'floor from the front',
      version: 1,
    })
    for (const size of ['full', 'small'] as const) {
      const { bytes } = await readPictureFile(vi, { id: sent.id, size })
      expect((await sharp(bytes).metadata()).width).toBe(64)
    }
  })

  test('sent twice is stored once, also at the same moment', async () => {
    const mould = await aMould()
    const sent = await picture(mould.id)
    const answers = await Promise.all(Array.from({ length: 6 }, () => addPicture(lam, sent)))
    expect(answers.filter(({ written }) => written)).toHaveLength(1)
    expect((await listPictures(vi, { on: 'mould', onId: mould.id })).count).toBe(1)
    expect((await addPicture(lam, sent)).written).toBe(false)
  })

  test('under the same id with another file or other words is refused', async () => {
    const mould = await aMould()
    const sent = await picture(mould.id)
    await addPicture(lam, sent)
    const before = await all()
    expect(await refusal(addPicture(lam, { ...sent, bytes: await photo('#ff0000') }))).toMatchObject({
      status: 409,
    })
    expect(await refusal(addPicture(lam, { ...sent, caption: 'other' }))).toMatchObject({ status: 409 })
    expect(await all()).toEqual(before)
  })

  test.each([
    ['2024:05:01 10:00:00', '2024-05-01', 0],
    ['2999:01:01 10:00:00', null, 1],
    [null, null, 0],
  ] as const)(
    'the day that the camera wrote (%s) is taken, unless it is in the future',
    async (taken, day, told) => {
      const mould = await aMould()
      const { picture: stored, notices } = await addPicture(
        lam,
        await picture(mould.id, {}, await photo('#808080', taken)),
      )
      expect(stored.takenOn).toBe(day ?? (await today()))
      expect(notices).toHaveLength(told)
    },
  )

  test('a day given by hand goes before the camera; one in the future is refused', async () => {
    const mould = await aMould()
    const bytes = await photo('#808080', '2024:05:01 10:00:00')
    const { picture: stored } = await addPicture(
      lam,
      await picture(mould.id, { takenOn: '2023-02-01' }, bytes),
    )
    expect(stored.takenOn).toBe('2023-02-01')
    const refused = await refusal(addPicture(lam, await picture(mould.id, { takenOn: '2999-01-01' }, bytes)))
    expect(refused.fields).toHaveProperty('takenOn')
  })

  test('what is refused leaves nothing behind', async () => {
    const mould = await aMould()
    const before = await all()
    const heic = new Uint8Array(readFileSync('tests/cases/T51a-photo-type-heic-and-wrong-names/photo1.jpg'))
    const huge = new Uint8Array(readFileSync('tests/cases/T52a-photo-of-huge-size/white.png'))
    expect((await refusal(addPicture(lam, await picture(mould.id, {}, heic)))).message).toMatch(/HEIC/)
    expect((await refusal(addPicture(lam, await picture(mould.id, {}, huge)))).message).toMatch(
      /900 megapixels/,
    )
    expect((await refusal(addPicture(lam, await picture(randomUUID())))).fields).toHaveProperty('onId')
    expect(await all()).toEqual(before)
  })

  test('nothing that is half: a row of bytes that fails takes the picture with it', async () => {
    const mould = await aMould()
    const { sql } = db()
    await sql`create function fail_small() returns trigger language plpgsql as $$ begin
      if new.size = 'small' then raise exception 'no room' using errcode = '53100'; end if; return new; end $$`
    await sql`create trigger fail_small before insert on picture_bytes for each row execute function fail_small()`
    const before = await all()
    const sent = await picture(mould.id)
    await expect(addPicture(lam, sent)).rejects.toThrow()
    expect(await all()).toEqual(before)
    await sql`drop trigger fail_small on picture_bytes`
    expect((await addPicture(lam, sent)).written).toBe(true)
  })
})

describe('a drawing', () => {
  test('as PDF is kept as it is, and is a drawing whatever was said', async () => {
    const mould = await aMould()
    const pdf = new Uint8Array(Buffer.from(`%PDF-1.7\n${'0'.repeat(2_000_000)}\n%%EOF\n`))
    const sent = await picture(mould.id, { caption: 'section' }, pdf)
    const { picture: stored } = await addPicture(ada, sent)
    expect(stored).toMatchObject({
      kind: 'drawing',
      mimeType: 'application/pdf',
      widthPx: null,
      sizeBytes: pdf.length,
    })
    const { bytes } = await readPictureFile(vi, { id: sent.id, size: 'full' })
    expect(Buffer.from(bytes).equals(pdf)).toBe(true)
    expect(await refusal(readPictureFile(vi, { id: sent.id, size: 'small' }))).toMatchObject({ status: 404 })
  })

  test('of 25 MB goes in', async () => {
    const mould = await aMould()
    const pdf = new Uint8Array(pictureLimits.mostBytes).fill(0x30)
    pdf.set(Buffer.from('%PDF-1.7\n'))
    pdf.set(Buffer.from('\n%%EOF\n'), pdf.length - 7)
    const sent = await picture(mould.id, {}, pdf)
    expect((await addPicture(ada, sent)).written).toBe(true)
    expect((await readPictureFile(ada, { id: sent.id, size: 'full' })).bytes.length).toBe(pdf.length)
  })
})

describe('what a picture is with', () => {
  test('a pattern, a split mould, a built part', async () => {
    const { sql } = db()
    const [pattern] = await sql`insert into pattern (code, name) values ('P-PIC', 'plug') returning id`
    const [set] = await sql`insert into mould_set (code, name) values ('S-PIC', 'both halves') returning id`
    const [part] = await sql`insert into built_part (serial) values ('PIC-001') returning id`
    for (const [on, row, code] of [
      ['pattern', pattern, 'P-PIC'],
      ['set', set, 'S-PIC'],
      ['part', part, 'PIC-001'],
    ] as const) {
      const onId = row?.id as string
      const { picture: stored } = await addPicture(lam, await picture(onId, { on }))
      expect(stored).toMatchObject({ on, onId, subjectCode: code })
      expect((await listPictures(vi, { on, onId })).pictures.map(({ id }) => id)).toEqual([stored.id])
    }
  })

  test('an entry of the same mould, and of no other', async () => {
    const [mould, other] = [await aMould(), await aMould()]
    const entryId = await log(mould.id, 'damage')
    const { picture: stored } = await addPicture(lam, await picture(mould.id, { entryId }))
    expect((await readPicture(vi, { id: stored.id })).entry).toMatchObject({ id: entryId, kind: 'damage' })
    expect([...(await picturesBeside(vi, { on: 'mould', onId: mould.id })).keys()]).toEqual([entryId])
    const before = await all()
    const refused = await refusal(addPicture(lam, await picture(other.id, { entryId })))
    expect(refused.message).toMatch(/not in the log of this mould/)
    expect(refused.fields).toHaveProperty('entryId')
    expect(await all()).toEqual(before)
  })
})

describe('a fixed view', () => {
  test('lays its days side by side, oldest first; its spelling is that of the first', async () => {
    const mould = await aMould()
    const on = { on: 'mould', onId: mould.id } as const
    for (const [takenOn, view] of [
      ['2025-09-01', 'Floor from the front'],
      ['2024-09-01', 'floor FROM the front'],
      ['2024-09-02', 'flange'],
      ['2026-09-01', ' floor from the front '],
    ] as const) {
      const sent = await picture(mould.id, { takenOn, view: view.trim() })
      await addPicture(lam, sent)
    }
    const views = await readViews(vi, on)
    expect(views.map(({ view, pictures }) => [view, pictures.map(({ takenOn }) => takenOn)])).toEqual([
      ['Floor from the front', ['2024-09-01', '2025-09-01', '2026-09-01']],
      ['flange', ['2024-09-02']],
    ])
    const { pictures, count } = await listPictures(vi, { ...on, view: 'flange' })
    expect([pictures.length, count]).toEqual([1, 4])
  })
})

describe('changed and put away', () => {
  test('words and day change; the second writer is shown what changed', async () => {
    const mould = await aMould()
    const { picture: stored } = await addPicture(lam, await picture(mould.id))
    const change = { id: stored.id, version: 1, caption: 'a crack', view: 'floor', takenOn: '2024-05-01' }
    await changePicture(lam, change)
    expect((await readPicture(vi, { id: stored.id })).picture).toMatchObject({
      caption: 'a crack',
      view: 'floor',
      takenOn: '2024-05-01',
      version: 2,
    })
    const late = await refusal(changePicture(ada, { ...change, caption: 'other' }))
    expect(late).toMatchObject({ status: 409, current: { version: 2, values: { caption: 'a crack' } } })
    expect(
      (await refusal(changePicture(ada, { ...change, version: 2, takenOn: '2999-01-01' }))).fields,
    ).toHaveProperty('takenOn')
  })

  test('signs that stand for others in a search stand for themselves in its name', async () => {
    const mould = await aMould()
    await addPicture(lam, await picture(mould.id, { view: 'flange' }))
    for (const view of ['%', 'fl_nge', 'back\\slash']) {
      const { picture: stored } = await addPicture(lam, await picture(mould.id, { view }))
      expect(stored.view).toBe(view)
    }
  })

  test('the name of a view may be mended in its capitals', async () => {
    const mould = await aMould()
    const { picture: stored } = await addPicture(lam, await picture(mould.id, { view: 'FLOOR' }))
    await changePicture(lam, {
      id: stored.id,
      version: 1,
      caption: '',
      view: 'floor',
      takenOn: stored.takenOn,
    })
    expect((await readPicture(vi, { id: stored.id })).picture.view).toBe('floor')
  })

  test('put away with a because by who added it or a lead; the bytes stay; a lead brings it back', async () => {
    const mould = await aMould()
    const { picture: stored } = await addPicture(ada, await picture(mould.id))
    const away = { id: stored.id, version: 1, because: 'of another mould' }
    expect(await refusal(putPictureAway(lam, away))).toMatchObject({
      status: 403,
      message: 'Ada Lead added this picture; they or a lead put it away',
    })
    await putPictureAway(ada, away)
    const on = { on: 'mould', onId: mould.id } as const
    expect((await listPictures(vi, on)).count).toBe(0)
    expect((await listPictures(vi, { ...on, putAway: true })).pictures[0]).toMatchObject({
      putAwayBecause: 'of another mould',
    })
    expect((await readPictureFile(vi, { id: stored.id, size: 'full' })).bytes.length).toBeGreaterThan(100)
    await bringPictureBack(ada, { id: stored.id, version: 2 })
    expect((await listPictures(vi, on)).count).toBe(1)
    const { picture: own } = await addPicture(lam, await picture(mould.id))
    await putPictureAway(lam, { ...away, id: own.id })
  })

  test('a viewer neither adds nor changes', async () => {
    const mould = await aMould()
    expect(await refusal(addPicture(vi, await picture(mould.id)))).toMatchObject({ status: 403 })
  })
})
