import fc from 'fast-check'
import { describe, expect, test } from 'vitest'
import {
  edgeOf,
  editOutline,
  nothingDrawn,
  type OutlineEdit,
  type OutlineHistory,
  startOutline,
} from '#lib/core/drawing/index'
import type { Point } from '#lib/core/geometry/index'

const coordinate = fc.integer({ min: -500, max: 500 })
const somePoint: fc.Arbitrary<Point> = fc.tuple(coordinate, coordinate)

/** An edit in shares, so that it fits an outline of any number of corners. */
const anyEdit = fc.record({
  kind: fc.constantFrom('add', 'insert', 'move', 'remove', 'take-back', 'close', 'open', 'clear', 'edge'),
  share: fc.double({ min: 0, max: 0.999, noNaN: true }),
  at: somePoint,
})

function fitted(
  history: OutlineHistory,
  { kind, share, at }: typeof anyEdit extends fc.Arbitrary<infer T> ? T : never,
): OutlineEdit {
  const count = history.now.points.length
  const index = Math.floor(share * count)
  if (count === 0) return { kind: 'add', at }
  switch (kind) {
    case 'insert':
      return { kind, edge: index, at }
    case 'move':
      return { kind, index, to: at }
    case 'remove':
      return { kind, index }
    case 'edge':
      return edgeOf(history.now, index) === null
        ? { kind: 'add', at }
        : { kind, edge: index, lengthMm: 1 + Math.abs(at[0]), directionDeg: at[1] }
    case 'take-back':
    case 'close':
    case 'open':
    case 'clear':
      return { kind }
    default:
      return { kind: 'add', at }
  }
}

const square: readonly Point[] = [
  [0, 0],
  [100, 0],
  [100, 100],
  [0, 100],
]

describe('drawing an outline', () => {
  test('taken back as often as anything changed, it is as at the beginning; done again, as at the end', () => {
    fc.assert(
      fc.property(fc.array(anyEdit, { maxLength: 60 }), (edits) => {
        let history = startOutline(square, true)
        const begun = history.now
        const seen = [history.now]
        for (const edit of edits) {
          const next = editOutline(history, fitted(history, edit))
          if (next !== history) seen.push(next.now)
          history = next
        }
        const end = history.now
        for (const was of [...seen].reverse()) {
          expect(history.now).toEqual(was)
          history = editOutline(history, { kind: 'undo' })
        }
        expect(history.now).toEqual(begun)
        expect(history.past).toEqual([])
        for (let i = 0; i < seen.length; i += 1) history = editOutline(history, { kind: 'redo' })
        expect(history.now).toEqual(end)
      }),
    )
  })

  test('is never closed with fewer than three corners', () => {
    fc.assert(
      fc.property(fc.array(anyEdit, { maxLength: 40 }), (edits) => {
        let history = nothingDrawn
        for (const edit of edits) {
          history = editOutline(history, fitted(history, edit))
          expect(history.now.closed && history.now.points.length < 3).toBe(false)
        }
      }),
    )
  })

  test('a drag of many moves is one step back', () => {
    let history = startOutline(square, true)
    for (let i = 1; i <= 20; i += 1) {
      history = editOutline(history, { kind: 'move', index: 2, to: [100 + i, 100], stroke: 7 })
    }
    expect(history.now.points[2]).toEqual([120, 100])
    history = editOutline(history, { kind: 'undo' })
    expect(history.now.points).toEqual(square)
  })

  test('two drags of the same corner are two steps', () => {
    let history = startOutline(square, true)
    history = editOutline(history, { kind: 'move', index: 2, to: [110, 100], stroke: 1 })
    history = editOutline(history, { kind: 'move', index: 2, to: [120, 100], stroke: 2 })
    history = editOutline(history, { kind: 'undo' })
    expect(history.now.points[2]).toEqual([110, 100])
  })

  test('a corner pulled out of an edge and dragged on is one step', () => {
    let history = startOutline(square, true)
    history = editOutline(history, { kind: 'insert', edge: 3, at: [0, 50], stroke: 4 })
    history = editOutline(history, { kind: 'move', index: 4, to: [-20, 50], stroke: 4 })
    expect(history.now.points).toHaveLength(5)
    expect(history.now.points[4]).toEqual([-20, 50])
    expect(editOutline(history, { kind: 'undo' }).now.points).toEqual(square)
  })

  test('an edit after an undo leaves nothing to do again', () => {
    let history = editOutline(startOutline(square, true), { kind: 'remove', index: 0 })
    history = editOutline(history, { kind: 'undo' })
    history = editOutline(history, { kind: 'move', index: 0, to: [5, 5] })
    expect(history.future).toEqual([])
    expect(editOutline(history, { kind: 'redo' }).now).toBe(history.now)
  })

  test('an edge set by length and direction moves its end and nothing else', () => {
    const history = editOutline(startOutline(square, true), {
      kind: 'edge',
      edge: 3,
      lengthMm: 50,
      directionDeg: -90,
    })
    const [first, ...others] = history.now.points
    expect(first![0]).toBeCloseTo(0, 9)
    expect(first![1]).toBeCloseTo(50, 9)
    expect(others).toEqual(square.slice(1))
    expect(edgeOf(history.now, 3)!.lengthMm).toBeCloseTo(50, 9)
    expect(edgeOf(history.now, 3)!.directionDeg).toBeCloseTo(-90, 9)
  })

  test('the last corner of an open outline begins no edge', () => {
    const { now } = startOutline(square, false)
    expect(edgeOf(now, 3)).toBeNull()
    expect(edgeOf(now, 2)!.directionDeg).toBeCloseTo(180, 9)
  })

  test('says what it can not do', () => {
    const history = startOutline(square, true)
    expect(() => editOutline(history, { kind: 'remove', index: 9 })).toThrow(/no corner 10 among 4/)
    expect(() => editOutline(history, { kind: 'add', at: [Number.NaN, 0] })).toThrow(/no point/)
    expect(() => editOutline(history, { kind: 'edge', edge: 0, lengthMm: 0, directionDeg: 0 })).toThrow(
      /length above 0 mm/,
    )
  })
})
