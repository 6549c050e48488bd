import { lineTable } from '#lib/core/drawing/index'
import type { Paper } from './paper'
import type { DrawBlock, PageWords } from './template-blocks'
import { type Area, overlapMm, type TemplatePage, tileName } from './template-layout'
import { words } from './words'

/** All tiles of the ply in small, the present one shaded. */
export function keyPlan(
  paper: Paper,
  { page, picture }: PageWords,
  pages: readonly TemplatePage[],
): DrawBlock {
  return (x, y) => {
    const whole = wholeOf(pages[0]!)
    const scale = Math.min(keySideMm / whole.width, keySideMm / whole.height)
    const at = (px: number, py: number) =>
      [x + (px - whole.left) * scale, y + (py - whole.top) * scale] as const
    const { doc } = paper
    doc.lineWidth(lineTable.hair.widthMm).strokeColor('#000000').undash()
    for (const each of [page, ...pages.filter((other) => other !== page)]) {
      const [left, top] = at(each.origin[0], each.origin[1])
      doc.rect(left, top, each.area.width * scale, each.area.height * scale)
      if (each === page) doc.fillAndStroke('#d5d5d5', '#000000')
      else doc.stroke()
    }
    doc.lineWidth(lineTable.thin.widthMm)
    for (const loop of picture.outline) {
      for (const [i, point] of loop.entries()) {
        const [px, py] = at(point[0], point[1])
        if (i === 0) doc.moveTo(px, py)
        else doc.lineTo(px, py)
      }
      doc.closePath().stroke()
    }
    if (pages.length > 16) return
    for (const other of pages) {
      const [cx, cy] = at(other.origin[0] + other.area.width / 2, other.origin[1] + other.area.height / 2)
      words(paper, cx, cy + 0.8, tileName(other.tile!), { sizeMm: 2.3, anchor: 'middle', haloMm: 0.5 })
    }
  }
}

export const keySideMm = 24

/** The whole picture that the tiles cover together. */
function wholeOf({ tile, origin, area }: TemplatePage): Area {
  const { column, row, columns, rows } = tile!
  const stepX = area.width - overlapMm
  const stepY = area.height - overlapMm
  return {
    left: origin[0] - column * stepX,
    top: origin[1] - row * stepY,
    width: columns * stepX + overlapMm,
    height: rows * stepY + overlapMm,
  }
}
