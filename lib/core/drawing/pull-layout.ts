import { pxPerPaperMm } from './styles'

/** How a pull went, against what is usual for that mould. */
export const pullFates = ['usual', 'harder', 'forced', 'stuck'] as const
export type PullFate = (typeof pullFates)[number]

/** A mould's history of pulls, in their order; pull numbers count from 1. */
export interface PullStrokes {
  readonly pulls: readonly {
    /** Calendar day, YYYY-MM-DD. */
    readonly day: string
    readonly went: PullFate
    /** False: the mould was not cleared to lay up. */
    readonly cleared: boolean
  }[]
  /** Coats put on after a pull; 0 is before the first one. */
  readonly coats: readonly { readonly afterPull: number }[]
  /** From the first pull off a patch to the last one; null while it is in the mould. */
  readonly patches: readonly {
    readonly fromPull: number
    readonly toPull: number | null
    readonly label: string
  }[]
  readonly seasons: readonly { readonly beforePull: number; readonly label: string }[]
}

/** large: on the mould's page, with labels. small: a row of the rack, without. */
export interface StripSize {
  readonly kind: 'large' | 'small'
  readonly widthPx: number
}

/** Where things of a strip lie, mm. */
export interface StripLayout {
  readonly firstPull: number
  readonly pitch: number
  readonly left: number
  readonly baseline: number
  /** Row of each patch's bar, 0 at the bottom: patches that lie in the mould together stand above each other. */
  readonly patchRows: readonly number[]
  readonly rowMm: number
  readonly unit: number
  readonly labelled: boolean
  readonly textMm: number
  readonly widthMm: number
  readonly heightMm: number
}

/** Pulls closer together than this run into one grey block; the oldest are left out, and it is said. */
const leastPitchPx = { large: 4, small: 2.4 } as const
const widestPitchPx = { large: 22, small: 6 } as const

/** Pitch, rows and heights of a strip. The pulls that no longer fit are left out from the old end. */
export function layOut(strokes: PullStrokes, size: StripSize): StripLayout {
  const large = size.kind === 'large'
  const px = 1 / pxPerPaperMm
  const count = strokes.pulls.length
  const endMark = Math.max(count, ...strokes.patches.map((patch) => patch.fromPull))
  const padding = (large ? 14 : 4) * px
  const widthMm = size.widthPx * px
  const most = Math.floor((widthMm - 2 * padding) / (leastPitchPx[size.kind] * px))
  const firstPull = Math.max(1, endMark - most + 1)
  const slots = Math.max(1, endMark - firstPull + 1)
  const pitch = Math.min(widestPitchPx[size.kind] * px, (widthMm - 2 * padding) / slots)
  const textMm = (large ? 12.5 : 12) * px
  const unit = (large ? 1 : 0.42) * px
  const patchRows = rowsOf(strokes, endMark)
  const rowMm = (large ? 26 : 5) * px
  const top = (large ? 54 : 23) * px + Math.max(1, ...patchRows.map((row) => row + 1)) * rowMm
  return {
    firstPull,
    pitch,
    left: padding,
    baseline: top,
    patchRows,
    rowMm,
    unit,
    labelled: large,
    textMm,
    widthMm,
    heightMm: top + (large ? 36 : 8) * px,
  }
}

/** The lowest row in which a patch's bar meets no earlier one. */
function rowsOf(strokes: PullStrokes, endMark: number): readonly number[] {
  const rows: { to: number }[] = []
  return strokes.patches.map((patch) => {
    const free = rows.findIndex((row) => row.to < patch.fromPull)
    const row = free < 0 ? rows.length : free
    rows[row] = { to: Math.max(patch.fromPull, patch.toPull ?? endMark) }
    return row
  })
}

/** Middle of a pull's slot; the slot after the last pull is where the next one will stand. */
export function xOf(pull: number, layout: StripLayout): number {
  return layout.left + (pull - layout.firstPull + 0.5) * layout.pitch
}
