import { describe, expect, test } from 'vitest'
import { lineStyles, lineTable, screenStroke } from '#lib/core/drawing/index'

describe('the table of lines', () => {
  test('has a line for every name, with whole pairs of dash and gap', () => {
    expect(Object.keys(lineTable).sort()).toEqual([...lineStyles].sort())
    for (const style of lineStyles) {
      const { widthMm, dash, kind } = lineTable[style]
      expect(widthMm, style).toBeGreaterThanOrEqual(0.13)
      expect(dash.length % 2, style).toBe(0)
      expect(
        dash.every((part) => part > 0),
        style,
      ).toBe(true)
      expect(kind, style).not.toBe('')
    }
  })

  test('wide lines are twice as wide as narrow ones (ISO 128-2, from memory)', () => {
    expect(lineTable.outline.widthMm / lineTable.thin.widthMm).toBeCloseTo(2)
    expect(lineTable.opening.widthMm / lineTable.trim.widthMm).toBeCloseTo(2)
  })

  test('lines that mean different things differ without colour', () => {
    const looks = [
      'outline',
      'thin',
      'trim',
      'scribe',
      'opening',
      'opening-cut',
      'footprint',
      'hidden',
      'old-place',
    ]
      .map((style) => lineTable[style as (typeof lineStyles)[number]])
      .map(({ widthMm, dash }) => `${widthMm} ${dash.join(' ')}`)
    expect(new Set(looks).size).toBe(looks.length)
  })

  test('no line is too faint for a screen, and dashes go with the width', () => {
    for (const style of lineStyles) {
      const { widthPx, dashPx } = screenStroke(style)
      expect(widthPx, style).toBeGreaterThanOrEqual(0.8)
      expect(dashPx).toEqual(lineTable[style].dash.map((part) => part * widthPx))
    }
  })
})
