import { describe, expect, test } from 'vitest'
import { dowelPlaces, type TableIssue, type TablePoint } from '#lib/core/drawing/index'
import type { LogEntry } from '#lib/core/log/index'

function point(tag: string, uMm: number, vMm: number, more: Partial<TablePoint> = {}): TablePoint {
  return { areaId: 'floor', tag, uMm, vMm, diameterMm: 8, isDatum: false, toleranceMm: null, ...more }
}

function changed(tag: string, on: string, at: readonly [number, number] | null, struck = false): LogEntry {
  return {
    id: `${tag} ${on}`,
    doneOn: on,
    doneAt: null,
    precision: 'day',
    writtenAt: `${on}T18:00:00Z`,
    byName: 'Tove Aas',
    areaId: null,
    areaName: null,
    place: null,
    patchId: null,
    patchNumber: null,
    note: '',
    groupId: null,
    uses: [],
    correctsId: null,
    correctedById: struck ? 'another' : null,
    kind: 'dowel-changed',
    data: { tag, what: 'set new', uMm: at?.[0] ?? null, vMm: at?.[1] ?? null, diameterMm: null },
  }
}

const before: TableIssue = {
  issuedOn: '2025-10-01',
  points: [point('D01', 10, 10), point('D02', 100, 100), point('D03', 50, 50, { areaId: 'side' })],
}
const issue: TableIssue = {
  issuedOn: '2026-10-01',
  points: [point('d02', 108, 106), point('D01', 10.08, 10), point('D03', 70, 70), point('D09', 1, 1)],
}

describe('old places', () => {
  test('are those of the issue before, by tag, where a point moved within its area', () => {
    const [moved, still, other, added] = dowelPlaces('floor', issue, before, [])
    expect(moved).toMatchObject({ at: [108, 106], oldPlace: [100, 100], setOn: null })
    expect(still?.oldPlace).toBeNull()
    expect(other?.oldPlace).toBeNull()
    expect(added?.oldPlace).toBeNull()
  })

  test('a move within the tolerance is none', () => {
    const loose = { ...issue, points: [point('D02', 108, 106, { toleranceMm: 12 })] }
    expect(dowelPlaces('floor', loose, before, [])[0]?.oldPlace).toBeNull()
  })

  test('the log counts from the day of the issue, its last word last, struck entries never', () => {
    const entries = [
      changed('D02', '2026-11-03', [111, 107]),
      changed('D02', '2026-10-20', [110, 106]),
      changed('D02', '2026-11-09', [0, 0], true),
      changed('D01', '2026-09-30', [500, 500]),
      changed('D09', '2026-11-01', null),
    ]
    const [moved, still, , added] = dowelPlaces('floor', issue, before, entries)
    expect(moved).toMatchObject({ at: [111, 107], oldPlace: [108, 106], setOn: '2026-11-03' })
    expect(still).toMatchObject({ at: [10.08, 10], setOn: null })
    expect(added).toMatchObject({ at: [1, 1], setOn: null })
  })
})
