import { randomUUID } from 'node:crypto'
import { describe, expect, test } from 'vitest'
import {
  changeBuiltPart,
  listBuiltParts,
  partsOfLot,
  partsSincePatch,
  readBuiltPart,
  removeBuiltPart,
} from '#lib/services/built-parts'
import { addPointIssue } from '#lib/services/moulds'
import { addPart } from '#lib/services/parts'
import { addSet } from '#lib/services/sets'
import { ada, aMould, anArea, ben, book, lam, log, refusal, splitMould } from './book'
import { aPatch } from './patch-book'
import { aLot } from './stock-book'

book()

const serialsOf = async (work: Promise<{ rows: readonly { serial: string }[] }>) =>
  (await work).rows.map((row) => row.serial)

async function aSplitMould() {
  const partId = randomUUID()
  const code = `LH-${partId.slice(0, 6)}`
  await addPart(ada, { id: partId, code, name: 'hull', note: '' })
  const set = splitMould({ partId })
  await addSet(ada, set)
  const port = await aMould({ setId: set.id, pieceNo: 1, partId })
  const starboard = await aMould({ setId: set.id, pieceNo: 2, partId })
  return { part: { id: partId, code }, port, starboard }
}

const pull = (mouldId: string, serial: string, doneOn: string, more: object = {}) =>
  log(mouldId, 'pull', { doneOn, data: { serial, ...more } })

describe('a built part', () => {
  test('leads to the pulls on each piece, compared without case and blanks', async () => {
    const { part, port, starboard } = await aSplitMould()
    await pull(starboard.id, ' sn/7 a ', '2024-05-10', { partFate: 'rework', cureC: 121 })
    await pull(port.id, 'SN/7 A', '2024-05-10', { went: 'harder' })
    const page = await readBuiltPart(lam, { serial: 'sn/7 A' })
    expect(page.part).toMatchObject({ serial: 'sn/7 a', partCode: part.code, version: 1 })
    expect(page.pieces.map(({ pull: { mouldCode } }) => mouldCode)).toEqual([port.code, starboard.code])
    expect(page.pieces.map(({ pull: { went, cureC } }) => [went, cureC])).toEqual([
      ['harder', null],
      ['usual', 121],
    ])
    expect(page.fate).toBe('rework')
  })

  test('says what each mould was then: pull number, coats, repairs, dowels, and not what came later', async () => {
    const mould = await aMould()
    const area = await anArea(mould.id)
    const issue = (day: string, uMm: number) => ({
      id: randomUUID(),
      mouldId: mould.id,
      name: `points of ${day}`,
      issuedOn: day,
      note: '',
      points: [
        {
          tag: 'D01',
          areaName: area.name,
          kind: 'dowel' as const,
          uMm,
          vMm: 0,
          diameterMm: 8,
          bushDiameterMm: null,
          through: false,
          isDatum: false,
          toleranceMm: null,
          notYetFixed: false,
        },
      ],
    })
    await addPointIssue(ada, issue('2024-01-01', 100))
    await pull(mould.id, 'THEN-1', '2024-02-01')
    await log(mould.id, 'coat', { doneOn: '2024-02-02', data: { lot: 'R7' } })
    await log(mould.id, 'dowel-changed', {
      doneOn: '2024-02-03',
      data: { tag: 'D01', what: 're-bushed', uMm: null, vMm: null, diameterMm: null },
    })
    await log(mould.id, 'cleared', { doneOn: '2024-02-09', data: { because: 'seen' } })
    await pull(mould.id, 'THEN-2', '2024-02-10')
    await addPointIssue(ada, issue('2024-03-01', 120))
    await log(mould.id, 'coat', { doneOn: '2024-03-02', data: { lot: 'R8' } })
    const [piece] = (await readBuiltPart(ada, { serial: 'THEN-2' })).pieces
    expect(piece?.was?.pullNo).toBe(2)
    expect(piece?.was?.release.map((entry) => entry.data.lot)).toEqual(['R7'])
    expect(piece?.was?.dowels.map((entry) => entry.data.tag)).toEqual(['D01'])
    expect(piece?.was?.clearance).not.toBeNull()
    expect(piece?.points?.points.map((point) => point.uMm)).toEqual([100])
    const [first] = (await readBuiltPart(ada, { serial: 'THEN-1' })).pieces
    expect(first?.was).toMatchObject({ pullNo: 1, clearance: null, release: [], dowels: [] })
  })

  test('follows its pull when the serial is put right; what is left can be taken out', async () => {
    const mould = await aMould()
    const wrong = await pull(mould.id, 'TYPO-1', '2024-05-10')
    await log(mould.id, 'pull', { doneOn: '2024-05-10', correctsId: wrong, data: { serial: 'RIGHT-1' } })
    const right = await readBuiltPart(ada, { serial: 'RIGHT-1' })
    expect(right.pieces.map((piece) => piece.was?.pullNo)).toEqual([1])
    const left = await readBuiltPart(ada, { serial: 'TYPO-1' })
    expect(left).toMatchObject({ pieces: [], fate: null })
    const named = removeBuiltPart(ada, { id: right.part.id })
    expect((await refusal(named)).message).toBe(
      `RIGHT-1 stays in the book: a pull of ${mould.code} would be lost`,
    )
    await Promise.all([
      removeBuiltPart(ada, { id: left.part.id }),
      removeBuiltPart(ada, { id: left.part.id }),
    ])
    expect((await refusal(readBuiltPart(ada, { serial: 'TYPO-1' }))).status).toBe(404)
    expect((await readBuiltPart(ada, { serial: 'RIGHT-1' })).part.id).toBe(right.part.id)
  })

  test('is not taken out while somebody writes a pull that names it', async () => {
    const mould = await aMould()
    const wrong = await pull(mould.id, 'RACE-1', '2024-05-10')
    await log(mould.id, 'correction', { doneOn: '2024-05-10', correctsId: wrong })
    const { part } = await readBuiltPart(ada, { serial: 'RACE-1' })
    await Promise.allSettled([
      removeBuiltPart(ada, { id: part.id }),
      pull(mould.id, 'RACE-1', '2024-05-11'),
      removeBuiltPart(ada, { id: part.id }),
    ])
    expect((await readBuiltPart(ada, { serial: 'RACE-1' })).pieces).toHaveLength(1)
  })

  test('lots, cure and place are added in a version; a lot of Stores is named as Stores names it', async () => {
    const { id: lotId } = await aLot({ lot: 'R-118' })
    const mould = await aMould()
    await pull(mould.id, 'LOT-1', '2024-05-10')
    await pull(mould.id, 'LOT-2', '2024-05-11')
    const { part } = await readBuiltPart(ada, { serial: 'LOT-1' })
    const input = {
      id: part.id,
      partId: null,
      cure: '120 C, 2 h',
      whereNow: 'spare',
      note: '',
      lots: [
        { lotId, material: '', lot: '' },
        { lotId: null, material: 'core', lot: 'H1' },
      ],
    }
    await changeBuiltPart(lam, { ...input, version: 1 })
    expect((await readBuiltPart(ada, { serial: 'LOT-1' })).part).toMatchObject({
      version: 2,
      whereNow: 'spare',
      lots: [
        { lotId, material: 'S200', lot: 'R-118' },
        { lotId: null, material: 'core', lot: 'H1' },
      ],
    })
    const refused = await refusal(changeBuiltPart(ben, { ...input, lots: [], version: 1 }))
    expect(refused).toMatchObject({ status: 409, current: { version: 2 } })
    expect(await serialsOf(partsOfLot(ada, { lotId }))).toEqual(['LOT-1'])
    expect((await listBuiltParts(ada, { lot: lotId })).told).toEqual(['laid from S200, lot R-118'])
    const strange = changeBuiltPart(ada, {
      ...input,
      lots: [{ lotId: randomUUID(), material: '', lot: '' }],
      version: 2,
    })
    expect((await refusal(strange)).fields).toHaveProperty(['lots.0.lotId'])
    expect((await readBuiltPart(ada, { serial: 'LOT-1' })).part.lots).toHaveLength(2)
  })
})

describe('parts are found', () => {
  test('by mould, part and words of the serial; signs of a pattern stand for themselves', async () => {
    const { part, port, starboard } = await aSplitMould()
    await pull(port.id, 'F_1', '2024-05-10')
    await pull(starboard.id, 'F_1', '2024-05-10')
    await pull(port.id, 'FX1', '2024-05-12')
    expect(await serialsOf(listBuiltParts(ada, { mould: port.code }))).toEqual(['FX1', 'F_1'])
    expect(await serialsOf(listBuiltParts(ada, { mould: starboard.code.toLowerCase() }))).toEqual(['F_1'])
    expect(await serialsOf(listBuiltParts(ada, { part: part.code, find: 'f_' }))).toEqual(['F_1'])
    const nowhere = await listBuiltParts(ada, { mould: 'nowhere' })
    expect(nowhere).toEqual({ rows: [], total: 0, told: ['There is no mould nowhere'] })
  })

  test('that came off the mould since an entry, and since a patch was laid', async () => {
    const mould = await aMould()
    const area = await anArea(mould.id)
    await pull(mould.id, 'S-1', '2024-01-10')
    const coat = await log(mould.id, 'coat', { doneOn: '2024-02-01' })
    await pull(mould.id, 'S-2', '2024-02-10')
    const { patchId } = await aPatch(mould.id, area.id, 'laid')
    const since = await listBuiltParts(ada, { since: coat })
    expect(since.rows.map((row) => row.serial)).toEqual(['S-2'])
    expect(since.told[0]).toMatch(`off ${mould.code} after`)
    expect(await serialsOf(partsSincePatch(ada, { patchId }))).toEqual([])
    const { patchId: planned } = await aPatch(mould.id, area.id, 'sketched')
    expect(await partsSincePatch(ada, { patchId: planned })).toEqual({ rows: [], total: 0 })
  })
})
