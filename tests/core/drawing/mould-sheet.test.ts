import { describe, expect, test } from 'vitest'
import { paperNames, paperSizes } from '#lib/exchange/sheets/index'
import { mouldSheet } from '#lib/exchange/sheets/mould-sheet'
import { readPdf } from '#tests/support/pdf'
import { sampleFace } from './sample-face'
import { sampleMouldSheet } from './sample-mould-sheet'

async function wordsOn(changes: Parameters<typeof sampleMouldSheet>[0] = {}): Promise<string> {
  const { pages } = readPdf(await mouldSheet(sampleMouldSheet(changes)))
  return pages.flatMap((page) => page.texts.map(({ text }) => text)).join(' ')
}

describe('the sheet of a mould', { timeout: 30_000 }, () => {
  test('is the same file for the same model and moment', async () => {
    const sheet = sampleMouldSheet()
    expect(Buffer.compare(await mouldSheet(sheet), await mouldSheet(sheet))).toBe(0)
  })

  test.each(paperNames)('on %s every page has its size, and all that is drawn lies on it', async (paper) => {
    const { pages } = readPdf(await mouldSheet(sampleMouldSheet({ paper })))
    const { widthMm, heightMm } = paperSizes[paper]
    for (const page of pages) {
      expect(page.widthPt).toBeCloseTo((widthMm * 72) / 25.4, 2)
      expect(page.heightPt).toBeCloseTo((heightMm * 72) / 25.4, 2)
      for (const [x, y] of page.paths.flatMap((path) => path.points)) {
        expect(x).toBeGreaterThan(0)
        expect(x).toBeLessThan(page.widthPt)
        expect(y).toBeGreaterThan(0)
        expect(y).toBeLessThan(page.heightPt)
      }
    }
  })

  test('says what it is, how it stands, what it bears, what is open, how it is seen, and the page of how many', async () => {
    const words = await wordsOn()
    for (const part of [
      'LH-P2, piece 1 of 3, off pattern LH-PAT',
      'Proof pull only',
      'Patch 7, floor B5',
      '135 / 180 °C',
      'Tg dry 192',
      '10 plies',
      'Rack 2, low',
      '58 pulls',
      'all areas, seen from the cavity',
      '2 lines open, 1 stop',
      'Check the mould alone, hot and cold.',
      '21 Nov 2026, 13:05',
      '1 of ',
      'front wall',
      'A part that carries people',
    ]) {
      expect(words).toContain(part)
    }
    expect(words).toMatch(/seen from the cavity, scale 1 : \d+/)
  })

  test('names places by the nearest point with both ways, and moved points by both places', async () => {
    const words = await wordsOn()
    // The patch's middle is (2140, 740), D11 stands at (2500, 640).
    expect(words).toContain('floor B6, 374 mm from D11 (360 mm towards −u, 100 mm towards +v)')
    expect(words).toContain('720; 640')
    expect(words).toContain('by the log, 2 Nov 2026')
  })

  test('one area, seen from the back, says so in its strip', async () => {
    const words = await wordsOn({ faces: [sampleFace()], seenFrom: 'back' })
    expect(words).toContain('floor, seen from the back, mirrored')
    expect(words).not.toContain('front wall')
  })

  test('with nothing open, no pull and no stack it says that', async () => {
    const words = await wordsOn({
      matters: [],
      stack: null,
      place: null,
      issueNumber: null,
      strokes: { pulls: [], coats: [], patches: [], seasons: [] },
    })
    for (const part of [
      'nothing open',
      'No pull yet.',
      'not known',
      'Nothing stands against the next lay-up.',
    ]) {
      expect(words).toContain(part)
    }
  })
})
