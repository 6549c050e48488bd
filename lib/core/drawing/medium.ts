import { pxPerPaperMm } from './styles'

/** Where a drawing is to stand. A screen needs its usual width; paper the room that it may fill. */
export type Medium =
  | { readonly kind: 'screen'; readonly widthPx: number; readonly maxHeightPx: number | null }
  | { readonly kind: 'paper'; readonly widthMm: number; readonly heightMm: number }

/** Room round the content, in paper mm. */
export interface Margins {
  readonly left: number
  readonly top: number
  readonly right: number
  readonly bottom: number
}

/** Sizes of all that must stay readable, in drawing mm; each is a paper size times the denominator. */
export interface Sizes {
  /** Drawing mm for a paper mm. */
  readonly denominator: number
  readonly textMm: number
  readonly smallTextMm: number
  /** Least radius of a centre mark. */
  readonly markMm: number
  readonly headMm: number
  readonly hatchMm: number
  /** Finer ruling than this is a grey wash, not a grid: 6 px. */
  readonly finestRulingMm: number
  /** How the scale is written on a sheet, "1 : 5"; null on a screen, where nobody measures. */
  readonly scaleWords: string | null
}

/** Reductions of ISO 5455, with 2.5 and 25 as its intermediate ones (from memory of the standard). */
const standardReductions = [1, 2, 2.5, 5, 10, 20, 25, 50, 100, 200] as const

const screenTextPaperMm = 13 / pxPerPaperMm
const sheetTextPaperMm = 2.6

/**
 * The scale at which content of so many millimetres, with its margins, fills the medium. Paper takes the
 * largest standard scale that fits; a screen takes what fits, since nobody measures on it.
 * RangeError for content without extent or a medium without room.
 */
export function scaleToFit(widthMm: number, heightMm: number, margins: Margins, medium: Medium): Sizes {
  if (!(widthMm > 0) || !(heightMm > 0)) {
    throw new RangeError(`a drawing needs an extent, got ${widthMm} x ${heightMm} mm`)
  }
  const room = paperRoom(medium)
  const across = room.widthMm - margins.left - margins.right
  const down = room.heightMm - margins.top - margins.bottom
  if (!(across > 0) || !(down > 0)) {
    throw new RangeError(`no room for a drawing on ${room.widthMm} x ${room.heightMm} mm of paper`)
  }
  const needed = Math.max(widthMm / across, heightMm / down)
  return sizesAt(medium.kind === 'paper' ? standardScale(needed) : needed, medium.kind)
}

export function paperRoom(medium: Medium): { readonly widthMm: number; readonly heightMm: number } {
  if (medium.kind === 'paper') return medium
  return {
    widthMm: medium.widthPx / pxPerPaperMm,
    heightMm: medium.maxHeightPx === null ? Number.POSITIVE_INFINITY : medium.maxHeightPx / pxPerPaperMm,
  }
}

function standardScale(needed: number): number {
  const slack = 1 + 1e-9
  const found = standardReductions.find((reduction) => reduction * slack >= needed)
  return found ?? Math.ceil(needed / 100) * 100
}

/** The next smaller standard scale than the given one. */
export function nextReduction(denominator: number): number {
  return standardReductions.find((reduction) => reduction > denominator) ?? denominator * 2
}

export function sizesAt(denominator: number, kind: Medium['kind']): Sizes {
  const text = kind === 'paper' ? sheetTextPaperMm : screenTextPaperMm
  const scaled = (paperMm: number) => paperMm * denominator
  return {
    denominator,
    textMm: scaled(text),
    smallTextMm: scaled(text * (kind === 'paper' ? 0.88 : 0.95)),
    markMm: scaled(text * 0.52),
    headMm: scaled(text * 0.8),
    hatchMm: scaled(text * 0.6),
    finestRulingMm: scaled(6 / pxPerPaperMm),
    scaleWords: kind === 'paper' ? `1 : ${denominator}` : null,
  }
}

/** Margins in drawing mm. */
export function scaledMargins(margins: Margins, { denominator }: Sizes): Margins {
  return {
    left: margins.left * denominator,
    top: margins.top * denominator,
    right: margins.right * denominator,
    bottom: margins.bottom * denominator,
  }
}
