import fc from 'fast-check'
import { describe, expect, test } from 'vitest'
import { measuredRows, measuredText } from '#lib/core/log/index'

describe('measured points, a line each', () => {
  test.each([
    ['D01 10 20', ['D01', '10', '20', '']],
    ['D01  10.5   20 3', ['D01', '10.5', '20', '3']],
    ['D01;10,5;20;3', ['D01', '10,5', '20', '3']],
    ['D01\t10,5 mm\t20\t', ['D01', '10,5 mm', '20', '']],
    ['D01, 10.5, 20', ['D01', '10.5', '20', '']],
    ['D01 10,5 20,25', ['D01', '10,5', '20,25', '']],
    ['Hole 3; 1; 2', ['Hole 3', '1', '2', '']],
  ])('%j', (line, [tag, xMm, yMm, zMm]) => {
    expect(measuredRows(line)).toEqual({ rows: [{ tag, xMm, yMm, zMm }], lines: [1], faults: [] })
  })

  test('a head and blank lines are passed over; lines keep their numbers', () => {
    const read = measuredRows('tag; x; y\n\nD01; 1; 2\r\nD02; 3; 4; 5\n')
    expect(read.rows.map((row) => row.tag)).toEqual(['D01', 'D02'])
    expect(read.lines).toEqual([3, 4])
  })

  test('a line that is no row is named', () => {
    expect(measuredRows('D01 1\nD02 1 2 3 4').faults).toEqual([
      'Line 1, "D01 1": give tag, x, y and, if known, z',
      'Line 2, "D02 1 2 3 4": give tag, x, y and, if known, z',
    ])
  })

  test('what was written opens as what was read', () => {
    const figure = fc.integer({ min: -1e6, max: 1e6 }).map((thousandths) => thousandths / 1000)
    const point = fc.record({
      tag: fc.stringMatching(/^[A-Z][0-9]{1,3}$/),
      xMm: figure,
      yMm: figure,
      zMm: fc.option(figure),
    })
    fc.assert(
      fc.property(fc.array(point), (points) => {
        const { rows, faults } = measuredRows(measuredText(points))
        expect(faults).toEqual([])
        expect(
          rows.map((row) => ({
            tag: row.tag,
            xMm: Number(row.xMm),
            yMm: Number(row.yMm),
            zMm: row.zMm === '' ? null : Number(row.zMm),
          })),
        ).toEqual(points.map((each) => ({ ...each, xMm: each.xMm + 0, yMm: each.yMm + 0 })))
      }),
    )
  })
})
