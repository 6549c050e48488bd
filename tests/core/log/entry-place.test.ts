import { describe, expect, test } from 'vitest'
import { entryPlace, type LogData } from '#lib/core/log/index'

// Rows down from v = 0, columns from u = 0: B3 holds u 100 to 150, v -50 to -100.
const floor = { name: 'floor', grid: { originMm: [0, 0], cellMm: 50 } } as const
const dowels = [
  { tag: 'D01', at: [100, -60] },
  { tag: 'D02', at: [140, -90] },
] as const

const spot = { uMm: 130, vMm: -60 }
const damage: LogData['damage'] = { weight: 'stop', what: 'a crack', ...spot }
const repair: LogData['repair'] = {
  method: 'fill',
  what: 'a chip',
  interim: false,
  untilPulls: null,
  untilOn: null,
  maxC: null,
  ...spot,
}

describe('the place that an entry tells of', () => {
  test('of damage and of a repair is the cell and the nearest point', () => {
    expect(entryPlace({ kind: 'damage', data: damage }, floor, dowels)).toBe('floor B3, 30 mm from D01')
    expect(entryPlace({ kind: 'repair', data: repair }, floor, [])).toBe('floor B3')
  })

  test('of a changed dowel is told from another one, never from itself', () => {
    const data: LogData['dowel-changed'] = {
      tag: ' d01 ',
      what: 'set new',
      uMm: 100,
      vMm: -60,
      diameterMm: null,
    }
    expect(entryPlace({ kind: 'dowel-changed', data }, floor, dowels)).toBe('floor B3, 50 mm from D02')
    expect(entryPlace({ kind: 'dowel-changed', data: { ...data, uMm: null } }, floor, dowels)).toBeNull()
  })

  test('of measured points is the cell of each, where they are measured on the area', () => {
    const data: LogData['measured'] = {
      instrument: 'arm',
      temperatureC: null,
      frame: 'area',
      points: [
        { tag: 'D01', xMm: 100, yMm: -60, zMm: null },
        { tag: 'D02', xMm: 10, yMm: -10, zMm: null },
      ],
    }
    expect(entryPlace({ kind: 'measured', data }, floor, dowels)).toBe('D01 in B3, D02 in A1')
    expect(entryPlace({ kind: 'measured', data: { ...data, frame: 'datum' } }, floor, dowels)).toBeNull()
  })

  test('is none where no place is told', () => {
    expect(entryPlace({ kind: 'damage', data: { ...damage, uMm: null } }, floor, dowels)).toBeNull()
    expect(entryPlace({ kind: 'note', data: {} }, floor, dowels)).toBeNull()
  })
})
