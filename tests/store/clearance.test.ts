import { describe, expect, test } from 'vitest'
import type { LogEntry } from '#lib/core/log/index'
import { readHistory, writeEntry } from '#lib/services/log'
import { readMouldPage } from '#lib/services/moulds'
import { listRack } from '#lib/services/rack'
import { saveSettings } from '#lib/services/shop'
import { readShop } from '#lib/store/shop'
import {
  ada,
  aMould,
  anArea,
  ben,
  book,
  countsOf,
  entry,
  lam,
  log,
  logEntryCount,
  refusal,
  today,
  write,
} from './book'
import { aPatch } from './patch-book'

book()

/** A mould that may be cleared: leak checked, coated, nothing open. */
async function readyMould() {
  const mould = await aMould()
  await log(mould.id, 'leak-check', { doneOn: await today() })
  await log(mould.id, 'coat', { data: { coats: 4 } })
  return mould
}

const clear = async (mouldId: string, because: string | null = null) =>
  entry(mouldId, 'cleared', { doneOn: await today(), data: { because } })

const standingOf = async (code: string) => (await readMouldPage(ada, { code })).standing

const openOf = (stored: LogEntry | undefined) => (stored?.kind === 'cleared' ? stored.data.open : [])

describe('clear to lay up', () => {
  test('a mould in order: cleared, a part in it, and the pull lets it go', async () => {
    const { id, code } = await readyMould()
    await writeEntry(lam, await clear(id))
    expect(await standingOf(code)).toMatchObject({ state: 'part in it' })
    await log(id, 'pull', { doneOn: await today() })
    expect(await standingOf(code)).toMatchObject({ state: 'fit for use' })
    expect(await countsOf(id)).toMatchObject({ pulls: 1, pullsNotCleared: 0, clearedOn: null })
  })

  test('what is open at that moment is stored, whatever the form said', async () => {
    const { id } = await aMould()
    const sent = entry(id, 'cleared', {
      doneOn: await today(),
      data: { open: ['nothing at all'], proof: true },
    })
    await writeEntry(lam, sent)
    const [stored] = (await readHistory(ada, { mouldId: id, kinds: ['cleared'], limit: 1 })).entries
    expect(stored?.data).toEqual({
      open: ['Whole face: nobody has written down a coat', 'No leak check of the mould is written down'],
      because: null,
      proof: false,
    })
  })

  test('a stop refuses a laminator, with or without a because', async () => {
    const { id } = await readyMould()
    await log(id, 'damage', { data: { what: 'a crack at the flange' } })
    for (const because of [null, 'it will hold']) {
      const refused = await refusal(writeEntry(lam, await clear(id, because)))
      expect(refused.message).toBe(
        'The mould is held: a crack at the flange. Settle it first, or ask a lead.',
      )
      expect(refused.fields).toEqual({})
    }
    expect((await countsOf(id)).clearedOn).toBeNull()
  })

  test('a lead may override it with a because, and both are in the log', async () => {
    const { id, code } = await readyMould()
    await log(id, 'damage', { data: { what: 'a crack' } })
    await log(id, 'strip')
    const bare = await refusal(writeEntry(ada, await clear(id)))
    expect(bare.fields).toHaveProperty('data.because')
    expect(bare.message).toMatch(
      /held: a crack\. Whole face: not sealed since it was stripped\. .*Give a because/,
    )
    await writeEntry(ada, await clear(id, 'test part only'))
    const [stored] = (await readHistory(ada, { mouldId: id, kinds: ['cleared'], limit: 1 })).entries
    expect(stored).toMatchObject({ byName: 'Ada Lead', data: { because: 'test part only' } })
    expect(openOf(stored)).toEqual(
      expect.arrayContaining(['The mould is held: a crack', expect.stringMatching(/not sealed/)]),
    )
    expect(await standingOf(code)).toMatchObject({ state: 'part in it', also: ['held'] })
  })

  test('a because of blanks is none', async () => {
    const { id } = await readyMould()
    await log(id, 'damage')
    expect((await refusal(writeEntry(ada, await clear(id, '')))).status).toBe(422)
  })

  test('two people at once: one clears it, the other is told that a part is in it', async () => {
    const { id } = await readyMould()
    const sent = await Promise.allSettled([
      writeEntry(lam, await clear(id)),
      writeEntry(ada, await clear(id)),
    ])
    const refused = sent.filter((each) => each.status === 'rejected')
    expect(refused).toHaveLength(1)
    expect(refused[0]?.reason.message).toMatch(/no pull since/)
  })

  test('twenty people at once: one clears it, nobody hangs', { timeout: 20_000 }, async () => {
    const { id } = await readyMould()
    const entries = await Promise.all(Array.from({ length: 20 }, () => clear(id)))
    const sent = await Promise.allSettled(entries.map((each) => writeEntry(lam, each)))
    expect(sent.filter((each) => each.status === 'fulfilled')).toHaveLength(1)
    expect(await logEntryCount(id)).toBe(3)
  })

  test('sent twice: cleared once, the same answer', async () => {
    const { id } = await readyMould()
    const sent = await clear(id)
    await writeEntry(lam, sent)
    expect(await writeEntry(lam, sent)).toEqual({ id: sent.id, written: false })
  })

  test('it is given before the lay-up: not for a time before a pull that is written down', async () => {
    const { id } = await readyMould()
    await log(id, 'pull', { doneOn: '2024-06-02' })
    expect(await countsOf(id)).toMatchObject({ pulls: 1, pullsNotCleared: 1 })
    const afterwards = entry(id, 'cleared', { doneOn: '2024-06-01' })
    expect((await refusal(writeEntry(ada, afterwards))).message).toMatch(
      /before the lay-up, not after the pull/,
    )
    expect(await countsOf(id)).toMatchObject({ pullsNotCleared: 1 })
  })

  test('a coat that is drying stops it for the minutes of the rule', async () => {
    const { id } = await readyMould()
    const doneAt = new Date(Date.now() - 60_000).toISOString()
    const shop = await readShop()
    const doneOn = new Date(doneAt).toLocaleDateString('en-CA', { timeZone: shop?.timeZone ?? 'UTC' })
    await log(id, 'coat', { doneOn, doneAt })
    expect((await refusal(writeEntry(lam, await clear(id)))).message).toMatch(/still drying/)
  })

  test('racked is taken off the rack by clearing it', async () => {
    const { id, code } = await readyMould()
    await log(id, 'state', { data: { state: 'racked', reason: 'summer' } })
    expect(await standingOf(code)).toMatchObject({ state: 'racked' })
    await writeEntry(lam, await clear(id))
    expect(await standingOf(code)).toMatchObject({ state: 'part in it', also: [] })
    await log(id, 'pull', { doneOn: await today() })
    expect(await standingOf(code)).toMatchObject({ state: 'fit for use' })
  })

  test('an unproved patch: cleared for a proof pull, also where a lead overrides something else', async () => {
    const mould = await readyMould()
    const area = await anArea(mould.id)
    const { patchId } = await aPatch(mould.id, area.id, 'laid')
    await log(mould.id, 'leak-check', { doneOn: await today() })
    expect(await standingOf(mould.code)).toMatchObject({
      state: 'proof pull only',
      reason: expect.stringMatching(/^Patch 1, floor/),
    })
    // The patch is bare: that stops it.
    expect((await refusal(writeEntry(lam, await clear(mould.id)))).message).toMatch(
      /Patch 1.*not sealed since it was laid/,
    )
    await write(mould.id, [
      entry(mould.id, 'seal', { doneOn: '2024-06-02', patchId }),
      entry(mould.id, 'coat', { doneOn: '2024-06-02', patchId, data: { coats: 4 } }),
      entry(mould.id, 'tape-test', { doneOn: '2024-06-03', patchId }),
      entry(mould.id, 'damage', { data: { what: 'a chip' } }),
    ])
    await writeEntry(ada, await clear(mould.id, 'the chip is on the flange'))
    expect(await countsOf(mould.id)).toMatchObject({ clearedForProof: true })
    expect(await standingOf(mould.code)).toMatchObject({ state: 'part in it', reason: 'proof pull' })
  })

  test('a leak check older than the last repair is a look: open, and no stop', async () => {
    const mould = await readyMould()
    const area = await anArea(mould.id)
    await log(mould.id, 'leak-check', { doneOn: '2024-05-01' })
    await aPatch(mould.id, area.id, 'proved', { on: await today() })
    await writeEntry(lam, await clear(mould.id))
    const [stored] = (await readHistory(ada, { mouldId: mould.id, kinds: ['cleared'], limit: 1 })).entries
    expect(openOf(stored).join()).toMatch(/No leak check since the last repair/)
  })

  test("the shop's own rules judge", async () => {
    const { id } = await readyMould()
    await log(id, 'strip')
    await log(id, 'seal')
    await log(id, 'coat', { data: { coats: 2 } })
    expect((await refusal(writeEntry(lam, await clear(id)))).message).toMatch(/2 of 4 coats/)
    const shop = await readShop()
    if (!shop) throw new Error('no shop')
    const { isDemo: _demo, ...settings } = shop
    const upkeep = { ...shop.rules.upkeep, coatsAfterStrip: 2 }
    await saveSettings(ada, { ...settings, rules: { ...shop.rules, upkeep } })
    await writeEntry(lam, await clear(id))
    await saveSettings(ada, { ...settings, version: shop.version + 1 })
  })
})

test('a pull without clearance is stored and marked; the next one after a clearance is not', async () => {
  const { id } = await readyMould()
  await log(id, 'pull')
  await writeEntry(lam, await clear(id))
  await log(id, 'pull', { doneOn: await today() })
  await log(id, 'pull', { doneOn: await today() })
  const { rows } = await listRack(ada, {})
  const strip = rows.find((row) => row.mould.id === id)?.strip
  expect(strip?.pulls.map((pull) => pull.cleared)).toEqual([false, true, false])
  expect(await countsOf(id)).toMatchObject({ pulls: 3, pullsNotCleared: 2 })
})

test('a clearance that is struck out lets the mould go', async () => {
  const { id, code } = await readyMould()
  const cleared = await clear(id)
  await writeEntry(lam, cleared)
  await writeEntry(lam, entry(id, 'correction', { doneOn: await today(), correctsId: cleared.id }))
  expect(await standingOf(code)).toMatchObject({ state: 'fit for use' })
})

describe('held', () => {
  test('a stuck part holds the mould until an inspection finds it sound', async () => {
    const { id, code } = await readyMould()
    await log(id, 'pull', { doneOn: '2024-06-01', data: { went: 'stuck' } })
    expect(await standingOf(code)).toEqual({
      state: 'held',
      reason: 'last part stuck; inspect first',
      also: [],
    })
    await log(id, 'inspection', { doneOn: '2024-06-02', data: { verdict: 'look' } })
    expect(await standingOf(code)).toMatchObject({ state: 'held' })
    await log(id, 'inspection', { doneOn: '2024-06-03' })
    expect(await standingOf(code)).toMatchObject({ state: 'fit for use' })
  })

  test('an inspection that finds it not sound holds it too', async () => {
    const { id, code } = await readyMould()
    await log(id, 'inspection', { data: { verdict: 'not sound', what: 'microcracks at the bow' } })
    expect(await standingOf(code)).toMatchObject({ state: 'held', reason: 'microcracks at the bow' })
    await log(id, 'inspection', { doneOn: '2024-06-03' })
    expect(await standingOf(code)).toMatchObject({ state: 'fit for use' })
  })

  test('an inspection of one area frees damage of that area only', async () => {
    const { id, code } = await readyMould()
    const floor = await anArea(id, { name: 'floor' })
    const wall = await anArea(id, { name: 'wall' })
    await log(id, 'damage', { areaId: floor.id, data: { what: 'on the floor' } })
    await log(id, 'damage', { areaId: wall.id, data: { what: 'on the wall' } })
    await log(id, 'inspection', { doneOn: '2024-05-11', areaId: floor.id })
    expect(await standingOf(code)).toMatchObject({ state: 'held', reason: 'on the wall (wall)' })
    await log(id, 'inspection', { doneOn: '2024-05-12' })
    expect(await standingOf(code)).toMatchObject({ state: 'fit for use' })
  })

  test('a mark and an open matter hold nothing', async () => {
    const { id, code } = await readyMould()
    await log(id, 'damage', { data: { weight: 'mark' } })
    await log(id, 'damage', { data: { weight: 'open matter' } })
    expect(await standingOf(code)).toMatchObject({ state: 'fit for use' })
  })
})

test('only a lead retires a mould', async () => {
  const mould = await aMould()
  const retire = entry(mould.id, 'state', { sawVersion: 1, data: { state: 'retired', reason: 'worn out' } })
  expect((await refusal(writeEntry(lam, retire))).status).toBe(403)
  await writeEntry(ben, retire)
  expect(await standingOf(mould.code)).toMatchObject({ state: 'retired', reason: 'worn out' })
  for (const kind of ['correction', 'note'] as const) {
    const strike = entry(mould.id, kind, { correctsId: retire.id })
    expect((await refusal(writeEntry(lam, strike))).status).toBe(403)
  }
  expect(await standingOf(mould.code)).toMatchObject({ state: 'retired' })
})
