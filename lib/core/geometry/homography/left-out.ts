import { type Fit, fitMarks, offMm } from './fit'
import type { Projection } from './projection'
import { degenerateRatio, straightness } from './straightness'
import type { Mark } from './types'

/** A mark against all the others. */
export interface LeftOut {
  readonly tag: string
  /** From its known place to where the others put it. */
  readonly fromOthersMm: number
  /** Figures that the others give beyond the eight of a fit. */
  readonly freedom: number
  /** Root mean square of the residuals of the others; null where they are four. */
  readonly othersRmsMm: number | null
  /** How often chance alone puts one mark of so many this far off; null where the others are four. */
  readonly chance: number | null
}

/**
 * Finer than this nobody sets a mark, mm: the spread of the others never counts as less, so that figures worked out on paper
 * aren't told apart by their rounding. Chosen here.
 */
const finestMm = 0.01

/**
 * Each mark left out once and compared with the fit of the others, which is near the fit of all. Nothing for four
 * marks, nor for a mark without which the others leave the fit open.
 */
export function leftOut(marks: readonly Mark[], toFace: Projection): readonly LeftOut[] {
  if (marks.length < 5) return []
  return marks.flatMap((mark, index) => {
    const others = marks.filter((_, other) => other !== index)
    if (straightness(others).ratio < degenerateRatio) return []
    const fit = fitMarks(others, others.length > 4 ? toFace : undefined)
    if (typeof fit === 'string' || !(fit.weightAt(mark.atPx) > 0)) return []
    const freedom = 2 * others.length - 8
    return [
      {
        tag: mark.tag,
        fromOthersMm: offMm(fit.toFace, mark),
        freedom,
        othersRmsMm: freedom === 0 ? null : Math.sqrt(fit.sumMm2 / others.length),
        chance: freedom === 0 ? null : Math.min(1, marks.length * chanceOf(fit, mark, freedom)),
      },
    ]
  })
}

/**
 * Chance that a good mark lies this far from where the others put it: its distance, in terms of their spread and of the fit's
 * own at that place, follows the F distribution with 2 and `freedom` degrees, whose tail is (1 + 2 F / freedom)^(-freedom / 2).
 */
function chanceOf(fit: Fit, mark: Mark, freedom: number): number {
  const [u, v] = fit.place(mark.atPx)
  const off = [u - mark.atMm[0], v - mark.atMm[1]] as const
  const [uu, uv, vv] = fit.covarianceAt(mark.atPx)
  const [p, r] = [uu + 1, vv + 1]
  const weighed = (r * off[0] ** 2 - 2 * uv * off[0] * off[1] + p * off[1] ** 2) / (p * r - uv * uv)
  const spreadMm2 = Math.max(fit.sumMm2 / freedom, finestMm ** 2)
  return (1 + weighed / spreadMm2 / freedom) ** (-freedom / 2)
}
