import { describe, expect, test } from 'vitest'
import { readLoops } from '#lib/exchange/outline/index'
import { arc, circle, codes, dxf, entity, line, polyline, read, square } from './draw-dxf'

const four = square(100)
const sides = four.map((corner, index) => line(corner, four[(index + 1) % 4]!))

describe('pieces joined to one outline', () => {
  test('in any order and direction', () => {
    const reading = read(
      dxf([
        line([0, 0], [100, 0]),
        line([0, 100], [0, 0]),
        line([100, 100], [0, 100]),
        line([100, 100], [100, 0]),
      ]),
    )
    expect(reading.verdict).toBe('accept')
    expect(reading.loops[0]).toMatchObject({ areaMm2: 10_000, perimeterMm: 400, boundsMm: [0, 0, 100, 100] })
    expect(reading.loops[0]!.points).toHaveLength(4)
  })

  test('polylines chain with lines and arcs, also run backwards', () => {
    const reading = read(
      dxf([
        arc([0, 50], 50, 90, 270),
        polyline(
          [
            [100, 0],
            [100, 100],
            [0, 100],
          ],
          false,
        ),
        line([100, 0], [0, 0]),
      ]),
    )
    expect(reading.verdict).toBe('accept')
    expect(reading.loops[0]!.areaMm2).toBeCloseTo(10_000 + (Math.PI * 2500) / 2, -1)
    expect(reading.loops[0]!.boundsMm[0]).toBeCloseTo(-50, 9)
  })

  test('ends within 0.01 mm are one point, without a word', () => {
    const reading = read(dxf([...sides.slice(0, 3), line([0, 100], [0.008, 0.004])]))
    expect(reading.verdict).toBe('accept')
    expect(reading.loops[0]!.points).toHaveLength(4)
  })

  test('a gap up to 0.5 mm is closed halfway and reported', () => {
    const reading = read(dxf([...sides.slice(0, 3), line([0, 100], [0, 0.3])]))
    expect(reading.verdict).toBe('accept-with-notice')
    expect(reading.findings[0]).toMatchObject({
      code: 'gap-joined',
      severity: 'note',
      figures: { gapsMm: [0.3] },
    })
    expect(reading.findings[0]!.text).toContain('0.3 mm')
    expect(reading.loops[0]!.points).toContainEqual([0, 0.15])
  })

  test('lines that overshoot a corner by less than 0.5 mm do not cross', () => {
    const reading = read(dxf([line([0, 0], [100.2, 0]), line([100, -0.2], [100, 100]), ...sides.slice(2)]))
    expect(codes(reading)).toEqual(['gap-joined'])
  })

  test('a wider gap is refused with both ends, the gap and the cure', () => {
    const reading = read(dxf([...sides.slice(0, 3), line([0, 100], [0, 3])]))
    expect(reading.verdict).toBe('refuse')
    expect(reading.loops).toEqual([])
    const [finding] = reading.findings
    expect(finding).toMatchObject({ code: 'outline-open', figures: { gapMm: 3, endsMm: [0, 0, 0, 3] } })
    expect(finding!.text).toMatch(/u 0, v 0 mm .*LINE on layer CUT, line \d+.*u 0, v 3 mm.*gap of 3 mm/)
    expect(finding!.cure).toContain('Close the gap')
  })

  test('a polyline without its closed flag is open where its ends lie apart, and can be chained', () => {
    const open = polyline([...square(100)], false)
    expect(read(dxf([open]))).toMatchObject({
      verdict: 'refuse',
      findings: [{ code: 'outline-open', figures: { gapMm: 100 } }],
    })
    expect(read(dxf([open, sides[3]!]))).toMatchObject({ verdict: 'accept', loops: [{ areaMm2: 10_000 }] })
  })

  test('three ends at a point are refused with the place', () => {
    const reading = read(dxf([...sides, line([100, 100], [150, 150])]))
    expect(reading).toMatchObject({
      verdict: 'refuse',
      findings: [{ code: 'branch', place: 'u 100, v 100 mm' }],
    })
    expect(reading.findings[0]!.text).toContain('3 ends meet here')
  })

  test('a stray line beside a whole outline is named, not passed over', () => {
    const reading = read(dxf([...sides, line([20, 20], [80, 20], 'CENTRE')]))
    expect(reading).toMatchObject({ verdict: 'refuse', findings: [{ code: 'outline-open' }] })
    expect(reading.findings[0]!.text).toContain('layer CENTRE')
  })

  test('an outline from two layers says so', () => {
    const reading = read(dxf([...sides.slice(0, 3), line([0, 100], [0, 0], 'INNER')]))
    expect(reading).toMatchObject({ verdict: 'accept-with-notice', findings: [{ code: 'several-layers' }] })
    expect(reading.findings[0]!.text).toContain('CUT, INNER')
  })
})

describe('what is drawn twice', () => {
  test.each([
    ['lines, one of them reversed', [...sides, line([100, 0], [0, 0]), line([100, 0], [100, 100])], 2],
    ['a whole polyline', [polyline(four), polyline(four)], 1],
    [
      'a polyline that begins elsewhere and runs the other way',
      [polyline(four), polyline([...four.slice(2), ...four.slice(0, 2)].reverse())],
      1,
    ],
    ['lines over a polyline', [...sides.slice(0, 3), polyline(four)], 3],
    ['a circle', [circle([0, 0], 30), circle([0, 0], 30)], 1],
    ['lines that are a hair off', [...sides, line([0.004, 0], [100, 0.004])], 1],
  ] as const)('%s is dropped and counted', (_, entities, dropped) => {
    const reading = read(dxf(entities))
    expect(reading.verdict).toBe('accept-with-notice')
    expect(reading.dropped).toBe(dropped)
    expect(reading.loops).toHaveLength(1)
    expect(reading.findings[0]).toMatchObject({ code: 'doubled-dropped', figures: { count: dropped } })
  })

  test('arcs, also one drawn as a polyline backwards', () => {
    const half = arc([0, 0], 50, 0, 180)
    const chord = line([-50, 0], [50, 0])
    const reading = read(
      dxf([
        half,
        chord,
        half,
        polyline(
          [
            [-50, 0, -1],
            [50, 0],
          ],
          false,
        ),
      ]),
    )
    expect(reading).toMatchObject({ verdict: 'accept-with-notice', dropped: 2 })
    expect(reading.loops[0]!.areaMm2).toBeCloseTo((Math.PI * 2500) / 2, -1)
  })

  test('an arc and its own chord are no doubles', () => {
    expect(read(dxf([arc([0, 0], 50, 0, 180), line([-50, 0], [50, 0])])).dropped).toBe(0)
  })

  test('pieces without length and repeated vertices are dropped and told', () => {
    const reading = read(
      dxf([
        polyline([
          [0, 0],
          [100, 0],
          [100, 0],
          [100, 100],
          [0, 100],
          [0, 0],
        ]),
        line([5, 5], [5, 5]),
      ]),
    )
    expect(reading).toMatchObject({ verdict: 'accept-with-notice', dropped: 1 })
    expect(codes(reading)).toEqual(['lengthless-dropped', 'repeated-points-dropped'])
    expect(reading.findings[1]!.figures).toEqual({ count: 2 })
    expect(reading.loops[0]!.points).toHaveLength(4)
  })
})

describe('arcs', () => {
  test.each([
    ['a circle', [circle([10, 20], 30)], Math.PI * 900, [-20, -10, 40, 50]],
    ['a full arc', [arc([10, 20], 30, 45, 45)], Math.PI * 900, [-20, -10, 40, 50]],
    [
      'an arc of 300 degrees with its chord',
      [arc([0, 0], 40, 30, 330), line([40 * Math.cos(Math.PI / 6), 20], [40 * Math.cos(Math.PI / 6), -20])],
      800 * ((Math.PI * 300) / 180 + Math.sin(Math.PI / 3)),
      [-40, -40, 40 * Math.cos(Math.PI / 6), 40],
    ],
    [
      'two half circles by bulge',
      [
        polyline([
          [0, 0, 1],
          [60, 0, 1],
        ]),
      ],
      Math.PI * 900,
      [0, -30, 60, 30],
    ],
    [
      'a polyline with arcs that run inwards',
      [
        polyline([
          [0, 0, -1],
          [60, 0],
          [60, 100],
          [0, 100],
        ]),
      ],
      6000 - (Math.PI * 900) / 2,
      [0, 0, 60, 100],
    ],
  ] as const)('%s has its area and bounds', (_, entities, areaMm2, boundsMm) => {
    const { loops, verdict } = read(dxf(entities))
    expect(verdict).toBe('accept')
    // Flattening within 0.005 mm loses at most 2/3 of that along each arc.
    expect(Math.abs(loops[0]!.areaMm2 - areaMm2)).toBeLessThan((2 / 3) * 0.005 * 2 * Math.PI * 40)
    boundsMm.forEach((mm, index) => {
      expect(loops[0]!.boundsMm[index]).toBeCloseTo(mm, 6)
    })
  })

  test('chords stay within 0.005 mm of the arc', () => {
    const [loop] = read(dxf([circle([0, 0], 300)])).loops
    const { points } = loop!
    for (const [index, [u, v]] of points.entries()) {
      const [nextU, nextV] = points[(index + 1) % points.length]!
      expect(Math.hypot(u, v)).toBeCloseTo(300, 6)
      expect(300 - Math.hypot((u + nextU) / 2, (v + nextV) / 2)).toBeLessThanOrEqual(0.005 + 1e-9)
    }
  })
})

describe('several loops', () => {
  test('two outlines are refused with sizes, places and layers', () => {
    const reading = read(dxf([polyline(square(50)), polyline(square(20, [100, 0]))]))
    expect(reading).toMatchObject({
      verdict: 'refuse',
      findings: [{ code: 'several-outlines', figures: { outlines: 2 } }],
    })
    expect(reading.findings[0]!.text).toContain('20 x 20 mm at u 100 to 120, v 0 to 20 mm, layer CUT')
    expect(reading.loops.map(({ role }) => role)).toEqual(['outer', 'outer'])
  })

  test('an island in a hole is an outline again', () => {
    const reading = read(dxf([circle([50, 50], 10), polyline(square(100)), circle([50, 50], 30)]))
    expect(reading.loops.map(({ role }) => role)).toEqual(['outer', 'hole', 'outer'])
    expect(codes(reading)).toEqual(['several-outlines'])
    expect(reading.loops[1]!.points[1]![1]).toBeLessThan(reading.loops[1]!.points[0]![1])
  })

  test.each([
    ['cross', square(40, [80, 10])],
    ['touch', square(40, [60, 10])],
  ] as const)('loops that %s are refused with the place', (_, other) => {
    const reading = read(dxf([polyline(square(100)), polyline(other)]))
    expect(reading.verdict).toBe('refuse')
    expect(codes(reading)).toEqual(['loops-meet'])
    expect(reading.findings[0]!.place).toMatch(/^u 100, v (10|50) mm$/)
  })

  test('a hole that crosses itself is asked about, one without an area is refused', () => {
    const bow = polyline([
      [10, 10],
      [50, 40],
      [50, 10],
      [10, 40],
    ])
    const asked = readLoops({ name: 'a.dxf', text: dxf([polyline(square(100)), bow]), unit: null })
    expect(asked).toMatchObject({ verdict: 'ask', findings: [{ code: 'self-crossing' }] })
    expect(asked.loops[1]).toMatchObject({ role: 'hole', areaMm2: 600 })
    const line = polyline([
      [10, 10],
      [50, 10],
      [30, 10],
    ])
    expect(codes(read(dxf([polyline(square(100)), line])))).toContain('no-area')
  })

  test('a thousand points and many holes are told apart at once', () => {
    const holes = Array.from({ length: 150 }, (_, i) =>
      circle([60 * (i % 15) - 430, 60 * Math.floor(i / 15) - 280], 20),
    )
    const start = performance.now()
    const reading = readLoops({ name: 'a.dxf', text: dxf([...holes, circle([0, 0], 900)]), unit: null })
    expect(performance.now() - start).toBeLessThan(5000)
    expect(reading.verdict).toBe('accept')
    expect(reading.loops.filter(({ role }) => role === 'hole')).toHaveLength(150)
  })

  test('many loops are counted', () => {
    const many = Array.from({ length: 300 }, (_, index) => circle([index * 10, 0], 2))
    const reading = read(dxf(many))
    expect(reading.findings[0]).toMatchObject({ code: 'several-outlines', figures: { outlines: 300 } })
    expect(reading.loops).toEqual([])
  })
})

describe('old and rarer forms', () => {
  const vertex = (x: number, y: number, flags = 0, bulge = 0) =>
    [
      [0, 'VERTEX'],
      [8, 'CUT'],
      [10, x],
      [20, y],
      [30, 0],
      [42, bulge],
      [70, flags],
    ] as const

  test('a POLYLINE without SEQEND, and control points of a fitted curve passed over', () => {
    const reading = read(
      dxf([
        [
          [0, 'POLYLINE'],
          [8, 'CUT'],
          [66, 1],
          [70, 1 | 4],
        ],
        vertex(0, 0),
        vertex(50, -40, 16),
        vertex(100, 0),
        vertex(100, 100),
      ]),
    )
    expect(reading).toMatchObject({ verdict: 'accept', loops: [{ areaMm2: 5000 }] })
  })

  test('heights that differ are asked about', () => {
    const tilted = [
      [0, 'LINE'],
      [8, 'CUT'],
      [10, 0],
      [20, 0],
      [30, 0],
      [11, 100],
      [21, 0],
      [31, 25],
    ] as const
    const reading = read(dxf([tilted, ...sides.slice(1)]))
    expect(reading).toMatchObject({
      verdict: 'ask',
      findings: [{ code: 'not-flat', figures: { lowestMm: 0, highestMm: 25 } }],
    })
  })

  test('a polyline that lost a vertex is asked about', () => {
    const short = polyline(four).map((pair) => (pair[0] === 90 ? ([90, 5] as const) : pair))
    expect(read(dxf([short]))).toMatchObject({ verdict: 'ask', findings: [{ code: 'vertices-missing' }] })
  })

  test('lettering is left out with a notice, windows of the layout without', () => {
    const reading = read(
      dxf([polyline(four), entity('TEXT'), entity('TEXT'), entity('DIMENSION'), entity('VIEWPORT')]),
    )
    expect(reading).toMatchObject({
      verdict: 'accept-with-notice',
      findings: [{ code: 'lettering-left-out', figures: { count: 3 } }],
    })
    expect(reading.findings[0]!.text).toContain('2 TEXT, 1 DIMENSION')
  })

  test('what stands on a sheet of the layout is no outline', () => {
    const reading = read(dxf([polyline(four), [...line([0, 0], [900, 0]), [67, 1]]]))
    expect(codes(reading)).toEqual(['sheet-left-out'])
  })

  test.each(['HELIX', 'HATCH', 'MLINE', '3DFACE', 'REGION', 'SOMETHING_NEW'])(
    '%s is refused by name, count and cure',
    (type) => {
      const reading = read(dxf([polyline(four), entity(type), entity(type)]))
      expect(reading).toMatchObject({
        verdict: 'refuse',
        loops: [],
        unit: 'mm',
        findings: [{ code: 'entity-not-read', figures: { count: 2 } }],
      })
      expect(reading.findings[0]!.text).toContain(`2 ${type} on layer CUT`)
      expect(reading.findings[0]!.place).toMatch(/^line \d+$/)
      expect(reading.findings[0]!.cure).toMatch(/explode|polyline/)
    },
  )

  test('a tilted plane is refused by name; the extrusion of a line changes nothing', () => {
    const lines = sides.map((side) => [...side, [230, -1] as const])
    expect(read(dxf(lines)).verdict).toBe('accept')
    const tilted = read(
      dxf([
        polyline(four, true, [
          [210, 0.7],
          [220, 0],
          [230, 0.7],
        ]),
      ]),
    )
    expect(tilted).toMatchObject({ verdict: 'refuse', findings: [{ code: 'entity-not-read' }] })
    expect(tilted.findings[0]!.text).toContain('LWPOLYLINE in a tilted plane')
  })

  test('layer names with escaped letters are shown as they are', () => {
    const reading = read(
      dxf([entity('HATCH').map((pair) => (pair[0] === 8 ? ([8, 'Au\\U+00DFen'] as const) : pair))]),
    )
    expect(reading.findings[0]!.text).toContain('Außen')
  })
})
