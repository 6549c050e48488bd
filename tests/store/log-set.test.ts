import { randomUUID } from 'node:crypto'
import { describe, expect, test } from 'vitest'
import { pullsOfSet } from '#lib/core/log/set-strip'
import { type NewSetEntry, NewSetEntry as Schema } from '#lib/schema/log'
import { readHistory, writeEntry } from '#lib/services/log'
import { pieceEntryId, readSetPieces, writeForSet } from '#lib/services/log-set'
import { db } from '#lib/store/db'
import { pullsOfPieces } from '#lib/store/sets'
import { ada, aMould, book, countsOf, entry, lam, log, logEntryCount, refusal } from './book'
import { aLot, aSet, leftIn } from './log-subjects'

book()

function sent(setId: string, kind: 'pull' | 'cleared', changes: object = {}, data: object = {}): NewSetEntry {
  return Schema.parse({
    id: randomUUID(),
    setId,
    doneOn: '2024-05-10',
    doneAt: null,
    precision: 'day',
    note: '',
    kind,
    data:
      kind === 'pull'
        ? { went: 'usual', serial: null, partFate: 'good', mouldFate: 'unharmed', cureC: null, ...data }
        : { open: [], because: null, proof: false, ...data },
    ...changes,
  })
}

/** A mould about which nothing stops a lay-up. */
async function madeReady(mouldId: string): Promise<void> {
  await log(mouldId, 'seal', { doneOn: '2024-05-01' })
  await log(mouldId, 'coat', { doneOn: '2024-05-01', data: { coats: 4 } })
  await log(mouldId, 'leak-check', { doneOn: '2024-05-02' })
}

describe('one act on every piece of a split mould', () => {
  test('one pull each, with one serial and one group; the part is in the book once', async () => {
    const { setId, pieces } = await aSet(2)
    const serial = `LH-${randomUUID().slice(0, 8)}`
    const pull = sent(setId, 'pull', {}, { serial })
    const answer = await writeForSet(lam, pull)
    expect(answer).toEqual({
      id: pull.id,
      written: true,
      entries: pieces.map(({ id }) => ({ mouldId: id, id: pieceEntryId(pull.id, id) })),
    })
    for (const { id } of pieces) {
      const { entries } = await readHistory(ada, { mouldId: id })
      expect(entries).toMatchObject([{ kind: 'pull', groupId: pull.id, data: { serial } }])
    }
    expect(await db().sql`select serial from built_part where serial = ${serial}`).toHaveLength(1)
  })

  test('sent twice, ten times at once, also after a piece was added: stored once', async () => {
    const { setId, pieces } = await aSet(2)
    const pull = sent(setId, 'pull', {}, { serial: randomUUID() })
    const answers = await Promise.all(Array.from({ length: 10 }, () => writeForSet(lam, pull)))
    expect(answers.filter((answer) => answer.written)).toHaveLength(1)
    const late = await aMould({ setId, pieceNo: 3 })
    expect((await writeForSet(lam, pull)).written).toBe(false)
    for (const { id } of pieces) expect(await logEntryCount(id)).toBe(1)
    expect(await logEntryCount(late.id)).toBe(0)
    expect((await refusal(writeForSet(lam, { ...pull, note: 'other' }))).status).toBe(409)
  })

  test('an entry that only names the same group keeps no piece out', async () => {
    const { setId, pieces } = await aSet(2)
    const pull = sent(setId, 'pull')
    await log(pieces[0]!.id, 'note', { groupId: pull.id })
    await writeForSet(lam, pull)
    for (const { id } of pieces) expect((await countsOf(id)).pulls).toBe(1)
  })

  test('one piece put right still belongs to the part that all pieces gave', async () => {
    const { setId, pieces } = await aSet(2)
    const [first, second] = [pieces[0]!, pieces[1]!]
    const pull = sent(setId, 'pull')
    await writeForSet(lam, pull)
    await log(second.id, 'pull', {
      correctsId: pieceEntryId(pull.id, second.id),
      data: { went: 'harder' },
    })
    const pulls = await pullsOfPieces([first.id, second.id])
    expect(pullsOfSet(pulls)).toEqual([{ doneOn: '2024-05-10', went: 'harder', cleared: false }])
    expect((await writeForSet(lam, pull)).written).toBe(false)
  })

  test('a serial that is given later for one piece is that of the part which all gave', async () => {
    const { setId, pieces } = await aSet(2)
    const second = pieces[1]!
    const pull = sent(setId, 'pull')
    await writeForSet(lam, pull)
    await log(second.id, 'pull', {
      correctsId: pieceEntryId(pull.id, second.id),
      data: { serial: randomUUID() },
    })
    expect(pullsOfSet(await pullsOfPieces(pieces.map(({ id }) => id)))).toHaveLength(1)
  })

  test('all or none: a serial that one piece has given already stops every piece', async () => {
    const { setId, pieces } = await aSet(2)
    const serial = randomUUID()
    const last = pieces[1]!
    await log(last.id, 'pull', { data: { serial } })
    const refused = await refusal(writeForSet(lam, sent(setId, 'pull', {}, { serial })))
    expect(refused.message).toContain(`${last.code} has given part ${serial} already: the pull of 2024-05-10`)
    expect(refused.fields).toHaveProperty(['data.serial'])
    expect(await logEntryCount(pieces[0]!.id)).toBe(0)
  })

  test('pulls of sets and of their pieces at once never lock each other up', async () => {
    const { setId, pieces } = await aSet(3)
    const lotId = await aLot(100)
    const uses = [{ lotId, amount: 0.5 }]
    const acts = Array.from({ length: 12 }, (_, index) => {
      const piece = pieces[index % 3]!
      return index % 2 === 0
        ? writeForSet(lam, sent(setId, 'pull', { uses }))
        : writeEntry(ada, entry(piece.id, 'coat', { uses }))
    })
    await Promise.all(acts)
    expect(await leftIn(lotId)).toBeCloseTo(94, 9)
    for (const { id } of pieces) expect((await countsOf(id)).pulls).toBe(6)
  })

  test('a set without pieces, or none at all', async () => {
    const { setId } = await aSet(0)
    expect((await refusal(writeForSet(lam, sent(setId, 'pull')))).status).toBe(404)
    expect((await refusal(writeForSet(lam, sent(randomUUID(), 'pull')))).status).toBe(404)
  })
})

describe('the gate of a split mould', () => {
  test('judges every piece; what stops names its piece, and nothing is written', async () => {
    const { setId, pieces } = await aSet(2)
    const [first, second] = [pieces[0]!, pieces[1]!]
    await madeReady(first.id)
    await madeReady(second.id)
    await log(second.id, 'damage', { doneOn: '2024-05-03', data: { what: 'a crack' } })
    const refused = await refusal(writeForSet(lam, sent(setId, 'cleared')))
    expect(refused.message).toBe(
      `${second.code}: The mould is held: a crack. Settle it first, or ask a lead.`,
    )
    expect((await countsOf(first.id)).clearedOn).toBeNull()
    await log(second.id, 'inspection', { doneOn: '2024-05-04' })
    await writeForSet(lam, sent(setId, 'cleared'))
    const before = await readSetPieces(lam, { setId })
    expect(before.map((piece) => [piece.code, piece.clearedOn, piece.standing.state])).toEqual([
      [first.code, '2024-05-10', 'part in it'],
      [second.code, '2024-05-10', 'part in it'],
    ])
  })
})

test('ids that follow from group and piece are uuids, and differ by either', () => {
  const [a, b] = [randomUUID(), randomUUID()]
  expect(pieceEntryId(a, b)).toMatch(/^[0-9a-f]{8}-[0-9a-f]{4}-8[0-9a-f]{3}-[89ab][0-9a-f]{3}-[0-9a-f]{12}$/)
  expect(pieceEntryId(a, b)).toBe(pieceEntryId(a.toUpperCase(), b))
  expect(new Set([pieceEntryId(a, b), pieceEntryId(b, a), pieceEntryId(a, a)]).size).toBe(3)
})
