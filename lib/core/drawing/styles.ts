/**
 * The one table of lines: names after what they mean, kinds after ISO 128-2 (type numbers from memory of the
 * standard), widths of its 0.13 to 0.7 mm series with wide to narrow as 2:1. Dash lengths are counted in line
 * widths and are shorter than the standard's long dash (24) so that small outlines still show their kind.
 */
export const lineStyles = [
  'outline',
  'thin',
  'hair',
  'trim',
  'scribe',
  'opening',
  'opening-cut',
  'taper',
  'footprint',
  'cover',
  'hidden',
  'hatch',
  'centre',
  'old-place',
  'dimension',
  'template',
  'template-opening',
  'template-edge',
  'stroke-narrow',
  'stroke-wide',
] as const
export type LineStyle = (typeof lineStyles)[number]

export interface LineRule {
  /** On paper, mm. */
  readonly widthMm: number
  /** Dash, gap, dash ... in line widths; empty for a continuous line. */
  readonly dash: readonly number[]
  /** Type after ISO 128-2, in words. */
  readonly kind: string
}

const chain = [14, 3, 1, 3] as const
const dashed = [9, 4] as const

export const lineTable: Readonly<Record<LineStyle, LineRule>> = {
  outline: { widthMm: 0.5, dash: [], kind: '01.2 continuous, wide' },
  thin: { widthMm: 0.25, dash: [], kind: '01.1 continuous, narrow' },
  hair: { widthMm: 0.13, dash: [], kind: '01.1 continuous, narrow, at the finest width' },
  trim: { widthMm: 0.25, dash: chain, kind: '04.1 long-dashed dotted, narrow' },
  scribe: { widthMm: 0.25, dash: [14, 3, 1, 3, 1, 3], kind: '05.1 long-dashed double-dotted, narrow' },
  opening: { widthMm: 0.5, dash: [9, 2.5, 1, 2.5], kind: '04.2 long-dashed dotted, wide' },
  'opening-cut': { widthMm: 0.7, dash: [], kind: '01.2 continuous, wide' },
  taper: { widthMm: 0.35, dash: dashed, kind: '02.1 dashed' },
  footprint: { widthMm: 0.25, dash: dashed, kind: '02.1 dashed, narrow' },
  cover: { widthMm: 0.25, dash: dashed, kind: '02.1 dashed, narrow' },
  hidden: { widthMm: 0.25, dash: [6, 3], kind: '02.1 dashed, narrow' },
  hatch: { widthMm: 0.18, dash: [], kind: '01.1 continuous, narrow' },
  centre: { widthMm: 0.18, dash: chain, kind: '04.1 long-dashed dotted, narrow' },
  'old-place': { widthMm: 0.25, dash: [1.5, 2.5], kind: '07.1 dotted, narrow' },
  dimension: { widthMm: 0.18, dash: [], kind: '01.1 continuous, narrow' },
  template: { widthMm: 0.15, dash: [], kind: '01.1 continuous, at the width a blade can follow' },
  'template-opening': { widthMm: 0.13, dash: [14, 7], kind: '02.1 dashed, at the finest width' },
  'template-edge': { widthMm: 0.13, dash: [6, 6], kind: '02.1 dashed, at the finest width' },
  'stroke-narrow': { widthMm: 0.42, dash: [], kind: 'stroke of the pull strip' },
  'stroke-wide': { widthMm: 0.85, dash: [], kind: 'stroke of the pull strip' },
}

/** Colours by what they say. A screen maps them to its variables, paper to black and grey. */
export const roles = ['ink', 'soft', 'act', 'held', 'due', 'good', 'hair'] as const
export type Role = (typeof roles)[number]

/** A screen counts as paper with so many pixels to a millimetre (96 to the inch). */
export const pxPerPaperMm = 96 / 25.4

/** Thinner lines than this go grey and uneven on a screen. */
const leastScreenPx = 0.8

export interface StrokePx {
  readonly widthPx: number
  readonly dashPx: readonly number[]
}

/** The stroke of a style on a screen, in CSS pixels. */
export function screenStroke(style: LineStyle): StrokePx {
  const rule = lineTable[style]
  const widthPx = Math.max(leastScreenPx, rule.widthMm * pxPerPaperMm)
  return { widthPx, dashPx: rule.dash.map((part) => part * widthPx) }
}
