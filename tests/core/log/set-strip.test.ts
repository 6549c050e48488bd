import { expect, test } from 'vitest'
import { type PullGrade, type PullOfPiece, setStrokes } from '#lib/core/log/index'

let made = 0
const pull = (
  mouldId: string,
  doneOn: string,
  partKey: string | null,
  went: PullGrade = 'usual',
  cleared = true,
) => {
  made += 1
  return { id: `pull-${made}`, mouldId, doneOn, partKey, went, cleared } satisfies PullOfPiece
}

test('pulls that gave one part are one stroke, as it went on the hardest piece', () => {
  const { pulls } = setStrokes(
    [
      pull('P', '2026-01-10', 'lh-1'),
      pull('S', '2026-01-10', 'lh-1', 'forced'),
      pull('B', '2026-01-10', 'lh-1', 'harder', false),
      pull('P', '2026-02-01', 'lh-2'),
    ],
    [],
    [],
  )
  expect(pulls).toEqual([
    { day: '2026-01-10', went: 'forced', cleared: false },
    { day: '2026-02-01', went: 'usual', cleared: true },
  ])
})

test('pulls that name no part stand for themselves', () => {
  const { pulls } = setStrokes([pull('P', '2026-01-10', null), pull('S', '2026-01-10', null)], [], [])
  expect(pulls).toHaveLength(2)
})

test('a patch begins after the parts that came off before it; a season before its first part', () => {
  const { patches, seasons } = setStrokes(
    [pull('P', '2026-01-10', 'a'), pull('P', '2026-02-10', 'b'), pull('P', '2026-09-10', 'c')],
    [{ code: 'LH-P', number: 2, doneOn: '2026-02-20' }],
    [
      { name: '2026', startsOn: '2026-01-01' },
      { name: '2026/27', startsOn: '2026-09-01' },
      { name: '2027/28', startsOn: '2027-09-01' },
    ],
  )
  expect(patches).toEqual([{ fromPull: 3, toPull: null, label: 'LH-P, patch 2' }])
  expect(seasons).toEqual([
    { beforePull: 1, label: '2026' },
    { beforePull: 3, label: '2026/27' },
  ])
})
