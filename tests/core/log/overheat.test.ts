import { describe, expect, test } from 'vitest'
import { type HeatCount, mouldStanding, overheatReasons } from '#lib/core/log/index'
import { quietCounts } from './sample-counts'

const limits = { inUseC: 140, freeC: 180, bondedC: 160 }

function heat(withPartC: number | null, freeC: number | null): HeatCount {
  const hottest = (toC: number | null) => (toC === null ? null : { toC, doneOn: '2026-03-03' })
  return {
    cycles: [],
    hottestC: Math.max(withPartC ?? 0, freeC ?? 0) || null,
    hottestWithPart: hottest(withPartC),
    hottestFree: hottest(freeC),
  }
}

describe('three heat limits, not one', () => {
  test.each([
    ['a part in it, below the limit in use', heat(140, null), []],
    [
      'a part in it, above the limit in use',
      heat(141, null),
      ['overheated: 141 °C with a part in it on 3 Mar 2026; limit in use 140 °C'],
    ],
    ['standing free, above the limit in use and below the free one', heat(null, 160), []],
    [
      'standing free, above what bonded bushes stand',
      heat(null, 170),
      ['overheated: 170 °C standing free on 3 Mar 2026; limit of bonded bushes 160 °C'],
    ],
    [
      'standing free, above both',
      heat(null, 190),
      ['overheated: 190 °C standing free on 3 Mar 2026; limit standing free 180 °C, of bonded bushes 160 °C'],
    ],
  ])('%s', (_name, seen, reasons) => {
    expect(overheatReasons({ heat: seen, heatLimits: limits })).toEqual(reasons)
  })

  test('a limit that nobody knows holds nothing', () => {
    const unknown = { inUseC: null, freeC: null, bondedC: null }
    expect(overheatReasons({ heat: heat(400, 400), heatLimits: unknown })).toEqual([])
  })

  test('an overheated mould is held, and says why', () => {
    expect(mouldStanding(quietCounts({ heat: heat(150, null), heatLimits: limits }))).toMatchObject({
      state: 'held',
      reason: 'overheated: 150 °C with a part in it on 3 Mar 2026; limit in use 140 °C',
    })
  })
})
