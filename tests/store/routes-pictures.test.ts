import { randomUUID } from 'node:crypto'
import { readFileSync } from 'node:fs'
import { describe, expect, test } from 'vitest'
import { AddedPictureAnswer, PictureListAnswer } from '#lib/schema/answers/picture'
import { auth } from '#lib/store/auth'
import { db } from '#lib/store/db'
import { refusalOf } from '#lib/store/errors'
import * as bytesRoute from '../../app/(shop)/pictures/[id]/[size]/route'
import * as sendRoute from '../../app/(shop)/pictures/send/route'
import * as picturesRoute from '../../app/api/v1/moulds/[code]/pictures/route'
import { aMould, book, firstLead, password } from './book'
import { answered, at, get, host, problem, request, tokens, withTokens } from './calls'

/** Pictures as a script and a browser without script send them. */

book()
withTokens()

const file = (path: string) => new Uint8Array(readFileSync(`tests/cases/${path}`))
const upright = file('T50a-photo-exif-rotation/upright.jpg')
const heic = file('T51a-photo-type-heic-and-wrong-names/photo1.jpg')

function form(
  fields: Readonly<Record<string, string>>,
  ...files: readonly (readonly [string, Uint8Array<ArrayBuffer>])[]
) {
  const body = new FormData()
  for (const [name, value] of Object.entries(fields)) body.append(name, value)
  for (const [name, bytes] of files) body.append('file', new File([bytes], name))
  return body
}

const send = (code: string, body: BodyInit, token = tokens.laminator) =>
  picturesRoute.POST(request(`/api/v1/moulds/${code}/pictures`, 'POST', { body, token }), at(code))

const sizeRoute = (
  id: string,
  size: string,
  headers: Record<string, string> = {},
  token: string | null = tokens.viewer,
) =>
  bytesRoute.GET(get(`/pictures/${id}/${size}`, { headers, token }), {
    params: Promise.resolve({ id, size }),
  })

test('a long caption with signs of two halves still gives its file a name', async () => {
  const { code } = await aMould()
  for (const before of [100, 101, 102, 103]) {
    const id = randomUUID()
    const caption = 'x'.repeat(before) + '🔧'.repeat(20)
    expect((await send(code, form({ id, caption }, ['a.jpg', upright]))).status).toBe(201)
    expect((await sizeRoute(id, 'small')).status).toBe(200)
  }
})

describe('by token', () => {
  test('201 first, then 200 with the same body; listed; its bytes turned right and bare', async () => {
    const { code } = await aMould()
    const fields = { id: randomUUID(), caption: 'upright', view: 'floor' }
    const first = await answered(
      await send(code, form(fields, ['IMG.HEIC', upright])),
      AddedPictureAnswer,
      201,
    )
    expect(first).toMatchObject({
      widthPx: 40,
      heightPx: 60,
      mimeType: 'image/jpeg',
      caption: 'upright',
      kind: 'photo',
    })
    const again = await answered(await send(code, form(fields, ['IMG.HEIC', upright])), AddedPictureAnswer)
    expect(again).toEqual(first)
    const listed = await answered(
      await picturesRoute.GET(get('/'), at(code.toLowerCase())),
      PictureListAnswer,
    )
    expect(listed.pictures.map(({ id }) => id)).toEqual([first.id])
    const answer = await sizeRoute(first.id, 'full')
    expect(answer.status).toBe(200)
    expect(Object.fromEntries(answer.headers)).toMatchObject({
      'content-type': 'image/jpeg',
      'x-content-type-options': 'nosniff',
      'content-security-policy': "default-src 'none'; sandbox",
      'content-disposition': `inline; filename*=UTF-8''${code}%20${first.takenOn}%20upright.jpg`,
    })
    expect(answer.headers.get('cache-control')).toMatch(/^private/)
    const etag = answer.headers.get('etag') ?? ''
    const unchanged = await sizeRoute(first.id, 'full', { 'if-none-match': `"other", W/${etag}` })
    expect([unchanged.status, (await unchanged.arrayBuffer()).byteLength]).toEqual([304, 0])
    expect((await sizeRoute(first.id, 'small')).headers.get('etag')).not.toBe(etag)
  })

  test('a PDF is only ever saved', async () => {
    const { code } = await aMould()
    const pdf = new Uint8Array(Buffer.from('%PDF-1.7\n<script>alert(1)</script>\n%%EOF\n'))
    const { id, kind } = await answered(
      await send(code, form({ id: randomUUID(), caption: 'a/b "c"' }, ['x.png', pdf])),
      AddedPictureAnswer,
      201,
    )
    expect(kind).toBe('drawing')
    const answer = await sizeRoute(id, 'full')
    expect(answer.headers.get('content-disposition')).toMatch(
      /^attachment; filename\*=UTF-8''[\w%.-]+%20a%20b%20c\.pdf$/,
    )
    expect(answer.headers.get('content-type')).toBe('application/pdf')
    expect(answer.headers.get('x-content-type-options')).toBe('nosniff')
    expect(answer.headers.get('content-security-policy')).toMatch(/sandbox/)
    await problem(await sizeRoute(id, 'small'), 404)
  })

  test('faults are told by field, and nothing is written', async () => {
    const { code } = await aMould()
    const count = async () => (await db().sql`select count(*)::int as rows from picture`)[0]?.rows
    const before = await count()
    const id = randomUUID()
    expect((await problem(await send(code, form({ id }, ['a.jpg', heic])), 422)).fields).toHaveProperty(
      'file',
    )
    expect((await problem(await send(code, form({ id })), 422)).fields).toHaveProperty('file')
    expect(
      (await problem(await send(code, form({ id: 'x' }, ['a.jpg', upright])), 422)).fields,
    ).toHaveProperty('id')
    expect(
      (await problem(await send(code, form({ id, takenOn: '2024-13-01' }, ['a.jpg', upright])), 422)).fields,
    ).toHaveProperty('takenOn')
    expect(
      (await problem(await send(code, form({ id, kind: 'film' }, ['a.jpg', upright])), 422)).fields,
    ).toHaveProperty('kind')
    expect(
      (await problem(await send(code, form({ id, entryId: randomUUID() }, ['a.jpg', upright])), 422)).fields,
    ).toHaveProperty('entryId')
    await problem(await send(code, 'not a form'), 400)
    await problem(await send('NO-SUCH', form({ id }, ['a.jpg', upright])), 404)
    await problem(await send(code, form({ id }, ['a.jpg', upright]), tokens.viewer), 403)
    expect(await count()).toBe(before)
  })

  test('more than a form may hold is refused while it comes in', async () => {
    const { code } = await aMould()
    let given = 0
    const endless = new ReadableStream<Uint8Array>({
      pull(controller) {
        given += 1
        controller.enqueue(new Uint8Array(1024 * 1024))
      },
    })
    const answer = await picturesRoute.POST(
      request('/', 'POST', { body: endless, headers: { 'content-type': 'multipart/form-data; boundary=x' } }),
      at(code),
    )
    expect((await problem(answer, 413)).detail).toMatch(/At most 50 MB; send fewer photos at once/)
    expect(given).toBeLessThan(60)
  })

  test('bytes are for those who are signed in', async () => {
    const { code } = await aMould()
    const { id } = await answered(
      await send(code, form({ id: randomUUID() }, ['a.jpg', upright])),
      AddedPictureAnswer,
      201,
    )
    await problem(await sizeRoute(id, 'full', {}, null), 401)
    await problem(await sizeRoute(id, 'large'), 422)
    await problem(await sizeRoute(randomUUID(), 'full'), 404)
    await problem(await sizeRoute("' or 1=1", 'full'), 422)
  })
})

describe("the shop's own form without script", () => {
  async function cookie(): Promise<string> {
    const answer = await auth().api.signInEmail({
      body: { email: firstLead.email, password },
      headers: new Headers({ host }),
      asResponse: true,
    })
    return (answer.headers.get('set-cookie') ?? '').split(';')[0] ?? ''
  }

  const again = '/pictures/add?on=mould&id=x'
  const post = async (body: FormData, headers: Record<string, string> = {}) =>
    sendRoute.POST(
      request(`/pictures/send?again=${encodeURIComponent(again)}`, 'POST', {
        body,
        token: null,
        headers: { cookie: await cookie(), origin: `http://${host}`, accept: 'text/html,*/*', ...headers },
      }),
    )

  const told = (answer: Response) =>
    JSON.parse(
      decodeURIComponent(
        /mouldwright-told=([^;]*)/.exec(answer.headers.get('set-cookie') ?? '')?.[1] ?? 'null',
      ),
    )

  test('several files: each has its own fate, and the page tells', async () => {
    const mould = await aMould()
    const body = form({
      on: 'mould',
      onId: mould.id,
      kind: 'photo',
      caption: 'walk',
      view: '',
      takenOn: '',
      entryId: '',
    })
    const ids = [randomUUID(), randomUUID(), randomUUID()]
    for (const id of ids) body.append('id', id)
    // The camera's field, which was left alone, comes as an empty file without a name.
    body.append('file', new File([], ''))
    body.append('file', new File([upright], 'one.jpg'))
    body.append('file', new File([heic], 'two.jpg'))
    body.append('file', new File([upright], 'three.jpg'))
    const answer = await post(body)
    expect(answer.status).toBe(303)
    expect(answer.headers.get('location')).toMatch(/^\/pictures\/add\?on=mould&id=x&told=[0-9a-f]{12}$/)
    expect(answer.headers.get('set-cookie')).toMatch(/HttpOnly; SameSite=Lax/)
    expect(told(answer)).toMatchObject({
      kept: 2,
      lines: [expect.stringMatching(/^two\.jpg: This is a HEIC photo/)],
    })
    const stored = await db().sql`select id from picture where mould_id = ${mould.id}`
    expect(stored.map(({ id }) => id).sort()).toEqual([ids[0], ids[2]].sort())
    // Sent twice: stored once.
    expect(told(await post(body))).toMatchObject({ kept: 2 })
    expect((await db().sql`select id from picture where mould_id = ${mould.id}`).length).toBe(2)
  })

  test('nothing chosen, and a page of another site', async () => {
    const mould = await aMould()
    const body = form({ id: randomUUID(), on: 'mould', onId: mould.id })
    expect(told(await post(body))).toMatchObject({
      kept: 0,
      lines: ['Choose a photo or a drawing'],
    })
    const foreign = await post(form({ id: randomUUID(), on: 'mould', onId: mould.id }, ['a.jpg', upright]), {
      origin: 'http://elsewhere.example',
    })
    expect(told(foreign)).toMatchObject({ kept: 0 })
    expect((await db().sql`select id from picture where mould_id = ${mould.id}`).length).toBe(0)
  })

  test.each(['https://elsewhere.example/', '//elsewhere.example', '/\\elsewhere.example', ''])(
    'leads back only to a page of ours, not to "%s"',
    async (target) => {
      const answer = await sendRoute.POST(
        request(`/pictures/send?again=${encodeURIComponent(target)}`, 'POST', {
          body: form({}),
          token: null,
          headers: { accept: 'text/html' },
        }),
      )
      expect(answer.headers.get('location')).toMatch(/^\/moulds\?told=/)
    },
  )
})

describe('a full disk', () => {
  test.each([
    [
      'through Prisma',
      (sql: ReturnType<typeof db>['sql']) =>
        sql`select 1`.then(() =>
          db().prisma.$executeRawUnsafe(
            `do $$ begin raise exception 'could not extend file' using errcode = '53100'; end $$`,
          ),
        ),
    ],
    [
      'through the plain client',
      (sql: ReturnType<typeof db>['sql']) =>
        sql`do $$ begin raise exception 'could not extend file' using errcode = '53100'; end $$`,
    ],
  ])('is told in words %s', async (_how, write) => {
    const error = await Promise.resolve(write(db().sql)).then(
      () => null,
      (caught: unknown) => caught,
    )
    expect(refusalOf(error)).toMatchObject({
      status: 507,
      message: expect.stringMatching(/^The disk of the database is full: /),
    })
    expect(refusalOf(new Error('other'))).toBeNull()
    expect(refusalOf(Object.assign(new Error('x'), { code: '23505' }))).toBeNull()
    expect(refusalOf(Object.assign(new Error('gone'), { code: 'ECONNREFUSED' }))).toMatchObject({
      status: 503,
    })
    expect(refusalOf(Object.assign(new Error('no room'), { code: 'ENOSPC' }))).toMatchObject({ status: 507 })
  })

  test('while a picture is stored: 507, nothing half-saved, and it goes in once there is room', async () => {
    const { code } = await aMould()
    const { sql } = db()
    await sql`create function full_disk() returns trigger language plpgsql as $$ begin
      raise exception 'could not extend file' using errcode = '53100'; end $$`
    await sql`create trigger full_disk before insert on picture_bytes for each row execute function full_disk()`
    const fields = { id: randomUUID() }
    const refused = await problem(await send(code, form(fields, ['a.jpg', upright])), 507)
    expect(refused.detail).toMatch(/^The disk of the database is full: nothing of this was saved/)
    expect((await sql`select count(*)::int as rows from picture where id = ${fields.id}`)[0]?.rows).toBe(0)
    await sql`drop trigger full_disk on picture_bytes`
    await answered(await send(code, form(fields, ['a.jpg', upright])), AddedPictureAnswer, 201)
  })
})
