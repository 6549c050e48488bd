import { readFileSync } from 'node:fs'
import { describe, expect, test } from 'vitest'
import type { Point } from '#lib/core/geometry/types'
import { plyTemplates } from '#lib/exchange/sheets/index'
import { readPdf } from '#tests/support/pdf'
import { rectangle } from '../drawing/sample-face'
import { barsOf, extent } from './bars'
import { sampleInput, samplePlan } from './sample-plan'
import { sampleSheet } from './sample-sheet'

const folder = 'tests/cases/T54a-pdf-print-scale'
const given = JSON.parse(readFileSync(`${folder}/outline.json`, 'utf8')) as { outer: Point[] }
const expected = JSON.parse(readFileSync(`${folder}/expected.json`, 'utf8')) as {
  page_pt: [number, number]
  outline_pt: [number, number]
  check_bar_pt: number
  tolerance_pt: number
}

/** One ply with the outline, laid out of the way of the sample's opening. */
async function templateOf(outer: readonly Point[]) {
  const plan = samplePlan(sampleInput(), [{ outer, holes: [] }])
  const { pages, catalog } = readPdf(
    await plyTemplates(sampleSheet({ patch: { ...plan, plies: plan.plies.slice(0, 1) } })),
  )
  return { pages, catalog, page: pages[0]! }
}

describe('T54a: a ply template of 250 x 180 mm on A4', { timeout: 20_000 }, () => {
  test('comes true to size on one landscape page', async () => {
    const { pages, page } = await templateOf(given.outer)
    expect(pages).toHaveLength(1)
    expect(Math.abs(page.widthPt - expected.page_pt[0])).toBeLessThan(expected.tolerance_pt)
    expect(Math.abs(page.heightPt - expected.page_pt[1])).toBeLessThan(expected.tolerance_pt)
    const outlines = page.paths.filter((path) => {
      const { width, height } = extent(path)
      return (
        path.stroked &&
        path.closed &&
        Math.abs(width - expected.outline_pt[0]) < expected.tolerance_pt &&
        Math.abs(height - expected.outline_pt[1]) < expected.tolerance_pt
      )
    })
    expect(outlines).toHaveLength(1)
  })

  test('carries a check bar of 100 mm on both axes, with the words to measure it', async () => {
    const { page } = await templateOf(given.outer)
    for (const axis of ['across', 'upright'] as const) {
      const bars = barsOf(page, axis)
      expect(bars, axis).toHaveLength(1)
      expect(Math.abs(bars[0]! - expected.check_bar_pt), axis).toBeLessThan(expected.tolerance_pt)
    }
    const words = page.texts.filter(({ text }) => text.includes('must be 100; print at 100 %, no fitting'))
    expect(words).toHaveLength(2)
  })

  test('asks the viewer not to scale', async () => {
    expect((await templateOf(given.outer)).catalog).toContain('/PrintScaling /None')
  })

  test('draws the outline with a line that a blade can follow, 0.1 to 0.2 mm', async () => {
    const { page } = await templateOf(given.outer)
    const outline = page.paths.find((path) => Math.abs(extent(path).width - expected.outline_pt[0]) < 0.1)
    const widthMm = (outline!.lineWidthPt * 25.4) / 72
    expect(widthMm).toBeGreaterThanOrEqual(0.1)
    expect(widthMm).toBeLessThanOrEqual(0.2)
  })
})

describe('other templates of the kind', { timeout: 20_000 }, () => {
  const sizes: readonly (readonly [string, number, number, 'portrait' | 'landscape', number])[] = [
    ['a small one stands upright', 60, 40, 'portrait', 1],
    ['one that fits upright with the strip', 188, 240, 'portrait', 1],
    ['one that takes the whole upright page', 190, 277, 'portrait', 1],
    ['one that takes the whole landscape page', 277, 190, 'landscape', 1],
    ['one a millimetre too long is tiled', 278, 190, 'portrait', 2],
  ]
  test.each(sizes)('%s', async (_, width, height, orientation, count) => {
    const { pages } = await templateOf(rectangle(2000, 2000, width, height))
    expect(pages).toHaveLength(count)
    for (const page of pages) {
      expect(page.widthPt > page.heightPt ? 'landscape' : 'portrait').toBe(orientation)
      expect(barsOf(page, 'across')).toHaveLength(1)
      expect(barsOf(page, 'upright')).toHaveLength(1)
    }
  })
})
