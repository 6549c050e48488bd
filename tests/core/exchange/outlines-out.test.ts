import { describe, expect, test } from 'vitest'
import { bounds, circle, distanceToLoop, type Loop, type Region, regionsArea } from '#lib/core/geometry/index'
import type { Side } from '#lib/core/repair/types'
import { type OutlineReading, readLoops } from '#lib/exchange/outline/index'
import { type OutlineView, writeOutlinesDxf, writeOutlinesSvg } from '#lib/exchange/outline-out/index'
import type { PatchSheet } from '#lib/exchange/sheets/index'
import { sampleInput, samplePlan } from '../sheets/sample-plan'
import { sampleSheet } from '../sheets/sample-sheet'

/** The sample worked from a side; `holed` gives every ply a hole and a second piece. */
function sheetOf(side: Side, holed = false): PatchSheet {
  const input = sampleInput(
    side === 'place-face' ? { side, removedPlies: [1, 2, 3], coverPlies: [] } : { side },
  )
  const flag: Loop = [
    [600, 500],
    [620, 500],
    [620, 600],
    [720.1234, 600],
    [720.1234, 650.5],
    [600, 650.5],
  ]
  const outline: readonly Region[] = [
    { outer: circle([900, 700], 120), holes: [circle([900, 700], 40), circle([960, 760], 12.3)] },
    { outer: flag, holes: [] },
  ]
  return sampleSheet({ input, patch: samplePlan(input, holed ? outline : undefined) })
}

/** The groups of a DXF as pairs. */
function pairsOf(text: string): readonly (readonly [string, string])[] {
  const lines = text.split('\n')
  return Array.from({ length: Math.floor(lines.length / 2) }, (_, i) => [
    lines[2 * i]!.trim(),
    lines[2 * i + 1]!,
  ])
}

/** The same DXF with nothing drawn but what lies on layers that begin so. */
function onlyLayer(text: string, code: string): string {
  const entities: (readonly [string, string])[][] = [[]]
  for (const pair of pairsOf(text)) {
    if (pair[0] === '0') entities.push([])
    entities.at(-1)!.push(pair)
  }
  const kept = entities.filter((groups) => {
    const layer = groups.find(([group]) => group === '8')?.[1]
    const isDrawn = ['LWPOLYLINE', 'TEXT', 'LINE'].includes(groups[0]?.[1] ?? '')
    return !isDrawn || layer === code || layer?.startsWith(`${code} `)
  })
  return kept
    .flat()
    .map(([group, value]) => `${group}\n${value}\n`)
    .join('')
}

/** The same SVG with that one group alone. */
function onlyGroup(text: string, id: string): string {
  const head = text.slice(0, text.indexOf('<g '))
  const start = text.indexOf(`<g id="${id}"`)
  return `${head}${text.slice(start, text.indexOf('</g>', start))}</g></svg>`
}

const formats: readonly (readonly [
  string,
  (sheet: PatchSheet, view: OutlineView, code: string) => OutlineReading,
])[] = [
  [
    'DXF',
    (sheet, view, code) =>
      readLoops({ name: 'a.dxf', text: onlyLayer(writeOutlinesDxf(sheet, view), code), unit: null }),
  ],
  [
    'SVG',
    (sheet, view, code) =>
      readLoops({ name: 'a.svg', text: onlyGroup(writeOutlinesSvg(sheet, view), code), unit: null }),
  ],
]

/** Where an SVG's reading lies against the view: its page begins at its own corner. */
function shiftOf({ loops }: OutlineReading, right: readonly Region[]): readonly [number, number] {
  const [u, v] = [0, 1].map((axis) => Math.min(...loops.map(({ boundsMm }) => boundsMm[axis]!)))
  const [left, bottom] = bounds(right)
  return [left - u!, bottom - v!]
}

function expectSame(reading: OutlineReading, right: readonly Region[], isShifted: boolean): void {
  const [du, dv] = isShifted ? shiftOf(reading, right) : [0, 0]
  const loops = right.flatMap(({ outer, holes }) => [outer, ...holes])
  expect(reading.unit).toBe('mm')
  expect(reading.loops).toHaveLength(loops.length)
  const read = reading.loops.reduce(
    (sum, { role, areaMm2 }) => sum + (role === 'outer' ? areaMm2 : -areaMm2),
    0,
  )
  expect(Math.abs(read - regionsArea(right))).toBeLessThan(0.001 * loops.flat().length)
  for (const { points } of reading.loops) {
    const [u, v] = points[0]!
    const match = loops.find((loop) => distanceToLoop([u + du, v + dv], loop) < 0.001)!
    expect(match).toBeDefined()
    expect(points).toHaveLength(match.length)
    const far = (from: Loop, to: Loop, shift: readonly [number, number]) =>
      Math.max(
        ...from
          .filter((_, i) => i % 7 === 0)
          .map(([x, y]) => distanceToLoop([x + shift[0], y + shift[1]], to)),
      )
    expect(far(points, match, [du, dv])).toBeLessThan(0.001)
    expect(far(match, points, [-du, -dv])).toBeLessThan(0.001)
  }
}

const mirrored = (regions: readonly Region[]): readonly Region[] =>
  regions.map(({ outer, holes }) => ({
    outer: outer.map(([u, v]) => [-u, v] as const),
    holes: holes.map((hole) => hole.map(([u, v]) => [-u, v] as const)),
  }))

describe.each(formats)('%s, read back by our own reader', { timeout: 30_000 }, (format, readLayer) => {
  test.each([
    ['from the back, as laid: mirrored', 'pattern-back', 'laid', true],
    ['from the back, seen from the cavity', 'pattern-back', 'cavity', false],
    ['from the face, as laid', 'place-face', 'laid', false],
  ] as const)('%s: every outline is the one of the plan', (_, side, view, isMirrored) => {
    const sheet = sheetOf(side)
    const { patch } = sheet
    const asSeen = (regions: readonly Region[]) => (isMirrored ? mirrored(regions) : regions)
    const layers: readonly (readonly [string, readonly Region[]])[] = [
      ['OPENING', [patch.opening]],
      ...patch.plies.map((ply) => [`PLY-${`${ply.layingOrder}`.padStart(2, '0')}`, ply.outline] as const),
      ...(patch.footprint.length > 0 ? [['FOOTPRINT', patch.footprint] as const] : []),
    ]
    for (const [code, right] of layers) {
      const reading = readLayer(sheet, view, code)
      expect(reading.verdict).toBe('accept')
      expectSame(reading, asSeen(right), format === 'SVG')
    }
  })

  test('pieces and holes come back as they were', () => {
    const sheet = sheetOf('pattern-back', true)
    const reading = readLayer(sheet, 'laid', 'PLY-03')
    expect(reading.loops.map(({ role }) => role).sort()).toEqual(['hole', 'hole', 'outer', 'outer'])
    expectSame(reading, mirrored(sheet.patch.plies[2]!.outline), format === 'SVG')
  })

  test('layers lie in one frame', () => {
    const sheet = sheetOf('pattern-back')
    const [first, last] = ['PLY-01', 'PLY-11'].map(
      (code) => readLayer(sheet, 'laid', code).loops[0]!.boundsMm,
    )
    const middle = (box: readonly number[]) => [(box[0]! + box[2]!) / 2, (box[1]! + box[3]!) / 2]
    expect(middle(first!)[0]).toBeCloseTo(middle(last!)[0]!, 3)
    expect(middle(first!)[1]).toBeCloseTo(middle(last!)[1]!, 3)
  })
})

describe('what the files say', { timeout: 30_000 }, () => {
  const texts = (side: Side, view: OutlineView) => {
    const sheet = sheetOf(side)
    const dxf = pairsOf(writeOutlinesDxf(sheet, view))
    const words = dxf.filter(([group]) => group === '1').map(([, value]) => value)
    return { dxf: words.join('\n'), svg: writeOutlinesSvg(sheet, view), layers: dxf }
  }

  test.each([
    ['pattern-back', 'laid', 'As laid, from the back: mirrored. This side up. x = -u, y = v'],
    [
      'pattern-back',
      'cavity',
      'Seen from the cavity, not as laid: plies are laid from the back. x = u, y = v',
    ],
    ['place-face', 'laid', 'As laid, seen from the cavity. This side up. x = u, y = v'],
    ['place-face', 'cavity', 'Seen from the cavity, as laid. x = u, y = v'],
  ] as const)('%s, %s: the view by its name', (side, view, says) => {
    const { dxf, svg } = texts(side, view)
    expect(dxf).toContain(says)
    expect(svg).toContain(`${says.slice(0, says.indexOf(', y'))} `)
  })

  test('a layer for each ply with material and the angle of the view', () => {
    const { layers, svg, dxf } = texts('pattern-back', 'laid')
    const named = layers.filter(([group]) => group === '8').map(([, value]) => value)
    expect(new Set(named).size).toBe(1 + 1 + 11 + 1 + 1)
    expect(named).toContain('PLY-03 bulk 650 twill -45deg')
    expect(named).toContain('PLY-11 cover bulk 650 twill 0deg')
    expect(dxf).toContain('PLY-03: Ply 3 of 11, replaces ply 3 of the mould: bulk 650 twill. Fibres at')
    expect(svg).toContain('<g id="PLY-03"')
    expect(svg).toContain('Fibres at −45° in this view (45° on the mould)')
    expect(texts('pattern-back', 'cavity').layers.map(([, value]) => value)).toContain(
      'PLY-03 bulk 650 twill 45deg',
    )
  })

  test('a fibre arrow for each ply runs at the angle of the view', () => {
    const pairs = pairsOf(writeOutlinesDxf(sheetOf('pattern-back'), 'laid'))
    const starts = pairs.flatMap((pair, i) => (pair[0] === '0' && pair[1] === 'LINE' ? [i] : []))
    const lines = starts.map((start) => {
      const value = (group: string) => Number(pairs.slice(start).find(([code]) => code === group)![1])
      return [value('11') - value('10'), value('21') - value('20')] as const
    })
    const shafts = lines.filter(([dx, dy]) => Math.abs(Math.hypot(dx, dy) - 7) < 0.01)
    expect(shafts).toHaveLength(11)
    expect(Math.atan2(shafts[2]![1], shafts[2]![0]) * (180 / Math.PI)).toBeCloseTo(135, 1)
  })

  test('cut layers hold closed polylines and nothing else', () => {
    const pairs = pairsOf(writeOutlinesDxf(sheetOf('pattern-back', true), 'laid'))
    pairs.forEach(([group, value], i) => {
      if (group !== '0' || !['LWPOLYLINE', 'TEXT', 'LINE'].includes(value)) return
      const own = pairs.slice(i + 1, i + 9)
      const layer = own.find(([code]) => code === '8')![1]
      expect(layer === 'NOTES').toBe(value !== 'LWPOLYLINE')
      if (value === 'LWPOLYLINE') expect(own.find(([code]) => code === '70')![1]).toBe('1')
    })
    expect(pairs).toContainEqual(['9', '$INSUNITS'])
    expect(pairs[pairs.findIndex(([, value]) => value === '$INSUNITS') + 1]).toEqual(['70', '4'])
    const handles = pairs.filter(([group]) => group === '5').map(([, value]) => value)
    expect(new Set(handles).size).toBe(handles.length)
  })

  test('names that would break a file are made harmless', () => {
    const nasty = `Ö"<script>&]]>\n  0\nEOF\n%%d\\U+0041 \u0007${'x'.repeat(3000)}`
    const base = sheetOf('pattern-back')
    const material = { ...base.patch.plies[0]!.material, name: nasty }
    const sheet: PatchSheet = {
      ...base,
      mould: { code: nasty, name: nasty },
      plan: { ...base.plan, name: nasty },
      patch: { ...base.patch, plies: base.patch.plies.map((ply) => ({ ...ply, material })) },
    }
    const svg = writeOutlinesSvg(sheet, 'laid')
    expect(svg).not.toContain('<script>')
    expect(readLoops({ name: 'a.svg', text: onlyGroup(svg, 'PLY-01'), unit: null }).verdict).toBe('accept')
    expect(
      readLoops({ name: 'a.svg', text: svg, unit: null }).findings.map(({ code }) => code),
    ).not.toContain('svg-damaged')
    const dxf = writeOutlinesDxf(sheet, 'laid')
    expect(dxf.split('\n').filter((line) => line.trim() === 'EOF')).toHaveLength(1)
    expect(dxf).toMatch(/^[\x20-\x7e\n]*$/)
    expect(readLoops({ name: 'a.dxf', text: onlyLayer(dxf, 'PLY-01'), unit: null }).verdict).toBe('accept')
  })

  test('a plan without plies has none', () => {
    const sheet = sheetOf('pattern-back')
    const bare = { ...sheet, patch: { ...sheet.patch, plies: [] } }
    expect(() => writeOutlinesDxf(bare, 'laid')).toThrow(RangeError)
    expect(() => writeOutlinesSvg(bare, 'laid')).toThrow(RangeError)
  })
})

test("an SVG says truly how its numbers follow from the face's", () => {
  const sheet = sheetOf('pattern-back')
  const svg = writeOutlinesSvg(sheet, 'laid')
  const [, across, down] = /x = -u \+ ([\d.]+), y = -v \+ ([\d.]+), y down/.exec(svg)!
  const data = /<g id="OPENING".*? d="M([\d.]+) ([\d.]+)L/.exec(svg)!
  const at = [Number(across) - Number(data[1]), Number(down) - Number(data[2])] as const
  expect(distanceToLoop(at, sheet.patch.opening.outer)).toBeLessThan(0.001)
})
