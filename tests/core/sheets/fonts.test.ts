import { readFileSync } from 'node:fs'
import PDFDocument from 'pdfkit'
import { describe, expect, test } from 'vitest'
import { textWidthMm } from '#lib/core/drawing/index'
import { fontFile } from '#lib/exchange/sheets/fonts'
import { sfntOfWoff } from '#lib/exchange/sheets/woff'

const woff = 'node_modules/@ibm/plex-sans/fonts/complete/woff/IBMPlexSans-Regular.woff'
const phrases = [
  'D01',
  'D14 moves 113.6',
  'Patch 7',
  'opening, planned',
  'seen from the back, mirrored',
  'rim of the flange',
  'WIM MWW 11',
  'tool face, on the pattern',
  '0° −45° 12.7 mm',
]

describe('the fonts of the sheets', () => {
  test('an unpacked font measures as the packed one', () => {
    const doc = new PDFDocument({ autoFirstPage: false })
    doc.registerFont('packed', readFileSync(woff)).registerFont('unpacked', sfntOfWoff(readFileSync(woff)))
    for (const phrase of phrases) {
      const packed = doc.font('packed').fontSize(10).widthOfString(phrase)
      expect(doc.font('unpacked').fontSize(10).widthOfString(phrase)).toBe(packed)
    }
  })

  test('bytes that are no WOFF are refused', () => {
    expect(() => sfntOfWoff(Buffer.from('wOF2 and more that is not read any further than this'))).toThrow(
      RangeError,
    )
  })

  test('the drawings never take a label for narrower than it prints, nor for much wider', () => {
    const doc = new PDFDocument({ autoFirstPage: false })
    for (const font of ['regular', 'semibold'] as const) {
      doc.registerFont(font, fontFile(font))
      for (const phrase of phrases) {
        const printed = doc.font(font).fontSize(10).widthOfString(phrase)
        const guess = textWidthMm(phrase, 10)
        expect(guess, `${font} "${phrase}"`).toBeGreaterThanOrEqual(printed)
        expect(guess, `${font} "${phrase}"`).toBeLessThan(printed * 1.35)
      }
    }
  })
})
