import { describe, expect, test } from 'vitest'
import { block, insert } from './draw-blocks'
import { arc, circle, codes, dxf, line, type Pair, polyline, read, square } from './draw-dxf'

const behind: readonly Pair[] = [
  [210, 0],
  [220, 0],
  [230, -1],
]

const vertex = (x: number, y: number, bulge = 0): readonly Pair[] => [
  [0, 'VERTEX'],
  [8, 'CUT'],
  [10, x],
  [20, y],
  [30, 0],
  [42, bulge],
]

const oldPolyline = (flags: number, more: readonly Pair[] = []): readonly Pair[] => [
  [0, 'POLYLINE'],
  [8, 'CUT'],
  [66, 1],
  [70, flags],
  ...more,
]

/** Each lies at negative x in its own axes. */
const kinds: readonly (readonly [string, readonly (readonly Pair[])[], readonly number[]])[] = [
  ['CIRCLE', [[...circle([-50, 20], 10), ...behind]], [40, 10, 60, 30]],
  ['ARC', [[...arc([-50, 20], 10, 90, 270), ...behind], line([50, 30], [50, 10])], [50, 10, 60, 30]],
  [
    'LWPOLYLINE',
    [
      polyline(
        [
          [-40, 0],
          [-20, 0, 1],
          [-20, 30],
          [-40, 30],
        ],
        true,
        behind,
      ),
    ],
    [5, 0, 40, 30],
  ],
  [
    'POLYLINE',
    [oldPolyline(1, behind), vertex(-40, 0), vertex(-20, 0, 1), vertex(-20, 30), vertex(-40, 30)],
    [5, 0, 40, 30],
  ],
]

describe('seen from (0, 0, -1)', () => {
  test.each(kinds)('%s is mirrored to where it lies', (_, entities, bounds) => {
    const { loops, findings } = read(dxf(entities))
    expect(findings).toEqual([])
    bounds.forEach((mm, index) => {
      expect(loops[0]!.boundsMm[index]).toBeCloseTo(mm, 9)
    })
  })

  test('INSERT mirrors what it holds, its own place with it', () => {
    const based = block('SQ', [polyline([...square(10), [0, 4]])], [0, 0])
    const reading = read(
      dxf([insert('SQ', [-80, 5], { mirrored: true, scale: [2, 1] })], 4, { blocks: based }),
    )
    expect(reading.loops[0]!.boundsMm).toEqual([60, 5, 80, 15])
  })

  test('lines and polylines in space are given as they lie', () => {
    const ring = square(30).map((corner, index) => [...line(corner, square(30)[(index + 1) % 4]!), ...behind])
    expect(read(dxf(ring)).loops[0]!.boundsMm).toEqual([0, 0, 30, 30])
    const inSpace = [oldPolyline(1 | 8, behind), vertex(0, 0), vertex(30, 0), vertex(30, 30)]
    expect(read(dxf(inSpace)).loops[0]!.boundsMm).toEqual([0, 0, 30, 30])
  })

  test('its height is turned over as well', () => {
    const raised = (z: number, more: readonly Pair[] = []) => [
      ...circle([0, 0], 10),
      [30, z] as const,
      ...more,
    ]
    const frame = (z: number) => polyline(square(100, [-50, -50]), true, [[38, z]])
    expect(codes(read(dxf([frame(5), raised(-5, behind)])))).not.toContain('not-flat')
    expect(codes(read(dxf([frame(5), raised(5, behind)])))).toContain('not-flat')
  })

  test('a direction between is refused by name', () => {
    const tilted: readonly Pair[] = [
      [210, 0],
      [220, 0.6],
      [230, -0.8],
    ]
    const reading = read(
      dxf([
        [...circle([0, 0], 10), ...tilted],
        [...insert('A', [0, 0]), ...tilted],
      ]),
    )
    expect(codes(reading)).toEqual(['entity-not-read', 'entity-not-read'])
    expect(reading.findings.map(({ text }) => text).join()).toMatch(
      /CIRCLE in a tilted plane.*INSERT in a tilted plane/,
    )
  })
})
