import { describe, expect, test } from 'vitest'
import { beforeLayUp, defaultUpkeepRules, type MouldCounts } from '#lib/core/log/index'
import { aMould, anArea, book, countsOf, log, releaseOf } from './book'
import { aPatch } from './patch-book'

book()

const codes = (counts: MouldCounts, name: string) =>
  beforeLayUp(counts, defaultUpkeepRules, '2024-07-01', '2024-07-01T12:00:00Z')
    .filter((matter) => matter.place?.startsWith(name))
    .map((matter) => matter.code)

describe('release of face, areas and patches', () => {
  test('nothing written down: not known, never nought as a fact', async () => {
    const { id } = await aMould()
    expect(await releaseOf(id, 'whole face')).toMatchObject({
      stripOn: null,
      sealOn: null,
      coatOn: null,
      tapeOn: null,
      tapeResult: null,
      coatsSinceStrip: 0,
      pulls: 0,
    })
    expect(codes(await countsOf(id), 'whole face')).toEqual(['release-unknown'])
  })

  test('a strip of the whole face starts face and areas anew; coats are counted since', async () => {
    const { id } = await aMould()
    await anArea(id, { name: 'floor' })
    await anArea(id, { name: 'wall' })
    await log(id, 'coat', { doneOn: '2024-05-01', data: { coats: 6 } })
    await log(id, 'pull', { doneOn: '2024-05-02' })
    await log(id, 'strip', { doneOn: '2024-05-03' })
    await log(id, 'seal', { doneOn: '2024-05-04' })
    await log(id, 'coat', { doneOn: '2024-05-05', data: { coats: 3 } })
    await log(id, 'coat', { doneOn: '2024-05-06', data: { coats: 1 } })
    await log(id, 'pull', { doneOn: '2024-05-07' })
    await log(id, 'pull', { doneOn: '2024-05-08' })
    for (const name of ['whole face', 'floor', 'wall']) {
      expect(await releaseOf(id, name)).toMatchObject({
        stripOn: '2024-05-03',
        sealOn: '2024-05-04',
        coatOn: '2024-05-06',
        sealedSinceStrip: true,
        coatsSinceStrip: 4,
        pulls: 3,
        pullsSinceStrip: 2,
        pullsSinceSeal: 2,
        pullsSinceCoat: 2,
      })
    }
    const counts = await countsOf(id)
    expect(codes(counts, 'whole face')).toEqual(['first-pulls'])
    // An area speaks only where something was done to it alone.
    expect(codes(counts, 'floor')).toEqual([])
  })

  test('what is done to one area counts for it alone', async () => {
    const { id } = await aMould()
    const floor = await anArea(id, { name: 'floor' })
    await anArea(id, { name: 'wall' })
    await log(id, 'coat', { doneOn: '2024-05-01', data: { coats: 4, product: 'old' } })
    await log(id, 'strip', { doneOn: '2024-05-02', areaId: floor.id })
    await log(id, 'coat', {
      doneOn: '2024-05-03',
      areaId: floor.id,
      data: { coats: 2, product: 'new', lot: 'N1' },
    })
    await log(id, 'pull', { doneOn: '2024-05-04' })
    expect(await releaseOf(id, 'floor')).toMatchObject({
      stripOn: '2024-05-02',
      coatsSinceStrip: 2,
      coatProduct: 'new',
      coatLot: 'N1',
      pullsSinceCoat: 1,
    })
    for (const name of ['whole face', 'wall']) {
      expect(await releaseOf(id, name)).toMatchObject({
        stripOn: null,
        coatsSinceStrip: 4,
        coatProduct: 'old',
      })
    }
    expect(codes(await countsOf(id), 'floor')).toEqual(['not-sealed', 'too-few-coats'])
    expect(codes(await countsOf(id), 'whole face')).toEqual([])
    // A coat of the whole face lies on the floor as well.
    await log(id, 'coat', { doneOn: '2024-05-05', data: { coats: 1 } })
    expect(await releaseOf(id, 'floor')).toMatchObject({
      coatsSinceStrip: 3,
      coatOn: '2024-05-05',
      pullsSinceCoat: 0,
    })
  })

  test('a seal before the strip is none', async () => {
    const { id } = await aMould()
    await log(id, 'seal', { doneOn: '2024-05-01' })
    expect(await releaseOf(id, 'whole face')).toMatchObject({ sealedSinceStrip: true })
    await log(id, 'strip', { doneOn: '2024-05-02' })
    expect(await releaseOf(id, 'whole face')).toMatchObject({ sealedSinceStrip: false })
    await log(id, 'coat', { doneOn: '2024-05-03', data: { coats: 4 } })
    expect(codes(await countsOf(id), 'whole face')).toEqual(['not-sealed', 'first-pulls'])
  })

  test('a typed nought is kept in the log, and no coat of it lies on the face', async () => {
    const { id } = await aMould()
    await log(id, 'coat', { doneOn: '2024-05-01', data: { coats: 4, product: 'A' } })
    await log(id, 'pull', { doneOn: '2024-05-02' })
    await log(id, 'strip', { doneOn: '2024-05-03' })
    await log(id, 'seal', { doneOn: '2024-05-04', data: { coats: 0 } })
    await log(id, 'coat', { doneOn: '2024-05-05', data: { coats: 0, product: 'B' } })
    expect(await releaseOf(id, 'whole face')).toMatchObject({
      sealedSinceStrip: false,
      coatsSinceStrip: 0,
      coatOn: '2024-05-01',
      coatProduct: 'A',
      pullsSinceCoat: 1,
    })
  })

  test('the first pulls after a strip are told one by one, then no more', async () => {
    const { id } = await aMould()
    await log(id, 'strip', { doneOn: '2024-05-01' })
    await log(id, 'seal', { doneOn: '2024-05-02' })
    await log(id, 'coat', { doneOn: '2024-05-03', data: { coats: 4 } })
    for (const [index, doneOn] of ['2024-05-04', '2024-05-05', '2024-05-06'].entries()) {
      const matters = beforeLayUp(
        await countsOf(id),
        defaultUpkeepRules,
        '2024-07-01',
        '2024-07-01T12:00:00Z',
      )
      expect(matters.find((matter) => matter.code === 'first-pulls')?.text).toMatch(
        `pull ${index + 1} of the first 3`,
      )
      await log(id, 'pull', { doneOn })
    }
    expect(codes(await countsOf(id), 'whole face')).toEqual([])
    for (const doneOn of ['2024-05-07', '2024-05-08']) await log(id, 'pull', { doneOn })
    expect(codes(await countsOf(id), 'whole face')).toEqual(['touch-up-due'])
    await log(id, 'coat', { doneOn: '2024-05-09' })
    expect(codes(await countsOf(id), 'whole face')).toEqual([])
  })

  test('a tape that grips stops until a coat has followed', async () => {
    const { id } = await aMould()
    await log(id, 'coat', { doneOn: '2024-05-01' })
    await log(id, 'tape-test', { doneOn: '2024-05-02', data: { result: 'grips' } })
    expect(codes(await countsOf(id), 'whole face')).toEqual(['tape-grips'])
    await log(id, 'coat', { doneOn: '2024-05-03' })
    expect(codes(await countsOf(id), 'whole face')).toEqual([])
  })
})

describe('the spot of a fresh patch', () => {
  test('it is bare whatever lies on the face, and is sealed, coated and tested as new', async () => {
    const { id } = await aMould()
    const area = await anArea(id)
    await log(id, 'seal', { doneOn: '2024-05-01' })
    await log(id, 'coat', { doneOn: '2024-05-02', data: { coats: 6 } })
    await log(id, 'tape-test', { doneOn: '2024-05-03' })
    await log(id, 'pull', { doneOn: '2024-05-04' })
    const { patchId } = await aPatch(id, area.id, 'laid', { on: '2024-06-01' })
    expect(await releaseOf(id, 'Patch 1')).toMatchObject({
      patchId,
      laidOn: '2024-06-01',
      sealOn: null,
      coatOn: null,
      tapeOn: null,
      coatsSinceStrip: 0,
      pulls: 0,
    })
    expect(codes(await countsOf(id), 'Patch 1')).toEqual(['not-sealed', 'too-few-coats'])
    expect(codes(await countsOf(id), 'whole face')).toEqual([])

    await log(id, 'seal', { doneOn: '2024-06-02', patchId })
    await log(id, 'coat', { doneOn: '2024-06-03', patchId, data: { coats: 2 } })
    await log(id, 'coat', { doneOn: '2024-06-03', areaId: area.id, data: { coats: 1 } })
    expect(codes(await countsOf(id), 'Patch 1')).toEqual(['too-few-coats'])
    // The whole face's coat lies on the patch too; the patch's own coats don't count for the face.
    await log(id, 'coat', { doneOn: '2024-06-04', data: { coats: 1 } })
    expect(await releaseOf(id, 'Patch 1')).toMatchObject({ coatsSinceStrip: 4, sealedSinceStrip: true })
    expect(await releaseOf(id, 'whole face')).toMatchObject({ coatsSinceStrip: 7 })
    expect(codes(await countsOf(id), 'Patch 1')).toEqual(['no-tape-test'])
    await log(id, 'tape-test', { doneOn: '2024-06-05', patchId })
    expect(codes(await countsOf(id), 'Patch 1')).toEqual([])
    await log(id, 'pull', { doneOn: '2024-06-06' })
    expect(await releaseOf(id, 'Patch 1')).toMatchObject({ pulls: 1, pullsSinceCoat: 1 })
    expect(await releaseOf(id, 'whole face')).toMatchObject({ pulls: 2 })
  })

  test('proved, it is part of the face and no longer listed', async () => {
    const { id } = await aMould()
    const area = await anArea(id)
    await aPatch(id, area.id, 'proved')
    expect((await countsOf(id)).release.map((target) => target.name)).toEqual(['whole face', 'floor'])
    expect((await countsOf(id)).unprovedPatches).toEqual([])
  })

  test('a patch of another mould touches nothing here', async () => {
    const [one, other] = [await aMould(), await aMould()]
    await aPatch(other.id, (await anArea(other.id)).id, 'laid')
    expect((await countsOf(one.id)).release).toHaveLength(1)
    expect((await countsOf(one.id)).lastRepairOn).toBeNull()
  })
})

test('what differs from the last good pull is told with both products', async () => {
  const { id } = await aMould()
  await log(id, 'coat', { doneOn: '2024-05-01', data: { product: 'A', lot: '1' } })
  await log(id, 'pull', { doneOn: '2024-05-02' })
  await log(id, 'coat', { doneOn: '2024-05-03', data: { product: 'B', lot: '2' } })
  await log(id, 'pull', { doneOn: '2024-05-04', data: { went: 'harder' } })
  const counts = await countsOf(id)
  expect(counts.atLastGoodPull).toMatchObject({ coatProduct: 'A', coatLot: '1' })
  const matter = beforeLayUp(counts, defaultUpkeepRules, '2024-07-01', '2024-07-01T12:00:00Z').find(
    (each) => each.code === 'differs-from-last-good',
  )
  expect(matter?.text).toBe(
    'Differs from the last good pull: release agent: A then, B now; release lot: 1 then, 2 now',
  )
})
