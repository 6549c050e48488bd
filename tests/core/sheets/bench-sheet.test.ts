import { encode } from 'uqr'
import { describe, expect, test } from 'vitest'
import { benchSheet, type PatchSheet, plyTemplates } from '#lib/exchange/sheets/index'
import { type PdfPage, readPdf } from '#tests/support/pdf'
import { sampleInput, samplePlan } from './sample-plan'
import { sampleSheet } from './sample-sheet'

async function pagesOf(sheet = sampleSheet()) {
  return readPdf(await benchSheet(sheet)).pages
}

function wordsOf(pages: readonly PdfPage[]): string {
  return pages.flatMap((page) => page.texts.map(({ text }) => text)).join('\n')
}

function firstPlies(sheet: PatchSheet, count: number): PatchSheet {
  return { ...sheet, patch: { ...sheet.patch, plies: sheet.patch.plies.slice(0, count) } }
}

describe('the bench sheet', { timeout: 20_000 }, () => {
  test('is the same file for the same model and moment', async () => {
    const sheet = sampleSheet()
    expect(Buffer.compare(await benchSheet(sheet), await benchSheet(sheet))).toBe(0)
    const few = firstPlies(sheet, 2)
    expect(Buffer.compare(await plyTemplates(few), await plyTemplates(few))).toBe(0)
  })

  test('says what, which version, who, when, and the page of how many on every page', async () => {
    const pages = await pagesOf()
    const first = wordsOf(pages.slice(0, 1))
    for (const part of ['Opening round D02', 'Sam Lark, 18 Oct 2026', 'Mo Olsen, 19 Oct 2026', 'Signed']) {
      expect(first).toContain(part)
    }
    for (const [i, page] of pages.entries()) {
      const words = wordsOf([page])
      expect(words).toContain(`${i + 1} of ${pages.length}`)
      expect(words).toContain('21 Oct 2026, 14:05')
      expect(words).toContain('A part that carries people, or flight or road loads')
      expect(words).toContain('Calculation 1, record 0190a5c2-7a31-4c3e-9f0b-2b6f9d1f4e10')
    }
  })

  test('lists every ply, finding and job line, each caution with its line', async () => {
    const sheet = sampleSheet()
    const words = wordsOf(await pagesOf(sheet)).replaceAll('\n', ' ')
    for (const line of sheet.patch.jobLines) {
      expect(words).toContain(line.title)
      for (const caution of line.cautions) expect(words).toContain(`Caution: ${caution}`)
    }
    for (const finding of sheet.findings) expect(words).toContain(finding.text.slice(0, 40))
    for (const ply of sheet.patch.plies) expect(words).toContain(ply.acrossMm[0].toFixed(0))
  })

  test('a look without its because and a plan without a signature are said in words', async () => {
    const words = wordsOf(await pagesOf(sampleSheet({ signed: [], becauses: {} })))
    expect(words).toContain('because: not given yet')
    expect(words).toContain('not signed: not for the bench')
  })

  test('a self-checked signature is marked', async () => {
    const signed = [{ name: 'Mo Olsen', on: '2026-10-19', selfChecked: true }]
    expect(wordsOf(await pagesOf(sampleSheet({ signed })))).toContain('Mo Olsen, 19 Oct 2026 (self-checked)')
  })

  test('a job line for two people has two boxes to tick, one for one has one', async () => {
    const sheet = sampleSheet()
    const boxes = (await pagesOf(sheet)).flatMap((page) =>
      page.paths.filter((path) => {
        const x = path.points.map((point) => point[0])
        return path.closed && Math.abs(Math.max(...x) - Math.min(...x) - (4.6 * 72) / 25.4) < 0.01
      }),
    )
    const wanted = sheet.patch.jobLines.reduce((total, line) => total + (line.secondPerson ? 2 : 1), 0)
    expect(boxes).toHaveLength(wanted)
  })

  test('the code on it reads as the address', async () => {
    const sheet = sampleSheet()
    const [page] = await pagesOf(sheet)
    const { data, size } = encode(sheet.address, { ecc: 'M', border: 0 })
    const cells = page!.paths.filter((path) => path.filled && !path.stroked && path.points.length === 4)
    const x = cells.flatMap((path) => path.points.map((point) => point[0]))
    const y = cells.flatMap((path) => path.points.map((point) => point[1]))
    const [left, top, side] = [Math.min(...x), Math.max(...y), Math.max(...x) - Math.min(...x)]
    const read = data.map((row, i) =>
      row.map((_, j) => {
        const [px, py] = [left + ((j + 0.5) * side) / size, top - ((i + 0.5) * side) / size]
        return cells.some((path) => {
          const xs = path.points.map((point) => point[0])
          const ys = path.points.map((point) => point[1])
          return px > Math.min(...xs) && px < Math.max(...xs) && py > Math.min(...ys) && py < Math.max(...ys)
        })
      }),
    )
    expect(read).toEqual(data)
  })

  test('nothing leaves the paper, whatever the names are like', async () => {
    const long = 'A name that somebody wrote without a thought for the narrow field that it must stand in'
    const sheet = sampleSheet({
      mould: { code: 'LH-P2-REWORKED-2026', name: long },
      plan: { name: long, code: long, version: 12, state: 'on the bench' },
      sketched: { name: long, on: '2026-10-18' },
    })
    for (const page of [
      ...(await pagesOf(sheet)),
      ...readPdf(await plyTemplates(firstPlies(sheet, 4))).pages,
    ]) {
      const x = page.paths.flatMap((path) => path.points.map((point) => point[0]))
      const y = page.paths.flatMap((path) => path.points.map((point) => point[1]))
      expect(Math.min(...x, ...y)).toBeGreaterThanOrEqual(0)
      expect(Math.max(...x)).toBeLessThanOrEqual(page.widthPt)
      expect(Math.max(...y)).toBeLessThanOrEqual(page.heightPt)
      for (const { at } of page.texts) {
        expect(at[0]).toBeGreaterThan(0)
        expect(at[0]).toBeLessThan(page.widthPt - 8)
        expect(at[1]).toBeGreaterThan(8)
      }
    }
  })

  test('more plies than the corner holds stand in a table, none is lost', async () => {
    const stack = Array.from({ length: 34 }, (_, i) => ({
      material: sampleInput().stack[1]!.material,
      directionDeg: i % 2 === 0 ? 0 : 45,
    }))
    const input = sampleInput({
      side: 'place-back',
      stack,
      removedPlies: stack.map((_, i) => i + 1),
      measuredThicknessMm: [],
      taper: { ratio: 6, mmPerPly: 4, use: 'ratio' },
    })
    const sheet = sampleSheet({ input, patch: samplePlan(input) })
    const words = wordsOf(await pagesOf(sheet))
    expect(words).toContain('all 35 plies: see the ply list')
    for (const ply of sheet.patch.plies) expect(words).toContain((ply.areaMm2 / 1e6).toFixed(3))
  })

  test('a moment that is none is refused', async () => {
    await expect(benchSheet(sampleSheet({ printedAt: 'yesterday' }))).rejects.toThrow(/printedAt.*yesterday/)
  })
})
