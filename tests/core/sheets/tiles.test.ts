import { describe, expect, test } from 'vitest'
import { circle } from '#lib/core/geometry/index'
import type { Point } from '#lib/core/geometry/types'
import { plyTemplates } from '#lib/exchange/sheets/index'
import { overlapMm, registerMarks, tiledPages, wholePages } from '#lib/exchange/sheets/template-layout'
import { type PdfPage, readPdf } from '#tests/support/pdf'
import { barsOf, extent } from './bars'
import { sampleInput, samplePlan } from './sample-plan'
import { sampleSheet } from './sample-sheet'

const mm = 72 / 25.4
const radiusMm = 240
const outer = circle([760, 670], radiusMm)

const printed = printTiles()

async function printTiles() {
  const plan = samplePlan(sampleInput({ side: 'place-face', removedPlies: [1, 2, 3] }), [
    { outer, holes: [] },
  ])
  const sheet = sampleSheet({
    input: sampleInput({ side: 'place-face', removedPlies: [1, 2, 3] }),
    patch: { ...plan, plies: plan.plies.slice(0, 1) },
  })
  return readPdf(await plyTemplates(sheet)).pages
}

/** Where a page's window lies in the picture, from the words "tile B2" on it and the layout rules. */
function originOf(page: PdfPage): readonly [number, number] {
  const name = page.texts.map(({ text }) => /tile ([A-Z])(\d+)/.exec(text)).find((match) => match !== null)
  const [row, column] = [name![1]!.charCodeAt(0) - 65, Number(name![2]) - 1]
  const layout = tiledPages('a4', 2 * radiusMm, 2 * radiusMm, () => true)
  return layout.find((each) => each.tile?.row === row && each.tile.column === column)!.origin
}

/** Page points (from the lower left) to picture mm (from the outline's upper left corner, y down). */
function toPicture(page: PdfPage, [x, y]: readonly [number, number]): Point {
  const [left, top] = originOf(page)
  return [x / mm - 10 + left, (page.heightPt - y) / mm - 10 + top]
}

describe('a template larger than the paper', { timeout: 20_000 }, () => {
  test('every page has both bars, its number of the total, and the key plan of its tile', async () => {
    const pages = await printed
    expect(pages.length).toBeGreaterThan(3)
    for (const [i, page] of pages.entries()) {
      expect(barsOf(page, 'across')).toHaveLength(1)
      expect(barsOf(page, 'upright')).toHaveLength(1)
      expect(page.texts.some(({ text }) => text.startsWith(`Page ${i + 1} of ${pages.length}, tile`))).toBe(
        true,
      )
    }
  })

  test('the pieces of the outline on all tiles together cover the whole outline', async () => {
    const pages = await printed
    const pieces = pages.flatMap((page) =>
      page.paths
        .filter((path) => path.stroked && !path.closed && path.points.length > 2)
        .map((path) => path.points.map((point) => toPicture(page, point))),
    )
    const centre: Point = [radiusMm, radiusMm]
    const seen = new Set<number>()
    for (const piece of pieces) {
      for (const [i, point] of piece.entries()) {
        const off = Math.hypot(point[0] - centre[0], point[1] - centre[1]) - radiusMm
        if (Math.abs(off) > 0.2) continue
        const degrees = (Math.atan2(point[1] - centre[1], point[0] - centre[0]) * 180) / Math.PI
        const next = piece[i + 1]
        if (!next) continue
        const to = (Math.atan2(next[1] - centre[1], next[0] - centre[0]) * 180) / Math.PI
        const [low, high] = [Math.min(degrees, to), Math.max(degrees, to)]
        if (high - low > 5) continue
        for (let k = Math.ceil(low * 10); k <= high * 10; k += 1) seen.add(((k % 3600) + 3600) % 3600)
      }
    }
    // Around the full circle in tenths of a degree, but for the step that crosses from 180 to -180.
    expect(seen.size).toBeGreaterThan(3585)
  })

  test('register marks lie at the same place of the picture on neighbouring tiles, twice each', async () => {
    const pages = await printed
    const marks = pages.flatMap((page, index) =>
      page.paths
        .filter((path) => path.stroked && path.points.length > 3)
        .filter((path) => {
          const { width, height } = extent(path)
          return Math.abs(width - 6 * mm) < 0.01 && Math.abs(height - 6 * mm) < 0.01
        })
        .map((path) => {
          const x = path.points.map((point) => point[0])
          const y = path.points.map((point) => point[1])
          const middle = [
            (Math.min(...x) + Math.max(...x)) / 2,
            (Math.min(...y) + Math.max(...y)) / 2,
          ] as const
          return { index, at: toPicture(page, middle) }
        }),
    )
    expect(marks.length).toBeGreaterThan(0)
    for (const mark of marks) {
      const others = marks.filter(
        (other) =>
          other.index !== mark.index && Math.hypot(other.at[0] - mark.at[0], other.at[1] - mark.at[1]) < 0.01,
      )
      expect(others.length, `mark at ${mark.at.join(', ')} of page ${mark.index + 1}`).toBeGreaterThan(0)
    }
  })
})

describe('the cutting into tiles', { timeout: 20_000 }, () => {
  test('windows overlap by the overlap and reach over the picture on every side', () => {
    for (const [width, height] of [
      [300, 300],
      [1000, 200],
      [191, 800],
    ] as const) {
      const pages = tiledPages('a4', width, height, () => true)
      const right = Math.max(...pages.map((page) => page.origin[0] + page.area.width))
      const bottom = Math.max(...pages.map((page) => page.origin[1] + page.area.height))
      expect(Math.min(...pages.map((page) => page.origin[0]))).toBeLessThanOrEqual(1e-6)
      expect(Math.min(...pages.map((page) => page.origin[1]))).toBeLessThanOrEqual(1e-6)
      expect(right).toBeGreaterThanOrEqual(width - 1e-6)
      expect(bottom).toBeGreaterThanOrEqual(height - 1e-6)
      for (const page of pages) {
        const next = pages.find(
          (other) => other.tile!.row === page.tile!.row && other.tile!.column === page.tile!.column + 1,
        )
        if (next) expect(page.origin[0] + page.area.width - next.origin[0]).toBeCloseTo(overlapMm, 9)
      }
    }
  })

  test('marks stand in the overlap, and only where both tiles are printed', () => {
    const all = tiledPages('a4', 600, 600, () => true)
    const some = all.filter((page) => !(page.tile!.row === 0 && page.tile!.column === 0))
    expect(registerMarks(some).length).toBeLessThan(registerMarks(all).length)
    for (const [x, y] of registerMarks(some)) {
      const holders = some.filter(
        ({ origin, area }) =>
          x > origin[0] && x < origin[0] + area.width && y > origin[1] && y < origin[1] + area.height,
      )
      expect(holders.length).toBeGreaterThanOrEqual(2)
    }
  })

  test('what fits no page is on no single page', () => {
    expect(wholePages('a4', 277.1, 190)).toEqual([])
    expect(wholePages('a4', 190, 277).every((page) => page.orientation === 'portrait')).toBe(true)
    expect(wholePages('a4', 190, 277)).not.toEqual([])
  })
})
