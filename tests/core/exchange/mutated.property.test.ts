import * as fc from 'fast-check'
import { describe, expect, test } from 'vitest'
import { readOutline } from '#lib/exchange/outline/index'
import { dxf, line, polyline, read } from './draw-dxf'
import { drawings, expectSound, mutated, tables, units } from './mutations'
import { readCase } from './read-case'

describe('whatever is done to a file, there is an answer', () => {
  test('drawings', () => {
    fc.assert(
      fc.property(mutated(drawings), units, (text, unit) => expectSound(read(text, unit))),
      { numRuns: 100 },
    )
  })

  test('tables and JSON', () => {
    fc.assert(
      fc.property(mutated(tables), units, (text, unit) => expectSound(read(text, unit, 'pasted'))),
      { numRuns: 100 },
    )
  })

  test('bytes', () => {
    const bytes = fc.uint8Array({ maxLength: 200 })
    fc.assert(
      fc.property(bytes, units, (content, unit) =>
        expectSound(readOutline({ name: 'file', bytes: content, unit })),
      ),
      { numRuns: 100 },
    )
  })
})

describe('laws', () => {
  const corners = fc
    .uniqueArray(fc.integer({ min: 0, max: 359 }), { minLength: 3, maxLength: 12 })
    .map((angles) => [...angles].sort((a, b) => a - b))
    .filter((angles) =>
      angles.every((angle, index) => (angles[(index + 1) % angles.length]! - angle + 360) % 360 < 170),
    )
    .map((angles) =>
      angles.map(
        (angle) =>
          [Math.cos((angle * Math.PI) / 180) * 300, Math.sin((angle * Math.PI) / 180) * 200] as const,
      ),
    )

  test('order, direction and doubling of pieces change nothing', () => {
    const piecesOf = corners.chain((points) => {
      const ends = points.map((point, index) => [point, points[(index + 1) % points.length]!] as const)
      return fc.record({
        points: fc.constant(points),
        pieces: fc.shuffledSubarray(ends, { minLength: ends.length }),
        turned: fc.array(fc.boolean(), { minLength: ends.length, maxLength: ends.length }),
        again: fc.subarray(ends),
      })
    })
    fc.assert(
      fc.property(piecesOf, ({ points, pieces, turned, again }) => {
        const lines = pieces.map(([a, b], index) => (turned[index] ? line(b, a) : line(a, b)))
        const reading = read(dxf([...lines, ...again.map(([a, b]) => line(b, a))]))
        const whole = read(dxf([polyline(points)]))
        expect(reading.verdict).toBe(again.length > 0 ? 'accept-with-notice' : 'accept')
        expect(reading.dropped).toBe(again.length)
        expect(reading.loops[0]!.areaMm2).toBeCloseTo(whole.loops[0]!.areaMm2, 6)
        expect(reading.loops[0]!.perimeterMm).toBeCloseTo(whole.loops[0]!.perimeterMm, 6)
      }),
      { numRuns: 100 },
    )
  })

  test('what is read from a drawing is read again from its points', () => {
    for (const id of ['T20', 'T22', 'T23', 'T25', 'T26', 'T27', 'T28', 'T29', 'T31']) {
      const { reading } = readCase(id)
      const text = reading.loops[0]!.points.map(([u, v]) => `${u};${v}`).join('\n')
      const again = read(text, 'mm', 'pasted')
      expect(again.verdict).toBe('accept')
      expect(again.loops[0]!.areaMm2).toBeCloseTo(reading.loops[0]!.areaMm2, 6)
    }
  })
})
