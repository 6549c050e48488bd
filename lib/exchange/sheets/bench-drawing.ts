import { type LegendKey, legendEntry, planDrawing, sectionDrawing } from '#lib/core/drawing/index'
import type { PlannedPly } from '#lib/core/repair/types'
import { figure } from '#lib/core/units'
import { drawList, drawPrimitive } from './draw-list'
import { type Paper, rect, rule } from './paper'
import { drawQr } from './qr'
import { type Frame, frameOf } from './sheet-frame'
import type { PatchSheet } from './types'
import { block, clip, widthOf, words, wrap } from './words'

const gap = 3
const listWidth = 76
/** On A4; a taller page gives more than half of what it has more to the plan, and a quarter to the section. */
const planHeightA4 = 124
const sectionHeightA4 = 66
const frameHeightA4 = 277
const qrSide = 24
const rowHeight = 4.1
/** Rows that the corner holds above the QR code. */
const mostRows = 19

/** Whether all plies stand in the drawing's corner; else the whole list follows as a table. */
export function listFitsCorner(sheet: PatchSheet): boolean {
  return sheet.patch.plies.length <= mostRows
}

/** The first page's drawings: plan view with the item list in its corner, and the section below. Returns its foot. */
export function drawBenchDrawing(paper: Paper, sheet: PatchSheet): number {
  const { patch, input } = sheet
  const frame = frameOf(paper)
  const taller = Math.max(0, frame.height - frameHeightA4)
  const planHeight = planHeightA4 + 0.6 * taller
  const top = frame.top + gap
  const listLeft = frame.right - listWidth
  const plan = planDrawing(patch, input, {
    kind: 'paper',
    widthMm: frame.width - listWidth - 2 * gap,
    heightMm: planHeight,
  })
  drawList(paper, plan, frame.left + 1, top)
  drawItemList(paper, patch.plies, frame)
  drawCode(paper, sheet, listLeft + 6, top + planHeight - qrSide - 4)
  const legendFoot = drawLegend(paper, plan.legend, frame.left + gap, top + planHeight + 1.5)
  const noRoom = plan.omittedLabels
  const notes = noRoom.length === 0 ? legendFoot : noteMissing(paper, noRoom, legendFoot)
  rule(paper, [frame.left, notes + 1.2], [frame.right, notes + 1.2], 'dimension')
  const section = sectionDrawing(patch, input, {
    kind: 'paper',
    widthMm: frame.width - 2 * gap,
    heightMm: sectionHeightA4 + 0.25 * taller,
  })
  drawList(paper, section, frame.left + gap, notes + 3.5)
  const foot = notes + 3.5 + section.heightMm / section.denominator
  rule(paper, [frame.left, foot], [frame.right, foot], 'dimension')
  return foot
}

function noteMissing(paper: Paper, labels: readonly string[], y: number): number {
  const frame = frameOf(paper)
  const style = { sizeMm: 2.3, role: 'soft' } as const
  const text = `No room at this scale for the names: ${labels.join(', ')}.`
  return block(paper, frame.left + gap, y, wrap(paper, text, frame.width - 2 * gap, style), style)
}

/** Laying order, what, direction, greatest extent and area of each ply. */
function drawItemList(paper: Paper, plies: readonly PlannedPly[], frame: Frame): void {
  const [left, top] = [frame.right - listWidth, frame.top]
  const shown = plies.length <= mostRows ? plies : plies.slice(0, mostRows - 1)
  const columns = {
    number: left + 6,
    name: left + 8.5,
    direction: left + 49,
    across: left + 63,
    area: left + 74,
  }
  const nameWidth = columns.direction - 11 - columns.name
  const head = { sizeMm: 2.2, role: 'soft' } as const
  const cell = { sizeMm: 2.6 } as const
  const right = { anchor: 'end' } as const
  let y = top + 4.6
  words(paper, columns.number, y, '#', { ...head, ...right })
  words(paper, columns.name, y, 'Ply, in laying order', head)
  words(paper, columns.direction, y, 'Direction', { ...head, ...right })
  words(paper, columns.across, y, 'Across, mm', { ...head, ...right })
  words(paper, columns.area, y, 'Area, m²', { ...head, ...right })
  rule(paper, [left, y + 1.5], [frame.right, y + 1.5], 'dimension')
  y += 1.5
  for (const ply of shown) {
    const base = y + rowHeight - 1.15
    const name = ply.replaces === null ? `cover, ${ply.material.name}` : ply.material.name
    words(paper, columns.number, base, `${ply.layingOrder}`, { ...cell, ...right })
    words(paper, columns.name, base, clip(paper, name, nameWidth + 4, cell), cell)
    words(paper, columns.direction, base, `${figure(ply.directionDeg, 1)}°`, { ...cell, ...right })
    words(paper, columns.across, base, acrossWords(ply), { ...cell, ...right })
    words(paper, columns.area, base, (ply.areaMm2 / 1e6).toFixed(3), { ...cell, ...right })
    y += rowHeight
    rule(paper, [left, y], [frame.right, y], 'hair', 'hair')
  }
  if (shown.length < plies.length) {
    words(paper, columns.name, y + rowHeight - 1.15, `all ${plies.length} plies: see the ply list`, cell)
    y += rowHeight
  }
  rect(paper, left, top, frame.right - left, y - top)
}

export function acrossWords(ply: PlannedPly): string {
  const [u, v] = ply.acrossMm
  return Math.abs(u - v) < 0.5 ? u.toFixed(0) : `${u.toFixed(0)} × ${v.toFixed(0)}`
}

function drawCode(paper: Paper, sheet: PatchSheet, x: number, y: number): void {
  drawQr(paper, sheet.address, x, y, qrSide)
  const style = { sizeMm: 2.3, font: 'mono' } as const
  const left = x + qrSide + 4
  const width = frameOf(paper).right - gap - left
  const lines = wrap(paper, sheet.address, width, style)
  const top = block(paper, left, y + 1, ['The plan as it stands now:'], { sizeMm: 2.3, role: 'soft' })
  block(paper, left, top + 0.6, lines, style)
}

/** What the lines mean, in rows that wrap at the frame; answers where they end. */
export function drawLegend(paper: Paper, keys: readonly LegendKey[], x0: number, y0: number): number {
  const style = { sizeMm: 2.3, role: 'soft' } as const
  const right = frameOf(paper).right - gap
  let x = x0
  let y = y0
  for (const key of keys) {
    const entry = legendEntry(key)
    const scale = 1.35
    const width = entry.widthMm / scale + 1.4 + widthOf(paper, entry.words, style)
    if (x + width > right) {
      x = x0
      y += 4
    }
    for (const shape of entry.shapes) drawPrimitive(paper, shape, scale, x, y)
    words(paper, x + entry.widthMm / scale + 1.4, y + 2.2, entry.words, style)
    x += width + 4.5
  }
  return y + (keys.length > 0 ? 4 : 0)
}
