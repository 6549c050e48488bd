import { describe, expect, test } from 'vitest'
import { type DisplayList, planDrawing, primitives, sectionDrawing, toDrawing } from '#lib/core/drawing/index'
import { sampleInput, samplePlan } from '../sheets/sample-plan'

const desk = { kind: 'screen', widthPx: 650, maxHeightPx: null } as const
const sheet = { kind: 'paper', widthMm: 100, heightMm: 124 } as const
const fromBack = sampleInput()
const fromFace = sampleInput({
  side: 'place-face',
  removedPlies: [1, 2, 3, 4],
  coverPlies: [],
  edge: 'steps',
})

function textsOf(list: DisplayList): readonly string[] {
  return primitives(list.items).flatMap((item) => (item.kind === 'text' ? [item.text] : []))
}

describe('the plan of a patch', () => {
  test('shows every ply by its laying number, on desk and on paper', () => {
    for (const input of [fromBack, fromFace]) {
      const plan = samplePlan(input)
      for (const medium of [desk, sheet, { ...desk, widthPx: 356 }]) {
        const list = planDrawing(plan, input, medium)
        for (const ply of plan.plies) expect(textsOf(list)).toContain(`${ply.layingOrder}`)
        expect(list.omittedLabels).toEqual([])
      }
    }
  })

  test('is mirrored from the back and not from the face, and says so', () => {
    const back = planDrawing(samplePlan(fromBack), fromBack, desk)
    const face = planDrawing(samplePlan(fromFace), fromFace, desk)
    const across = (list: DisplayList) =>
      toDrawing(list.placement!, [900, 670])[0] - toDrawing(list.placement!, [700, 670])[0]
    expect(across(back)).toBeCloseTo(-200, 6)
    expect(across(face)).toBeCloseTo(200, 6)
    expect(textsOf(back)).toContain('seen from the back, mirrored')
    expect(textsOf(face)).toContain('seen from the cavity')
  })

  test('the 0 degree arrow points along u: left from the back, right from the face', () => {
    const pointing = (list: DisplayList) => {
      const arrow = list.items.find((item) => item.kind === 'arrow')
      return arrow?.kind === 'arrow' ? Math.sign(arrow.to[0] - arrow.from[0]) : 0
    }
    expect(pointing(planDrawing(samplePlan(fromBack), fromBack, desk))).toBe(-1)
    expect(pointing(planDrawing(samplePlan(fromFace), fromFace, desk))).toBe(1)
  })

  test('draws larger plies below smaller ones, the cover dashed, the opening on top and wide', () => {
    const plan = samplePlan(fromBack)
    const list = planDrawing(plan, fromBack, desk)
    const rings = list.items.flatMap((item) =>
      item.kind === 'path' && (item.fill !== 'none' || item.style === 'cover') && item.closed ? [item] : [],
    )
    const widths = rings.map(({ lines }) => {
      const x = lines.flat().map((point) => point[0])
      return Math.max(...x) - Math.min(...x)
    })
    expect(widths).toEqual([...widths].sort((a, b) => b - a))
    expect(rings[0]!.style).toBe('cover')
    expect(rings[rings.length - 1]!.style).toBe('opening-cut')
    expect(rings).toHaveLength(plan.plies.length + 1)
  })

  test('nothing of the surroundings leaves the frame', () => {
    const list = planDrawing(samplePlan(fromBack), fromBack, sheet)
    for (const item of primitives(list.items)) {
      if (item.kind !== 'path') continue
      for (const [x, y] of item.lines.flat()) {
        expect(x).toBeGreaterThanOrEqual(-1e-6)
        expect(x).toBeLessThanOrEqual(list.widthMm + 1e-6)
        expect(y).toBeLessThanOrEqual(list.heightMm + 1e-6)
      }
    }
  })
})

describe('the section through the join', () => {
  /** Height of the tool face's line and of the back's, in drawing mm from the top. */
  function levels(list: DisplayList) {
    const wide = list.items.flatMap((item) =>
      item.kind === 'path' && item.style === 'outline' ? [item] : [],
    )
    const toolFace = wide.find((item) => item.role === 'ink')!.lines[0]![0]![1]
    const bars = list.items.flatMap((item) =>
      item.kind === 'path' && item.fill !== 'none' && !item.closed
        ? [item.lines[0]!.map((point) => point[1])]
        : [],
    )
    return { toolFace, bars: bars.map((ys) => (Math.min(...ys) + Math.max(...ys)) / 2) }
  }

  test('from the back the tool face lies below and the first ply on it', () => {
    const { toolFace, bars } = levels(sectionDrawing(samplePlan(fromBack), fromBack, desk))
    expect(bars.every((y) => y < toolFace)).toBe(true)
    expect(bars[0]).toBe(Math.max(...bars))
  })

  test('from the face the tool face lies on top and the surface ply comes last, next to it', () => {
    const plan = samplePlan(fromFace)
    const { toolFace, bars } = levels(sectionDrawing(plan, fromFace, desk))
    expect(bars[0]).toBe(Math.max(...bars))
    expect(bars[bars.length - 1]).toBe(Math.min(...bars))
    expect(bars[0]! - toolFace).toBeGreaterThan(0)
    expect(plan.plies[plan.plies.length - 1]!.replaces).toBe(1)
  })

  test("the parent's cut edge runs from the bottom of the recess to the surface that is worked from", () => {
    for (const [input, plies] of [
      [fromBack, 10],
      [fromFace, 4],
    ] as const) {
      const list = sectionDrawing(samplePlan(input), input, desk)
      const edge = list.items.flatMap((item) =>
        item.kind === 'path' && item.role === 'held' && item.style === 'outline' ? [item.lines[0]!] : [],
      )[0]!
      const measure = list.items.find((item) => item.kind === 'dimension' && item.from[0] === item.to[0])
      const [low, high] = measure?.kind === 'dimension' ? [measure.from[1], measure.to[1]] : [0, 0]
      const heights = edge.map((point) => point[1])
      // Never downwards on the way out; the whole parent from the back, four of its ten plies from the face.
      for (const [i, height] of heights.entries()) {
        if (i > 0) expect(height).toBeLessThanOrEqual(heights[i - 1]! + 1e-9)
      }
      expect(heights[heights.length - 1]).toBeCloseTo(high, 6)
      if (plies === 10) expect(heights[0]).toBeCloseTo(low, 6)
      else expect(heights[0]).toBeLessThan(low - (low - high) * 0.5)
    }
  })

  test('says how many times the thickness is drawn, and draws it so', () => {
    for (const [input, medium] of [
      [fromBack, desk],
      [fromFace, desk],
      [fromBack, { kind: 'paper', widthMm: 174, heightMm: 60 }],
    ] as const) {
      const list = sectionDrawing(samplePlan(input), input, medium)
      const said = /thickness drawn (five|ten|twenty) times/.exec(list.title)?.[1]
      const times = { five: 5, ten: 10, twenty: 20 }[said as 'five' | 'ten' | 'twenty']
      const thickness = list.items.find((item) => item.kind === 'dimension' && item.from[0] === item.to[0])
      const drawn = thickness?.kind === 'dimension' ? thickness.from[1] - thickness.to[1] : 0
      expect(drawn).toBeCloseTo(5.9 * times, 6)
      expect(list.heightMm / list.denominator).toBeLessThanOrEqual(medium.kind === 'paper' ? 60 : 1000)
    }
  })

  test('gives the length that the plan gives, to scale', () => {
    const plan = samplePlan(fromBack)
    const list = sectionDrawing(plan, fromBack, desk)
    const length = list.items.find((item) => item.kind === 'dimension' && item.from[1] === item.to[1])
    expect(length?.kind === 'dimension' && length.to[0] - length.from[0]).toBeCloseTo(
      plan.lengths.lengthMm,
      6,
    )
  })
})
