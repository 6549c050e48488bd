import fc from 'fast-check'
import { describe, expect, test } from 'vitest'
import {
  kindsOfThen,
  type LogData,
  type LogEntry,
  type LogKind,
  mouldThen,
  releaseLines,
  worstFate,
} from '#lib/core/log/index'

const usual: Partial<LogData> = {
  pull: { went: 'usual', serial: null, partFate: 'good', mouldFate: 'unharmed', cureC: 120 },
  cleared: { open: [], because: null, proof: false },
  strip: { product: 'paste' },
  seal: { product: 'sealer', lot: 'S1', coats: 2 },
  coat: { product: 'agent', lot: 'A1', coats: 1, minutesBetween: null },
  'patch-laid': { planId: 'p', number: 1, lots: [] },
  proved: { planId: 'p', number: 1 },
  heat: { what: 'cure', toC: 120, holdMin: 90, withPart: true },
}

let made = 0

/** An entry; its place among the others is its place in the list. */
function entry<Kind extends LogKind>(
  kind: Kind,
  data: Partial<LogData[Kind]> = {},
  head: Partial<
    Pick<LogEntry, 'id' | 'areaId' | 'areaName' | 'patchNumber' | 'correctsId' | 'correctedById' | 'doneOn'>
  > = {},
): LogEntry {
  made += 1
  return {
    id: `e${made}`,
    doneOn: '2026-01-01',
    doneAt: null,
    precision: 'day',
    writtenAt: '2026-01-01T10:00:00Z',
    byName: 'Ada',
    areaId: null,
    areaName: null,
    place: null,
    patchId: null,
    patchNumber: null,
    note: '',
    groupId: null,
    uses: [],
    correctsId: null,
    correctedById: null,
    ...head,
    kind,
    data: { ...usual[kind], ...data },
  } as unknown as LogEntry
}

const pull = (id: string) => entry('pull', {}, { id })
/** Newest first, as the log is read. */
const asRead = (...oldestFirst: LogEntry[]) => [...oldestFirst].reverse()

describe('what a mould was at one of its pulls', () => {
  test('only what stands before the pull counts', () => {
    const history = asRead(
      entry('patch-laid', { number: 1 }),
      pull('first'),
      entry('coat'),
      pull('asked'),
      entry('patch-laid', { number: 2 }),
      entry('strip'),
    )
    const then = mouldThen(history, 'asked')
    expect(then?.pullNo).toBe(2)
    expect(then?.repairs.map(({ entry: { data } }) => 'number' in data && data.number)).toEqual([1])
    expect(then?.repairs[0]?.pullsBefore).toBe(1)
    expect(then?.strip).toBeNull()
    expect(then?.pullsSinceCoat).toBe(0)
  })

  test('a patch is open until it is proved; an interim repair until its matter is closed', () => {
    const repair = entry('repair', { method: 'fill', what: 'chip', interim: true } as never, { id: 'fill' })
    const history = asRead(
      entry('patch-laid', { number: 1 }),
      repair,
      pull('a'),
      entry('proved', { number: 1 }),
      entry('settled', { entryId: 'fill', outcome: 'carried' } as never),
      pull('b'),
      entry('settled', { entryId: 'fill', outcome: 'closed' } as never),
      pull('c'),
    )
    const openAt = (id: string) => mouldThen(history, id)?.repairs.map((each) => each.open)
    expect(openAt('a')).toEqual(['interim', 'not yet proved'])
    expect(openAt('b')).toEqual(['interim', null])
    expect(openAt('c')).toEqual([null, null])
  })

  test('a word on the matter of a repair holds when the repair was put right later', () => {
    const interim = { method: 'fill', what: 'chip', interim: true } as never
    const history = asRead(
      entry('repair', interim, { id: 'wrong', correctedById: 'right' }),
      entry('repair', interim, { id: 'right', correctsId: 'wrong' }),
      entry('settled', { entryId: 'wrong', outcome: 'closed' } as never),
      pull('a'),
    )
    expect(mouldThen(history, 'a')?.repairs.map(({ open }) => open)).toEqual([null])
  })

  test('the clearance is the one since the pull before; heat too', () => {
    const history = asRead(
      entry('cleared', { proof: true }),
      entry('heat', { toC: 121 }),
      pull('a'),
      entry('heat', { toC: 180, withPart: false }),
      entry('heat', { toC: 122 }),
      pull('b'),
    )
    expect(mouldThen(history, 'a')?.clearance?.data.proof).toBe(true)
    expect(mouldThen(history, 'b')?.clearance).toBeNull()
    expect(mouldThen(history, 'b')?.heats.map((heat) => heat.data.toC)).toEqual([122])
  })

  test('release is counted from the last strip of the whole face, by place, product and lot', () => {
    const floor = { areaId: 'floor', areaName: 'floor' }
    const history = asRead(
      entry('coat', { lot: 'old' }),
      entry('strip'),
      entry('seal'),
      entry('coat', {}, { id: 'first', doneOn: '2026-01-02' }),
      entry('strip', {}, floor),
      entry('coat', { product: 'Agent ' }, { doneOn: '2026-02-02' }),
      entry('coat', { lot: 'A2' }, floor),
      pull('asked'),
    )
    const lines = releaseLines(mouldThen(history, 'asked')?.release ?? [])
    expect(lines.map(({ kind, place, lot, coats }) => [kind, place, lot, coats])).toEqual([
      ['coat', 'floor', 'A2', 1],
      ['coat', 'whole face', 'A1', 2],
      ['seal', 'whole face', 'S1', 2],
    ])
    expect(lines[1]).toMatchObject({ firstOn: '2026-01-02', lastOn: '2026-02-02', firstEntryId: 'first' })
  })

  test('what was put right does not count; a pull that was put right has no answer', () => {
    const history = asRead(
      entry('strip', {}, { correctedById: 'x' }),
      entry('pull', {}, { id: 'wrong', correctedById: 'asked' }),
      pull('asked'),
    )
    expect(mouldThen(history, 'asked')).toMatchObject({ pullNo: 1, strip: null })
    expect(mouldThen(history, 'wrong')).toBeNull()
    expect(mouldThen(history, 'nowhere')).toBeNull()
  })
})

test('what is written after a pull never changes what the mould was at it', () => {
  const anyEntry = fc.constantFrom(...kindsOfThen).map((kind) => entry(kind, {} as never))
  fc.assert(
    fc.property(
      fc.array(anyEntry, { maxLength: 12 }),
      fc.array(anyEntry, { maxLength: 12 }),
      (before, after) => {
        const asked = pull('asked')
        expect(mouldThen([...after, asked, ...before], 'asked')).toEqual(
          mouldThen([asked, ...before], 'asked'),
        )
      },
    ),
  )
})

test('a part is as bad as the worst of its pulls says; without a pull nobody knows', () => {
  const of = (...fates: ('good' | 'rework' | 'scrapped')[]) =>
    worstFate(fates.map((partFate) => ({ partFate })))
  expect(of('good', 'rework', 'good')).toBe('rework')
  expect(of('scrapped', 'rework')).toBe('scrapped')
  expect(of()).toBeNull()
})
