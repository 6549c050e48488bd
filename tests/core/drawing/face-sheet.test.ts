import fc from 'fast-check'
import { describe, expect, test } from 'vitest'
import { edgeNames, faceDrawing, faceSheet, relaidSheet, sizesAt, toDrawing } from '#lib/core/drawing/index'
import { type Block, packBlocks } from '#lib/core/drawing/packing'
import { rectangle, sampleFace } from './sample-face'

const desk = { kind: 'screen', widthPx: 880, maxHeightPx: 560 } as const
const paper = { kind: 'paper', widthMm: 180, heightMm: 200 } as const

function wall(areaName: string, width: number, height: number) {
  return sampleFace({
    areaName,
    boundary: rectangle(0, 0, width, height),
    grid: { originMm: [0, height], cellMm: 50 },
    lines: [],
    keepOuts: [],
    patches: [],
    openings: [],
    dowels: [
      { tag: 'D30', at: [width / 3, height / 3], diameterMm: 6, isDatum: false, oldPlace: null, setOn: null },
    ],
  })
}

const faces = [sampleFace(), wall('front wall', 800, 250), wall('rear wall', 780, 250), wall('lip', 1400, 90)]

describe('several faces on one sheet', () => {
  test.each([
    ['on a desk', desk],
    ['on a phone', { kind: 'screen', widthPx: 356, maxHeightPx: null } as const],
    ['on paper', paper],
  ])('%s they lie apart, inside the sheet, at one scale', (_where, medium) => {
    const { list, faces: placed } = faceSheet(faces, medium)
    expect(placed.map((face) => face.areaName)).toEqual(['floor', 'front wall', 'rear wall', 'lip'])
    for (const [i, { frame }] of placed.entries()) {
      expect(frame.left).toBeGreaterThanOrEqual(0)
      expect(frame.right).toBeLessThanOrEqual(list.widthMm)
      expect(frame.bottom).toBeLessThanOrEqual(list.heightMm)
      for (const { frame: other } of placed.slice(i + 1)) {
        const apart =
          frame.right <= other.left ||
          other.right <= frame.left ||
          frame.bottom <= other.top ||
          other.bottom <= frame.top
        expect(apart).toBe(true)
      }
    }
    // A drawing mm is a mm of the face: the walls are as far across on the sheet as they are.
    const lip = placed[3]!
    expect(toDrawing(lip.placement, [1400, 0])[0] - toDrawing(lip.placement, [0, 0])[0]).toBeCloseTo(1400, 6)
    const most = medium.kind === 'paper' ? medium.widthMm : medium.widthPx / (96 / 25.4)
    expect(list.widthMm / list.denominator).toBeLessThanOrEqual(most * (1 + 1e-6))
  })

  test('a single one is the drawing of that face', () => {
    expect(faceSheet([sampleFace()], desk).list).toEqual(faceDrawing(sampleFace(), desk))
  })

  test('from the back each is mirrored in its own place, and the title says so', () => {
    const { list, faces: placed } = faceSheet(faces, desk, 'back')
    expect(list.title).toContain('seen from the back, mirrored')
    const { placement, frame } = placed[1]!
    const [left] = toDrawing(placement, [800, 0])
    const [right] = toDrawing(placement, [0, 0])
    expect(left).toBeLessThan(right)
    expect(left).toBeGreaterThan(frame.left)
    expect(right).toBeLessThan(frame.right)
  })

  test.each(['cavity', 'back'] as const)(
    'laid out again for a zoom, seen from the %s, every dowel stays in its place',
    (view) => {
      const sheet = faceSheet(faces, desk, view)
      const marks = (items: typeof sheet.list.items) =>
        items.flatMap((item) =>
          item.kind === 'group'
            ? item.items.flatMap((shape) => (shape.kind === 'centre-mark' ? [shape.at] : []))
            : [],
        )
      const near = relaidSheet(sheet, faces, 5, view)
      expect(near.denominator).toBeCloseTo(sheet.list.denominator / 5, 9)
      const was = marks(sheet.list.items)
      for (const [i, at] of marks(near.items).entries()) {
        expect(at[0]).toBeCloseTo(was[i]![0], 6)
        expect(at[1]).toBeCloseTo(was[i]![1], 6)
      }
    },
  )

  test('no face, no sheet', () => {
    expect(() => faceSheet([], desk)).toThrow(/needs a face/)
    expect(() => faceSheet(faces, { kind: 'paper', widthMm: 18, heightMm: 20 })).toThrow(/no (room|scale)/)
  })
})

describe('the names along a window', () => {
  const sheet = faceSheet([wall('front wall', 800, 250)], desk)
  const [face] = sheet.faces

  test('stand for the cells that show, when the frame does not show', () => {
    const [left, top] = toDrawing(face!.placement, [310, 190])
    const window = { left, top, right: left + 150, bottom: top + 100 }
    const names = edgeNames(face!, window, sizesAt(0.6, 'screen')).map((name) => name.text)
    // u from 310 to 460 and v from 190 down to 90, in cells of 50 from (0, 250).
    expect(names).toEqual(['7', '8', '9', '10', 'B', 'C', 'D'])
  })

  test('are left out where the frame has its own', () => {
    const whole = { left: 0, top: 0, right: sheet.list.widthMm, bottom: sheet.list.heightMm }
    expect(edgeNames(face!, whole, sizesAt(1, 'screen'))).toEqual([])
  })
})

test('packed blocks lie apart and inside their strip', () => {
  const block: fc.Arbitrary<Block> = fc.record({
    width: fc.double({ min: 1, max: 100, noNaN: true }),
    height: fc.double({ min: 1, max: 100, noNaN: true }),
  })
  fc.assert(
    fc.property(fc.array(block, { minLength: 1, maxLength: 9 }), (blocks) => {
      const packed = packBlocks(blocks, 120)!
      expect(packed.places).toHaveLength(blocks.length)
      for (const [i, { left, top }] of packed.places.entries()) {
        const { width, height } = blocks[i]!
        expect(left + width).toBeLessThanOrEqual(120 + 1e-6)
        expect(top + height).toBeLessThanOrEqual(packed.height + 1e-9)
        for (let j = i + 1; j < blocks.length; j += 1) {
          const other = { ...packed.places[j]!, ...blocks[j]! }
          const apart =
            left + width <= other.left + 1e-6 ||
            other.left + other.width <= left + 1e-6 ||
            top + height <= other.top + 1e-6 ||
            other.top + other.height <= top + 1e-6
          expect(apart).toBe(true)
        }
      }
    }),
  )
  expect(packBlocks([{ width: 130, height: 1 }], 120)).toBeNull()
})
