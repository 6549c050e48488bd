/**
 * Maintenance manual of a light aerobatic aircraft, chapter 51, pages 22 and 29: at least 20 mm a layer and a
 * length of at least 50:1, the longer governs. Published rule, arithmetic ours.
 */
import { expect, test } from 'vitest'
import { planned, plyOf, quietPatch } from '#tests/core/repair/sample-patch'

test('SG-05: three layers of 0.30 mm: 60 mm by layers against 45 mm by ratio, so 60 mm governs; exact', () => {
  const { lengths } = planned(
    quietPatch({
      stack: [plyOf(0.3), plyOf(0.3), plyOf(0.3)],
      removedPlies: [1, 2, 3],
      measuredThicknessMm: [],
      taper: { ratio: 50, mmPerPly: 20, use: 'longer' },
    }),
  ).value
  expect(lengths.byMmPerPlyMm).toBe(60)
  expect(lengths.byRatioMm).toBeCloseTo(45, 9)
  expect(lengths.governs).toBe('mm-per-ply')
  expect(lengths.lengthMm).toBe(60)
})
