import { describe, expect, test } from 'vitest'
import {
  type DisplayList,
  faceDrawing,
  type Primitive,
  primitives,
  textWidthMm,
  toDrawing,
  toFace,
} from '#lib/core/drawing/index'
import { circle } from '#lib/core/geometry/index'
import { rectangle, sampleFace } from './sample-face'

const desk = { kind: 'screen', widthPx: 900, maxHeightPx: null } as const
const phone = { kind: 'screen', widthPx: 356, maxHeightPx: null } as const

function textsOf(list: DisplayList) {
  return primitives(list.items).filter((item): item is Primitive & { kind: 'text' } => item.kind === 'text')
}

function boxesOf(list: DisplayList) {
  return textsOf(list).map((item) => {
    const width = textWidthMm(item.text, item.sizeMm)
    const [x, y] = item.at
    if (item.turnDeg !== 0) {
      return {
        text: item.text,
        left: x - 0.7 * item.sizeMm,
        right: x,
        top: y - width / 2,
        bottom: y + width / 2,
      }
    }
    const left = x - (item.anchor === 'start' ? 0 : item.anchor === 'middle' ? width / 2 : width)
    return {
      text: item.text,
      left,
      right: left + width,
      top: y - 0.7 * item.sizeMm,
      bottom: y + 0.2 * item.sizeMm,
    }
  })
}

function overlaps(list: DisplayList): readonly string[] {
  const boxes = boxesOf(list)
  return boxes.flatMap((a, i) =>
    boxes
      .slice(i + 1)
      .filter((b) => a.left < b.right && b.left < a.right && a.top < b.bottom && b.top < a.bottom)
      .map((b) => `${a.text} / ${b.text}`),
  )
}

/** Eighty dowels in a space where their tags can't all stand beside them. */
const crowded = sampleFace({
  dowels: Array.from({ length: 80 }, (_, i) => ({
    tag: `D${`${i + 1}`.padStart(3, '0')}`,
    at: [900 + (i % 10) * 38, 500 + Math.floor(i / 10) * 42] as const,
    diameterMm: 8,
    isDatum: i % 9 === 0,
    setOn: null,
    oldPlace: i % 11 === 0 ? ([900 + (i % 10) * 38 - 30, 480 + Math.floor(i / 10) * 42] as const) : null,
  })),
})

describe('labels', () => {
  test.each([
    ['an ordinary face', sampleFace()],
    ['a crowded face', crowded],
  ])('do not overlap on %s, on desk and phone', (_, model) => {
    for (const medium of [desk, phone]) {
      for (const view of ['cavity', 'back'] as const)
        expect(overlaps(faceDrawing(model, medium, view))).toEqual([])
    }
  })

  test('are drawn or named as left out: none is lost in silence', () => {
    for (const medium of [desk, phone]) {
      const list = faceDrawing(crowded, medium)
      const said = [...textsOf(list).map((item) => item.text), ...list.omittedLabels]
      for (const dowel of crowded.dowels) {
        expect(said.filter((text) => text.split(' ')[0] === dowel.tag)).toHaveLength(1)
      }
    }
  })

  test('stay on the drawing', () => {
    for (const medium of [desk, phone]) {
      const list = faceDrawing(crowded, medium)
      for (const box of boxesOf(list)) {
        expect(box.left, box.text).toBeGreaterThanOrEqual(-1e-6)
        expect(box.right, box.text).toBeLessThanOrEqual(list.widthMm + 1e-6)
        expect(box.top, box.text).toBeGreaterThanOrEqual(-1e-6)
        expect(box.bottom, box.text).toBeLessThanOrEqual(list.heightMm + 1e-6)
      }
    }
  })

  test('an unhurried tag stands beside its mark without a leader', () => {
    const list = faceDrawing(sampleFace(), desk)
    const group = list.items.find((item) => item.kind === 'group' && item.subject.name === 'D09')
    expect(group?.kind === 'group' && group.items.map((item) => item.kind)).toEqual(['centre-mark', 'text'])
  })
})

describe('a view from the back', () => {
  const front = faceDrawing(sampleFace(), desk, 'cavity')
  const back = faceDrawing(sampleFace(), desk, 'back')
  const marks = (list: DisplayList) =>
    list.items.flatMap((item) =>
      item.kind === 'group'
        ? item.items.flatMap((shape) => (shape.kind === 'centre-mark' ? [shape.at] : []))
        : [],
    )

  test('mirrors the geometry left to right and leaves heights alone', () => {
    const offset = marks(front)[0]![0] + marks(back)[0]![0]
    for (const [i, [x, y]] of marks(front).entries()) {
      expect(x + marks(back)[i]![0]).toBeCloseTo(offset, 6)
      expect(y).toBeCloseTo(marks(back)[i]![1], 6)
    }
  })

  test('does not mirror words, and says what it is', () => {
    const words = textsOf(back).map((item) => item.text)
    expect(words).toContain('Patch 7')
    expect(words).toContain('seen from the back, mirrored')
    expect(back.title).toContain('seen from the back')
    expect(textsOf(front).map((item) => item.text)).toContain('seen from the cavity')
  })

  test('columns are numbered from the right', () => {
    const numbers = textsOf(back).filter((item) => /^\d+$/.test(item.text))
    const byPlace = [...numbers].sort((a, b) => a.at[0] - b.at[0]).map((item) => Number(item.text))
    expect(byPlace).toEqual([...byPlace].sort((a, b) => b - a))
  })

  test('a pointer finds its way back to the face', () => {
    for (const list of [front, back]) {
      for (const point of [
        [480, 820],
        [-3, 77.5],
      ] as const) {
        const there = toFace(list.placement!, toDrawing(list.placement!, point))
        expect(there[0]).toBeCloseTo(point[0], 9)
        expect(there[1]).toBeCloseTo(point[1], 9)
      }
    }
  })
})

describe('the location grid', () => {
  const face = (cellMm: number, size: number) =>
    sampleFace({
      boundary: rectangle(0, 0, size, size),
      grid: { originMm: [0, size], cellMm },
      lines: [],
      keepOuts: [],
      dowels: [],
      patches: [],
      openings: [],
    })

  test('letters run down from the top and leave out I and O', () => {
    const letters = textsOf(faceDrawing(face(50, 800), desk))
      .filter((item) => /^[A-Z]$/.test(item.text))
      .sort((a, b) => a.at[1] - b.at[1])
      .map((item) => item.text)
    expect(letters.join('')).toBe('ABCDEFGHJKLMNPQR')
  })

  test('stays as it is when the boundary changes', () => {
    const place = (list: DisplayList, name: string) => {
      const label = textsOf(list).find((item) => item.text === name)!
      return toFace(list.placement!, label.at)[0]
    }
    const small = faceDrawing(face(50, 400), desk)
    const grown = faceDrawing({ ...face(50, 400), boundary: rectangle(-120, 0, 520, 400) }, desk)
    expect(place(grown, '4')).toBeCloseTo(place(small, '4'), 6)
    expect(place(small, '4')).toBeCloseTo(175, 6)
  })

  test('is thinned out where rulings would stand closer than 6 px, and its labels stay apart', () => {
    const hairs = (list: DisplayList) => {
      const item = list.items.find((each) => each.kind === 'path' && each.style === 'hair')
      return item?.kind === 'path' ? item.lines.filter((line) => line[0]![0] === line[1]![0]) : []
    }
    for (const [medium, widthPx] of [
      [desk, 900],
      [phone, 356],
    ] as const) {
      const list = faceDrawing(face(50, 3000), medium)
      const x = hairs(list).map((line) => line[0]![0])
      const px = widthPx / list.widthMm
      const gaps = x.slice(1).map((each, i) => (each - x[i]!) * px)
      expect(Math.min(...gaps)).toBeGreaterThanOrEqual(6 - 1e-6)
    }
    expect(hairs(faceDrawing(face(50, 3000), desk)).length).toBeGreaterThan(50)
    expect(hairs(faceDrawing(face(5, 3000), phone)).length).toBeLessThan(60)
    expect(overlaps(faceDrawing(face(5, 3000), phone))).toEqual([])
  })
})

describe('the drawing', () => {
  test('is to scale: a millimetre across is a millimetre down, and the scale bar is as long as it says', () => {
    const list = faceDrawing(
      sampleFace({
        openings: [{ name: 'round', regions: [{ outer: circle([1500, 700], 100), holes: [] }] }],
      }),
      desk,
    )
    const bar = list.items.find((item) => item.kind === 'dimension')
    expect(bar?.kind === 'dimension' && `${bar.to[0] - bar.from[0]} mm`).toBe(
      bar?.kind === 'dimension' ? bar.label : '',
    )
    const opening = list.items.find((item) => item.kind === 'group' && item.subject.kind === 'opening')
    const loop =
      opening?.kind === 'group' && opening.items[0]?.kind === 'path' ? opening.items[0].lines[0]! : []
    const x = loop.map((point) => point[0])
    const y = loop.map((point) => point[1])
    expect(Math.max(...x) - Math.min(...x)).toBeCloseTo(200, 6)
    expect(Math.max(...y) - Math.min(...y)).toBeCloseTo(200, 0)
  })

  test('ordinary text reads at 12 px or more in the width that it was made for', () => {
    for (const [medium, widthPx] of [
      [desk, 900],
      [phone, 356],
    ] as const) {
      const list = faceDrawing(sampleFace(), medium)
      for (const item of textsOf(list))
        expect((item.sizeMm * widthPx) / list.widthMm).toBeGreaterThanOrEqual(12)
    }
  })

  test('paper takes a standard scale and says it', () => {
    const list = faceDrawing(sampleFace(), { kind: 'paper', widthMm: 180, heightMm: 120 })
    expect(list.denominator).toBe(20)
    expect(list.widthMm / list.denominator).toBeLessThanOrEqual(180)
    expect(textsOf(list).map((item) => item.text)).toContain('seen from the cavity, scale 1 : 20')
  })

  test('a moved point shows the old place, an arrow and how far', () => {
    const list = faceDrawing(sampleFace(), desk)
    const group = list.items.find((item) => item.kind === 'group' && item.subject.name === 'D02')
    const kinds = group?.kind === 'group' ? group.items.map((item) => item.kind) : []
    expect(kinds).toContain('arrow')
    expect(kinds).toContain('circle')
    expect(textsOf(list).map((item) => item.text)).toContain('D02 moves 94.3')
  })

  test('a face without extent is refused with its size', () => {
    const point = sampleFace({
      boundary: [[5, 5]],
      lines: [],
      keepOuts: [],
      dowels: [],
      patches: [],
      openings: [],
    })
    expect(() => faceDrawing(point, desk)).toThrow(/needs an extent, got 0 x 0 mm/)
  })

  test('leaves its model as it was', () => {
    const model = sampleFace()
    const before = JSON.stringify(model)
    faceDrawing(model, desk, 'back')
    expect(JSON.stringify(model)).toBe(before)
  })
})
