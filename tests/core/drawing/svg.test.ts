import { createElement } from 'react'
import { renderToStaticMarkup } from 'react-dom/server'
import { describe, expect, test } from 'vitest'
import { faceDrawing } from '#lib/core/drawing/index'
import { DisplayList } from '../../../app/ui/drawing/display-list'
import { sampleFace } from './sample-face'

const list = faceDrawing(sampleFace(), { kind: 'screen', widthPx: 900, maxHeightPx: null })

function markup(hrefOf?: (subject: { kind: string; name: string }) => string | null): string {
  return renderToStaticMarkup(createElement(DisplayList, { list, id: 'face', ...(hrefOf ? { hrefOf } : {}) }))
}

describe('a display list as SVG', () => {
  test('is a picture with title and description', () => {
    const svg = markup()
    expect(svg).toContain('role="img" aria-labelledby="face-title" aria-describedby="face-desc"')
    expect(svg).toContain('<title id="face-title">LH-P2, floor, seen from the cavity</title>')
    expect(svg).toContain('Locating points: D01, D02')
    expect(svg).not.toContain('<a ')
  })

  test('with links it is a group whose dowels and patches can be reached by keyboard', () => {
    const svg = markup((subject) =>
      subject.kind === 'opening' ? null : `/x/${subject.name.replace(' ', '-')}`,
    )
    expect(svg).toContain('role="group"')
    expect(svg).toContain('<a href="/x/Patch-7" aria-label="Patch 7"')
    expect(svg).toContain('<a href="/x/D01" aria-label="Datum D01"')
    expect(svg.match(/<a /g)).toHaveLength(7)
  })

  test('lines keep their width at every zoom and take their colour from the page', () => {
    const svg = markup()
    const painted = svg.match(/<(path|circle) [^>]*>/g) ?? []
    expect(painted.length).toBeGreaterThan(20)
    for (const tag of painted) {
      expect(tag).toContain('vector-effect="non-scaling-stroke"')
      expect(tag).toMatch(/stroke="var\(--\w+\)"/)
      expect(tag).not.toMatch(/#[0-9a-f]{3,6}/i)
    }
  })

  test('a link takes a touch on 8 mm at least', () => {
    const svg = markup(() => '/x')
    const px = 900 / list.widthMm
    for (const [, width, height] of svg.matchAll(/<rect [^>]*width="([\d.]+)" height="([\d.]+)"/g)) {
      expect(Number(width) * px).toBeGreaterThan(30)
      expect(Number(height) * px).toBeGreaterThan(30)
    }
  })
})
