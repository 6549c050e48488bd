import fc from 'fast-check'
import { describe, expect, test } from 'vitest'
import { cellOf, columnName, gridStrips, rowName } from '#lib/core/geometry/index'

/** Lines between cells are among them, and hit exactly. */
const tenths = fc.integer({ min: -3000, max: 3000 }).map((value) => value / 10)

const grid = { originMm: [0, 400], cellMm: 50 } as const

describe('naming', () => {
  test('letters from the top without I and O, then AA', () => {
    expect(Array.from({ length: 24 }, (_, index) => rowName(index)).join('')).toBe('ABCDEFGHJKLMNPQRSTUVWXYZ')
    expect([24, 25, 47, 48, 24 + 24 * 24].map(rowName)).toEqual(['AA', 'AB', 'AZ', 'BA', 'AAA'])
  })

  test('above and left of the origin cells have a minus', () => {
    expect([-1, -2, -25].map(rowName)).toEqual(['-A', '-B', '-AA'])
    expect([1, 0, -1, -2].map(columnName)).toEqual(['2', '1', '-1', '-2'])
  })

  test('no two rows have one name', () => {
    const names = Array.from({ length: 2000 }, (_, index) => rowName(index - 1000))
    expect(new Set(names).size).toBe(2000)
  })
})

describe('the cell of a point', () => {
  test('A1 lies below and right of the origin', () => {
    expect(cellOf(grid, [1, 399])).toBe('A1')
    expect(cellOf(grid, [220, 330])).toBe('B5')
    expect(cellOf(grid, [-1, 401])).toBe('-A-1')
  })

  test('on a line it is the cell below or to the right', () => {
    expect(cellOf(grid, [0, 400])).toBe('A1')
    expect(cellOf(grid, [50, 350])).toBe('B2')
  })

  test('what can be no cell is misuse', () => {
    expect(() => cellOf({ ...grid, cellMm: 0 }, [1, 1])).toThrow(RangeError)
    expect(() => cellOf(grid, [Number.NaN, 1])).toThrow(RangeError)
  })
})

describe('rows and columns for drawing', () => {
  test('those that bounds reach into, rows from the top', () => {
    const { rows, columns } = gridStrips(grid, [40, 290, 160, 390])
    expect(rows.map((row) => row.name)).toEqual(['A', 'B', 'C'])
    expect(rows[0]).toEqual({ name: 'A', fromMm: 350, toMm: 400 })
    expect(columns.map((column) => column.name)).toEqual(['1', '2', '3', '4'])
    expect(columns[3]).toEqual({ name: '4', fromMm: 150, toMm: 200 })
  })

  test('a point lies in the row and column that its cell is named by', () => {
    fc.assert(
      fc.property(tenths, tenths, (u, v) => {
        const { rows, columns } = gridStrips(grid, [u - 120, v - 120, u + 120, v + 120])
        const row = rows.filter(({ fromMm, toMm }) => v > fromMm && v <= toMm)
        const column = columns.filter(({ fromMm, toMm }) => u >= fromMm && u < toMm)
        expect(cellOf(grid, [u, v])).toBe(row[0]!.name + column[0]!.name)
        expect([row.length, column.length]).toEqual([1, 1])
      }),
    )
  })

  test('a grid too fine to draw is misuse', () => {
    expect(() => gridStrips({ ...grid, cellMm: 0.01 }, [0, 0, 500, 500])).toThrow(/cell of 0\.01 mm/)
  })
})
