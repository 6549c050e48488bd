import fc from 'fast-check'
import { describe, expect, test } from 'vitest'
import {
  changeView,
  mostZoom,
  type SheetView,
  type ViewAct,
  wholeSheet,
  windowOf,
} from '#lib/core/drawing/index'

const sheet = { widthMm: 1200, heightMm: 500 }
const coordinate = fc.double({ min: -3000, max: 3000, noNaN: true })
const somewhere = fc.tuple(coordinate, coordinate)
const act: fc.Arbitrary<ViewAct> = fc.oneof(
  fc.record({
    kind: fc.constant('zoom' as const),
    by: fc.double({ min: 0.01, max: 100, noNaN: true }),
    about: somewhere,
  }),
  fc.record({ kind: fc.constant('pan' as const), byMm: somewhere }),
  fc.constant({ kind: 'whole' as const }),
  fc.record({ kind: fc.constant('follow' as const), point: somewhere }),
)
const reached = fc.array(act, { maxLength: 12 }).map((acts) => acts.reduce(viewed, wholeSheet))

function viewed(view: SheetView, one: ViewAct): SheetView {
  return changeView(view, one, sheet)
}

describe('the window over a sheet', () => {
  test('never leaves it, whatever is done', () => {
    fc.assert(
      fc.property(reached, (view) => {
        const { left, top, right, bottom } = windowOf(view, sheet)
        expect(left).toBeGreaterThanOrEqual(0)
        expect(top).toBeGreaterThanOrEqual(0)
        expect(right).toBeLessThanOrEqual(sheet.widthMm + 1e-6)
        expect(bottom).toBeLessThanOrEqual(sheet.heightMm + 1e-6)
        expect(view.zoom).toBeGreaterThanOrEqual(1)
        expect(view.zoom).toBeLessThanOrEqual(mostZoom(sheet))
      }),
    )
  })

  test('keeps the point that it is zoomed about where it was, off the edges', () => {
    const view = viewed(wholeSheet, { kind: 'zoom', by: 4, about: [600, 250] })
    expect(view).toEqual({ zoom: 4, left: 450, top: 187.5 })
    const share = (one: SheetView) => {
      const { left, right } = windowOf(one, sheet)
      return (500 - left) / (right - left)
    }
    const closer = viewed(view, { kind: 'zoom', by: 1.7, about: [500, 240] })
    expect(share(closer)).toBeCloseTo(share(view), 9)
  })

  test('comes back to the whole sheet when it is zoomed out as far as in', () => {
    fc.assert(
      fc.property(reached, somewhere, (view, about) => {
        const out = viewed(view, { kind: 'zoom', by: 1 / view.zoom, about })
        expect(out.zoom).toBeCloseTo(1, 9)
        expect(Math.abs(out.left) + Math.abs(out.top)).toBeLessThan(1e-6)
        expect(viewed(view, { kind: 'whole' })).toEqual(wholeSheet)
      }),
    )
  })

  test('shows a box with air round it, and no smaller window than the eye can use', () => {
    const box = { left: 300, top: 100, right: 420, bottom: 150 }
    const window = windowOf(viewed(wholeSheet, { kind: 'show', box }), sheet)
    expect(window.left).toBeLessThan(box.left)
    expect(window.right).toBeGreaterThan(box.right)
    expect(window.top).toBeLessThan(box.top)
    expect(window.bottom).toBeGreaterThan(box.bottom)
    expect(window.right - window.left).toBeCloseTo(144, 6)
    const dot = { left: 300, top: 100, right: 300, bottom: 100 }
    expect(viewed(wholeSheet, { kind: 'show', box: dot }).zoom).toBeLessThanOrEqual(mostZoom(sheet))
  })

  test('follows a point into the window, and stays still while it lies well inside', () => {
    fc.assert(
      fc.property(
        reached,
        fc.tuple(fc.double({ min: 0, max: 1200, noNaN: true }), fc.double({ min: 0, max: 500, noNaN: true })),
        (view, point) => {
          const moved = viewed(view, { kind: 'follow', point })
          const { left, top, right, bottom } = windowOf(moved, sheet)
          expect(point[0]).toBeGreaterThanOrEqual(left - 1e-9)
          expect(point[0]).toBeLessThanOrEqual(right + 1e-9)
          expect(point[1]).toBeGreaterThanOrEqual(top - 1e-9)
          expect(point[1]).toBeLessThanOrEqual(bottom + 1e-9)
        },
      ),
    )
    const near = viewed(wholeSheet, { kind: 'zoom', by: 4, about: [600, 250] })
    expect(viewed(near, { kind: 'follow', point: [610, 260] })).toEqual(near)
  })

  test('says what it can not be', () => {
    expect(() => viewed(wholeSheet, { kind: 'zoom', by: 0, about: [0, 0] })).toThrow(
      /zoom must be above 0, got 0/,
    )
    expect(() => viewed(wholeSheet, { kind: 'pan', byMm: [Number.NaN, 0] })).toThrow(/can't stand at/)
    expect(() => changeView(wholeSheet, { kind: 'whole' }, { widthMm: 0, heightMm: 5 })).toThrow(/extent/)
  })
})
