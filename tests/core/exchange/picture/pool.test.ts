import { expect, test } from 'vitest'
import { makePicturePool } from '#lib/exchange/picture/pool'
import { readPicture } from '#lib/exchange/picture/read-picture'
import { own, quarters } from './paint'

/** What happens to the one who waits when the process that decodes a picture goes down. */

const faulty = 'tests/core/exchange/picture/faulty-worker.js'
const usual = { workerPath: faulty, mostWorkers: 2, mostWaiting: 12, timeoutMs: 2_000, restMs: 60_000 }
const task = (first: number) => ({
  bytes: new Uint8Array([first]),
  fullSidePx: 1,
  smallSidePx: 1,
  mostPixels: 1,
  leastSidePx: 1,
})

test('a worker that goes down is an answer, and the next picture is read', async () => {
  const pool = makePicturePool(usual)
  expect(await pool(task(1))).toEqual({ ok: false, fault: 'died' })
  expect(await pool(task(3))).toEqual({ ok: false, fault: 'died' })
  expect(await pool(task(4))).toEqual({ ok: false, fault: 'broken', said: 'slow' })
})

test('pictures that wait behind one that takes its worker down are read', async () => {
  const pool = makePicturePool({ ...usual, mostWorkers: 1 })
  const answers = await Promise.all([4, 1, 4, 1, 4].map((first) => pool(task(first))))
  expect(answers.map((answer) => (answer.ok ? 'ok' : answer.fault))).toEqual([
    'broken',
    'died',
    'broken',
    'died',
    'broken',
  ])
})

test('one that never ends is ended', async () => {
  const pool = makePicturePool({ ...usual, mostWorkers: 1 })
  const [late, after] = await Promise.all([pool(task(2)), pool(task(4))])
  expect(late).toEqual({ ok: false, fault: 'late' })
  expect(after).toEqual({ ok: false, fault: 'broken', said: 'slow' })
})

test('an answer that comes when its time is over takes no other picture with it', async () => {
  const pool = makePicturePool({ ...usual, mostWorkers: 1, timeoutMs: 1_000 })
  await pool(task(4))
  const answers = Promise.all([4, 4, 4].map((first) => pool(task(first))))
  // Nothing is heard of the worker meanwhile: its answer and the end of its time come together.
  const until = Date.now() + 1_500
  while (Date.now() < until);
  expect((await answers).slice(1)).toEqual([
    { ok: false, fault: 'broken', said: 'slow' },
    { ok: false, fault: 'broken', said: 'slow' },
  ])
})

test('too many at once are told so, the others are read', async () => {
  const pool = makePicturePool({ ...usual, mostWorkers: 1, mostWaiting: 2 })
  const answers = await Promise.all([4, 4, 4, 4].map((first) => pool(task(first))))
  expect(answers.map((answer) => (answer.ok ? 'ok' : answer.fault))).toEqual([
    'broken',
    'broken',
    'broken',
    'busy',
  ])
})

test('a worker that can not start', async () => {
  const pool = makePicturePool({ ...usual, workerPath: 'tests/core/exchange/picture/none-such.js' })
  expect(await pool(task(4))).toEqual({ ok: false, fault: 'unready' })
})

test("a worker knows nothing of the shop's secrets", async () => {
  process.env.BETTER_AUTH_SECRET = 'a secret of the shop'
  const answer = await makePicturePool(usual)(task(0))
  expect(answer).toMatchObject({ fault: 'broken', said: expect.stringContaining('PATH') })
  expect(JSON.stringify(answer)).not.toContain('a secret of the shop')
})

test('each is told in words, with what to do', async () => {
  const jpeg = own(await (await quarters()).jpeg().toBuffer())
  const sides = { fullSidePx: 100, smallSidePx: 50 }
  const told = async (fault: 'died' | 'late' | 'unready' | 'busy') =>
    readPicture(jpeg, sides, async () => ({ ok: false, fault }))
  expect(await told('died')).toMatchObject({
    unable: false,
    reason: expect.stringMatching(/Save it anew as JPEG/),
  })
  expect(await told('late')).toMatchObject({ unable: false, reason: expect.stringMatching(/too long/) })
  expect(await told('unready')).toMatchObject({
    unable: true,
    reason: expect.stringMatching(/Nothing was saved/),
  })
  expect(await told('busy')).toMatchObject({ unable: true, reason: expect.stringMatching(/in a minute/) })
})

test('twenty at once through the real worker all come out', async () => {
  const jpeg = own(await (await quarters(800, 600)).jpeg().toBuffer())
  const pool = makePicturePool({
    ...usual,
    workerPath: 'lib/exchange/picture/worker.js',
    mostWaiting: 20,
    timeoutMs: 30_000,
  })
  const readings = await Promise.all(
    Array.from({ length: 20 }, () => readPicture(jpeg, { fullSidePx: 400, smallSidePx: 100 }, pool)),
  )
  expect(readings.every((reading) => reading.ok)).toBe(true)
}, 30_000)
