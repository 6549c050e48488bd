import { readFileSync } from 'node:fs'
import { join } from 'node:path'
import * as fc from 'fast-check'
import { describe, expect, test } from 'vitest'
import { type ChosenUnit, type OutlineReading, readOutline } from '#lib/exchange/outline/index'
import { arc, circle, dxf, line, polyline, read, square } from './draw-dxf'
import { readCase } from './read-case'

const casesFolder = join(import.meta.dirname, '../../cases')

const drawings = [
  dxf([
    polyline([
      [0, 0, 0.4],
      [100, 0],
      [100, 60],
      [0, 60],
    ]),
  ]),
  dxf(
    [line([0, 100], [0, 0]), arc([200, 50], 50, 270, 90), line([200, 100], [0, 100]), line([200, 0], [0, 0])],
    null,
  ),
  dxf([circle([0, 0], 20), polyline(square(100))]),
  readFileSync(join(casesFolder, 'T21a-dxf-polyline-vs-lwpolyline/slot_r12.dxf'), 'latin1'),
]

const tables = [
  'u [mm],v [mm]\n0,0\n100,0\n100,50.5\n0,50.5\n',
  '0;0\n412,350;0\n412,350;18,7\n0;18,7\n0;0\n',
  'x\ty\tz\n0\t0\t1\n1e2\t0\t1\n100\t50\t1\n',
  '{"unit": "mm", "outer": [[0, 0], [10, 0], [10, 4], [0, 4]], "holes": []}',
]

/** Bits that have broken readers before. */
const odd = fc.constantFrom(
  '',
  '0',
  '-1',
  '1e400',
  'NaN',
  '-0',
  '1e-320',
  '99999999999999999999',
  '10',
  '20',
  '42',
  '70',
  '0\n',
  '\n0\nEOF\n',
  '\nENDSEC\n',
  '\nVERTEX\n',
  '\nSEQEND\n',
  '\nPOLYLINE\n',
  '\nINSERT\n',
  '"',
  ';',
  ',',
  '\t',
  ' ',
  '#',
  '\x1a',
  '\0',
  '\ufeff',
  '\u2212',
  '[',
  '}',
  '\r',
  'é',
)

type Change = (text: string) => string

const change: fc.Arbitrary<Change> = fc.oneof(
  fc.record({ at: fc.nat(), cut: fc.nat(12), put: odd }).map(
    ({ at, cut, put }): Change =>
      (text) => {
        const place = at % (text.length + 1)
        return text.slice(0, place) + put + text.slice(place + cut)
      },
  ),
  fc.record({ at: fc.nat(), put: odd }).map(
    ({ at, put }): Change =>
      (text) => {
        const lines = text.split('\n')
        lines[at % lines.length] = put
        return lines.join('\n')
      },
  ),
  fc.record({ at: fc.nat(), count: fc.nat(5) }).map(
    ({ at, count }): Change =>
      (text) => {
        const lines = text.split('\n')
        const place = at % lines.length
        lines.splice(place, 0, ...lines.slice(place, place + count))
        return lines.join('\n')
      },
  ),
  fc.nat().map(
    (at): Change =>
      (text) =>
        text.slice(0, at % (text.length + 1)),
  ),
)

const mutated = (texts: readonly string[]) =>
  fc
    .tuple(fc.constantFrom(...texts), fc.array(change, { minLength: 1, maxLength: 6 }))
    .map(([text, changes]) => changes.reduce((changed, each) => each(changed), text))

const units = fc.constantFrom<ChosenUnit | null>(null, 'mm', 'in', 'm')

/** What holds for every answer, whatever the file. */
function expectSound(reading: OutlineReading): void {
  const { verdict, loops, findings } = reading
  const severities = new Set(findings.map(({ severity }) => severity))
  const gravest = severities.has('stop')
    ? 'refuse'
    : severities.has('look')
      ? 'ask'
      : severities.has('note')
        ? 'accept-with-notice'
        : 'accept'
  expect(verdict).toBe(gravest)
  for (const { severity, text, cure } of findings) {
    expect(text.length).toBeGreaterThan(10)
    expect(text.length).toBeLessThan(3000)
    if (severity !== 'note') expect(cure).not.toBeNull()
  }
  if (verdict.startsWith('accept')) {
    expect(loops).toHaveLength(1)
    expect(reading.unit).not.toBeNull()
  }
  for (const { points, areaMm2, perimeterMm, boundsMm } of loops) {
    expect([areaMm2, perimeterMm, ...boundsMm, ...points.flat()].every(Number.isFinite)).toBe(true)
    expect(points.length).toBeGreaterThanOrEqual(3)
  }
}

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
    for (const id of ['T20', 'T22', 'T23', 'T29', 'T31']) {
      const { reading } = readCase(id)
      const text = reading.loops[0]!.points.map(([u, v]) => `${u};${v}`).join('\n')
      const again = read(text, 'mm', 'pasted')
      expect(again.verdict).toBe('accept')
      expect(again.loops[0]!.areaMm2).toBeCloseTo(reading.loops[0]!.areaMm2, 6)
    }
  })
})
