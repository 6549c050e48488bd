import { readFileSync } from 'node:fs'
import { join } from 'node:path'
import * as fc from 'fast-check'
import { expect } from 'vitest'
import type { ChosenUnit, OutlineReading } from '#lib/exchange/outline/index'
import { block, insert, layerTable } from './draw-blocks'
import { circleSpline, ellipse } from './draw-curves'
import { arc, circle, dxf, line, polyline, square } from './draw-dxf'

const casesFolder = join(import.meta.dirname, '../../cases')

export const drawings = [
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
  dxf([ellipse([0, 0], [60, 10], 0.4), circleSpline([0, 0], 200)]),
  dxf([insert('A', [10, 20], { scale: [2, -1], turnDeg: 30, columns: 2, rows: 2, spacing: [9, 9] })], 4, {
    tables: layerTable({ CUT: { flags: 0, colour: 7 }, OLD: { flags: 1, colour: 7 } }),
    blocks: [
      ...block('A', [insert('B', [1, 2], { mirrored: true }), circle([0, 0], 4, 'OLD')], [1, 1]),
      ...block('B', [polyline([...square(3)]), arc([1, 1], 1, 0, 180)]),
    ],
  }),
  readFileSync(join(casesFolder, 'T25a-dxf-splines/spline.dxf'), 'latin1'),
  readFileSync(join(casesFolder, 'T27a-dxf-blocks-insert-scale/insert_scale.dxf'), 'latin1'),
  readFileSync(join(casesFolder, 'T21a-dxf-polyline-vs-lwpolyline/slot_r12.dxf'), 'latin1'),
]

export const tables = [
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
  '\nSPLINE\n',
  '\nELLIPSE\n',
  '\nENDBLK\n',
  '41',
  '40',
  '230',
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

/** One of the texts after a few changes that break files in practice. */
export const mutated = (texts: readonly string[]) =>
  fc
    .tuple(fc.constantFrom(...texts), fc.array(change, { minLength: 1, maxLength: 6 }))
    .map(([text, changes]) => changes.reduce((changed, each) => each(changed), text))

export const units = fc.constantFrom<ChosenUnit | null>(null, 'mm', 'in', 'm')

/** What holds for every answer, whatever the file. */
export function expectSound(reading: OutlineReading): void {
  const { verdict, loops, findings } = reading
  // How an SVG is always read is said and asks for nothing.
  const judged = findings.filter(({ code }) => code !== 'svg-flipped')
  const severities = new Set(judged.map(({ severity }) => severity))
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
    expect(loops.filter(({ role }) => role === 'outer')).toHaveLength(1)
    expect(reading.unit).not.toBeNull()
  }
  for (const { points, areaMm2, perimeterMm, boundsMm } of loops) {
    expect([areaMm2, perimeterMm, ...boundsMm, ...points.flat()].every(Number.isFinite)).toBe(true)
    expect(points.length).toBeGreaterThanOrEqual(3)
  }
}
