import { describe, expect, test } from 'vitest'
import { OffsetAnswer, OutlineAnswer } from '#lib/schema/answers/outline'
import { PatchAnswer } from '#lib/schema/answers/patch'
import { offsetExample, outlineExample, patchExample } from '#lib/web/openapi/examples'
import * as offsetRoute from '../../app/api/v1/compute/offset/route'
import * as patchRoute from '../../app/api/v1/compute/patch/route'
import * as logRoute from '../../app/api/v1/moulds/[code]/log/route'
import * as outlineRoute from '../../app/api/v1/read/outline/route'
import { aMould, book } from './book'
import { answered, at, post, problem, request, tokens, withTokens } from './calls'

book()
withTokens()

describe('POST read/outline', () => {
  const csv = outlineExample.text
  const expected = { verdict: 'accept', unit: 'mm', dropped: 0 }

  test('as JSON', async () => {
    const read = await answered(await outlineRoute.POST(post('/', outlineExample)), OutlineAnswer)
    expect(read).toMatchObject(expected)
    expect(read.loops).toHaveLength(1)
    expect(read.loops[0]).toMatchObject({
      role: 'outer',
      areaMm2: 4000,
      perimeterMm: 260,
      boundsMm: [0, 0, 80, 50],
    })
  })

  test('as multipart form data', async () => {
    const form = new FormData()
    form.set('file', new File([csv], 'opening.csv'))
    form.set('unit', 'mm')
    const read = await answered(await outlineRoute.POST(request('/', 'POST', { body: form })), OutlineAnswer)
    expect(read).toMatchObject(expected)
  })

  test('as the body itself, in another unit', async () => {
    const headers = { 'content-type': 'text/csv' }
    const read = await answered(
      await outlineRoute.POST(
        request('/api/v1/read/outline?name=opening.csv&unit=in', 'POST', { body: csv, headers }),
      ),
      OutlineAnswer,
    )
    expect(read).toMatchObject({ ...expected, unit: 'in' })
    expect(read.loops[0]?.areaMm2).toBeCloseTo(4000 * 25.4 ** 2, 6)
  })

  test('the three ways give the same answer', async () => {
    const form = new FormData()
    form.set('file', new File([csv], 'opening.csv'))
    form.set('unit', '')
    const answers = await Promise.all([
      outlineRoute.POST(post('/', { name: 'opening.csv', text: csv })),
      outlineRoute.POST(request('/', 'POST', { body: form })),
      outlineRoute.POST(
        request('/?name=opening.csv', 'POST', {
          body: csv,
          headers: { 'content-type': 'application/octet-stream' },
        }),
      ),
    ])
    const [first, ...others] = await Promise.all(answers.map((answer) => answer.json()))
    for (const other of others) expect(other).toEqual(first)
  })

  test.each([
    ['a file that is no outline', 'photo.jpg', '\u0089JPG nothing'],
    ['an empty file', 'empty.csv', ''],
    ['a bow-tie', 'bow.csv', 'u;v\n0;0\n10;10\n10;0\n0;10\n'],
  ])('%s: the verdict is the answer, with status 200', async (_what, name, text) => {
    const read = await answered(await outlineRoute.POST(post('/', { name, text, unit: 'mm' })), OutlineAnswer)
    expect(['ask', 'refuse', 'accept-with-notice']).toContain(read.verdict)
    expect(read.findings.length).toBeGreaterThan(0)
  })

  test('faults of the sending: 400, 415, 422 with the field', async () => {
    const headers = { 'content-type': 'application/json' }
    await problem(await outlineRoute.POST(request('/', 'POST', { body: '{"name": ', headers })), 400)
    const bytes = new Uint8Array([0x22, 0xff, 0x22])
    await problem(await outlineRoute.POST(request('/', 'POST', { body: bytes, headers })), 400)
    await problem(
      await outlineRoute.POST(request('/', 'POST', { body: csv, headers: { 'content-type': 'text/csv' } })),
      415,
    )
    const nameless = await problem(await outlineRoute.POST(post('/', { text: csv })), 422)
    expect(nameless.fields).toEqual({ name: 'Give the name of the file' })
    const unit = await problem(
      await outlineRoute.POST(post('/', { name: 'a.csv', text: csv, unit: 'ell' })),
      422,
    )
    expect(unit.fields).toHaveProperty('unit')
    const form = new FormData()
    form.set('unit', 'mm')
    expect(
      (await problem(await outlineRoute.POST(request('/', 'POST', { body: form })), 422)).fields,
    ).toHaveProperty('file')
    const broken = {
      body: 'no boundary in here',
      headers: { 'content-type': 'multipart/form-data; boundary=x' },
    }
    await problem(await outlineRoute.POST(request('/', 'POST', broken)), 400)
  })
})

describe('bodies that are too large', () => {
  const megabyte = new Uint8Array(1024 * 1024).fill(48)

  /** A body that tells how much of it was taken. */
  function stream(megabytes: number) {
    const told = { sent: 0, stopped: false }
    const body = new ReadableStream({
      pull(controller) {
        if (told.sent === megabytes) return controller.close()
        told.sent += 1
        controller.enqueue(megabyte)
      },
      cancel() {
        told.stopped = true
      },
    })
    return { told, body }
  }

  test('that says its length is refused before it is read', async () => {
    const { told, body } = stream(50)
    const headers = { 'content-length': String(50 * 1024 * 1024), 'content-type': 'application/octet-stream' }
    const refused = await problem(
      await outlineRoute.POST(request('/?name=big.dxf', 'POST', { body, headers })),
      413,
    )
    expect(refused.detail).toMatch(/At most 10 MB/)
    expect(told.sent).toBeLessThanOrEqual(1)
  })

  test("that doesn't is counted and refused on the way", async () => {
    const { told, body } = stream(50)
    const headers = { 'content-type': 'application/octet-stream' }
    await problem(await outlineRoute.POST(request('/?name=big.dxf', 'POST', { body, headers })), 413)
    expect(told.sent).toBeLessThan(14)
  })

  test('as form data, as JSON, to every route', async () => {
    const form = { 'content-type': 'multipart/form-data; boundary=x' }
    await problem(
      await outlineRoute.POST(request('/', 'POST', { body: stream(50).body, headers: form })),
      413,
    )
    const json = { 'content-type': 'application/json' }
    for (const call of [outlineRoute.POST, patchRoute.POST, offsetRoute.POST]) {
      await problem(await call(request('/', 'POST', { body: stream(50).body, headers: json })), 413)
    }
    const { code } = await aMould()
    await problem(
      await logRoute.POST(request('/', 'POST', { body: stream(50).body, headers: json }), at(code)),
      413,
    )
  })

  test('a file of just the size is taken, one byte more is not', async () => {
    const most = 10 * 1024 * 1024
    const send = (size: number) => {
      const body = new Uint8Array(size).fill(10)
      return outlineRoute.POST(
        request('/?name=blank.csv', 'POST', { body, headers: { 'content-type': 'text/csv' } }),
      )
    }
    expect((await answered(await send(most), OutlineAnswer)).verdict).toBe('refuse')
    await problem(await send(most + 1), 413)
    const form = new FormData()
    form.set('file', new File([new Uint8Array(most + 1)], 'big.csv'))
    await problem(await outlineRoute.POST(request('/', 'POST', { body: form })), 413)
  })
})

describe('POST compute', () => {
  test('a patch: plies, footprint, findings, working', async () => {
    const plan = await answered(
      await patchRoute.POST(post('/', patchExample, { token: tokens.viewer })),
      PatchAnswer,
    )
    expect(plan.plies.map((ply) => ply.replaces)).toEqual([1, 2, 3, 4])
    expect(plan.footprint).toHaveLength(1)
    expect(plan.working.length).toBeGreaterThan(5)
    expect(plan.findings.map((finding) => finding.code)).toContain('dowel-in-opening')
    expect(plan.calculationVersion).toBe('1')
  })

  test('no plan: 422 with the reason', async () => {
    const refused = await problem(
      await patchRoute.POST(post('/', { ...patchExample, removedPlies: [1, 2] })),
      422,
    )
    expect(refused.detail).toMatch(/Worked from the back the cut begins with ply 4/)
    const crossed = {
      outer: [
        [0, 0],
        [10, 10],
        [10, 0],
        [0, 10],
      ],
    }
    const second = await patchRoute.POST(post('/', { ...patchExample, opening: crossed }))
    expect([200, 422]).toContain(second.status)
  })

  test('input that is not right: 422 with every field', async () => {
    const refused = await problem(
      await patchRoute.POST(
        post('/', { ...patchExample, side: 'front', taper: { ratio: 0.5, use: 'widest' }, stack: [] }),
      ),
      422,
    )
    expect(Object.keys(refused.fields ?? {}).sort()).toEqual(['side', 'stack', 'taper.ratio', 'taper.use'])
  })

  test('offsets: the area of a rectangle grown by true offsets is A + P d + pi d2', async () => {
    const { offsets } = await answered(await offsetRoute.POST(post('/', offsetExample)), OffsetAnswer)
    for (const [index, growMm] of [12.7, 25.4].entries()) {
      // Round corners are flattened inwards, within 0.005 mm.
      const short = 4000 + 260 * growMm + Math.PI * growMm ** 2 - (offsets[index]?.areaMm2 ?? 0)
      expect(short).toBeGreaterThanOrEqual(0)
      expect(short).toBeLessThan(2 * Math.PI * growMm * 0.005)
    }
    expect(offsets[2]?.areaMm2).toBeCloseTo(70 * 40, 6)
    const gone = await offsetRoute.POST(post('/', { ...offsetExample, growMm: [-30] }))
    expect((await answered(gone, OffsetAnswer)).offsets[0]).toMatchObject({
      pieces: 0,
      areaMm2: 0,
      regions: [],
    })
  })

  test("a form's body is told to come as JSON", async () => {
    const headers = { 'content-type': 'application/x-www-form-urlencoded' }
    const refused = await problem(await patchRoute.POST(request('/', 'POST', { body: 'a=1', headers })), 415)
    expect(refused.detail).toMatch(/application\/json/)
  })
})
