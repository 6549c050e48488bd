import { describe, expect, test } from 'vitest'
import { circle } from '#lib/core/geometry/index'
import { benchSheet, type PaperName, paperNames, paperSizes, plyTemplates } from '#lib/exchange/sheets/index'
import { tiledPages, wholePages } from '#lib/exchange/sheets/template-layout'
import { readPdf } from '#tests/support/pdf'
import { rectangle } from '../drawing/sample-face'
import { barsOf, extent } from './bars'
import { sampleInput, samplePlan } from './sample-plan'
import { sampleSheet } from './sample-sheet'

const pt = 72 / 25.4

/** Sizes in mm as the standards print them: ISO 216 for A4 and A3; letter 8.5 x 11 in, ledger/tabloid 11 x 17 in. */
const standard: Readonly<Record<PaperName, readonly [number, number]>> = {
  a4: [210, 297],
  a3: [297, 420],
  letter: [8.5 * 25.4, 11 * 25.4],
  tabloid: [11 * 25.4, 17 * 25.4],
}

async function templateOn(paper: PaperName, outer: ReturnType<typeof rectangle>) {
  const plan = samplePlan(sampleInput(), [{ outer, holes: [] }])
  const sheet = sampleSheet({ patch: { ...plan, plies: plan.plies.slice(0, 1) }, paper })
  return readPdf(await plyTemplates(sheet)).pages
}

describe.each(paperNames)('on %s', { timeout: 30_000 }, (paper) => {
  const [width, height] = standard[paper]

  test('the bench sheet has pages of that size, its frame and its name, and nothing beyond them', async () => {
    const { pages } = readPdf(await benchSheet(sampleSheet({ paper })))
    for (const page of pages) {
      expect(page.widthPt).toBeCloseTo(width * pt, 2)
      expect(page.heightPt).toBeCloseTo(height * pt, 2)
      const frames = page.paths.filter((path) => {
        const size = extent(path)
        return (
          Math.abs(size.width - (width - 30) * pt) < 0.05 && Math.abs(size.height - (height - 20) * pt) < 0.05
        )
      })
      expect(frames).toHaveLength(1)
      expect(page.texts.map(({ text }) => text)).toContain(paperSizes[paper].name)
      const x = page.paths.flatMap((path) => path.points.map((point) => point[0]))
      const y = page.paths.flatMap((path) => path.points.map((point) => point[1]))
      expect(Math.min(...x, ...y)).toBeGreaterThanOrEqual(0)
      expect(Math.max(...x)).toBeLessThanOrEqual(page.widthPt)
      expect(Math.max(...y)).toBeLessThanOrEqual(page.heightPt)
    }
  })

  test('a template is true to size, both bars are 100 mm', async () => {
    const pages = await templateOn(paper, rectangle(2000, 2000, 150, 120))
    expect(pages).toHaveLength(1)
    const [page] = pages
    expect(page!.widthPt).toBeCloseTo(width * pt, 2)
    expect(page!.paths.some((path) => path.closed && Math.abs(extent(path).width - 150 * pt) < 0.01)).toBe(
      true,
    )
    for (const axis of ['across', 'upright'] as const) {
      const bars = barsOf(page!, axis)
      expect(bars).toHaveLength(1)
      expect(bars[0]).toBeCloseTo(100 * pt, 2)
    }
  })

  test('a large one is tiled on pages of that size, each with both bars', async () => {
    const pages = await templateOn(paper, circle([760, 670], 330))
    expect(pages.length).toBeGreaterThan(1)
    for (const page of pages) {
      const sides = [page.widthPt, page.heightPt].sort((a, b) => a - b)
      expect(sides[0]).toBeCloseTo(width * pt, 2)
      expect(sides[1]).toBeCloseTo(height * pt, 2)
      for (const axis of ['across', 'upright'] as const) {
        const bars = barsOf(page, axis)
        expect(bars).toHaveLength(1)
        expect(bars[0]).toBeCloseTo(100 * pt, 2)
      }
    }
  })
})

test('larger paper needs fewer tiles, and holds what A4 does not', () => {
  const tiles = (paper: PaperName) => tiledPages(paper, 700, 700, () => true).length
  expect(tiles('a3')).toBeLessThan(tiles('a4'))
  expect(tiles('tabloid')).toBeLessThan(tiles('letter'))
  expect(wholePages('a4', 270, 380)).toEqual([])
  expect(wholePages('a3', 270, 380)).not.toEqual([])
})
