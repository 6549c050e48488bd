import { describe, expect, test } from 'vitest'
import type { Point } from '#lib/core/geometry/types'
import type { PatchInput } from '#lib/core/repair/index'
import { plyTemplates } from '#lib/exchange/sheets/index'
import { readPdf } from '#tests/support/pdf'
import { extent } from './bars'
import { sampleInput, samplePlan } from './sample-plan'
import { sampleSheet } from './sample-sheet'

const mm = 72 / 25.4
/** A flag: its pole at the left (low u), its cloth at the top (high v). */
const flag: readonly Point[] = [
  [0, 0],
  [20, 0],
  [20, 100],
  [120, 100],
  [120, 150],
  [0, 150],
]

async function page(changes: Partial<PatchInput>) {
  const input = sampleInput(changes)
  const plan = samplePlan(input, [{ outer: flag, holes: [] }])
  const third = { ...plan, plies: plan.plies.filter((ply) => ply.directionDeg === 45).slice(0, 1) }
  return readPdf(await plyTemplates(sampleSheet({ input, patch: third }))).pages[0]!
}

function poleSide(printed: Awaited<ReturnType<typeof page>>): 'left' | 'right' {
  const outline = printed.paths.find((path) => path.closed && Math.abs(extent(path).height - 150 * mm) < 0.1)!
  const low = Math.min(...outline.points.map((point) => point[1]))
  const foot = outline.points.filter((point) => Math.abs(point[1] - low) < 0.01).map((point) => point[0])
  const all = outline.points.map((point) => point[0])
  return Math.min(...foot) - Math.min(...all) < 0.01 ? 'left' : 'right'
}

describe('a ply template shows the ply as the laminator sees it', { timeout: 20_000 }, () => {
  test('from the face as seen from the cavity', async () => {
    const printed = await page({ side: 'place-face', removedPlies: [1, 2, 3], coverPlies: [] })
    expect(poleSide(printed)).toBe('left')
    const words = printed.texts.map(({ text }) => text)
    expect(words).toContain('seen from the cavity')
    expect(words).toContain('Fibres at 45° in this view, as on the mould')
  })

  test('from the back mirrored, with the fibre angle of that view', async () => {
    const printed = await page({ side: 'pattern-back' })
    expect(poleSide(printed)).toBe('right')
    const words = printed.texts.map(({ text }) => text)
    expect(words).toContain('seen from the back, mirrored')
    expect(words).toContain('Fibres at −45° in this view (45° on the mould)')
  })

  test('the arrow runs as its words say: down to the right at -45 degrees', async () => {
    const printed = await page({ side: 'pattern-back' })
    const slanted = printed.paths.filter((path) => {
      const [a, b] = path.points
      if (!path.stroked || path.points.length !== 2 || !a || !b) return false
      return Math.abs(Math.abs(b[0] - a[0]) - Math.abs(b[1] - a[1])) < 0.01 && Math.abs(b[0] - a[0]) > 5
    })
    expect(slanted).toHaveLength(1)
    const [a, b] = slanted[0]!.points
    expect((b![1] - a![1]) / (b![0] - a![0])).toBeCloseTo(-1, 3)
  })

  test('names ply, material, plan, version and which side is up', async () => {
    const words = (await page({ side: 'pattern-back' })).texts.map(({ text }) => text).join('\n')
    for (const part of [
      'Ply 3 of',
      'bulk 650 twill',
      'LH-P2 Lower hull, port: Opening round D02',
      'Version 3, signed',
      'This side up',
    ]) {
      expect(words).toContain(part)
    }
  })
})
