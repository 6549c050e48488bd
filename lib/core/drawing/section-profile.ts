import { stackUp } from '../laminate/index'
import type { PatchInput, PatchPlan, SectionPly } from '../repair/types'
import type { Xy } from './types'

/** The join cut across, in [mm from the opening's edge outwards, mm from the tool face towards the back]. */
export interface SectionProfile {
  readonly fromFace: boolean
  readonly parentMm: number
  /** Where the recess ends: 0 when it breaks through, else what is left of the parent under it. */
  readonly floorMm: number
  /** The cut edge of the parent from the bottom of the recess to the surface that is worked from. */
  readonly taper: readonly Xy[]
  readonly lengthMm: number
  readonly insideMm: number
  readonly outsideMm: number
  readonly lowMm: number
  readonly highMm: number
  readonly plies: readonly SectionPly[]
}

/**
 * Profile of a plan's join. A sanded scarf runs from ply end to ply end; machined steps rise at the end of each
 * ply. The parent is drawn at its mean measured thickness, and nominal where nothing was measured.
 */
export function sectionProfile(plan: PatchPlan, input: PatchInput): SectionProfile {
  const fromFace = input.side === 'place-face'
  const stack = stackUp(input.stack)
  const measured = input.measuredThicknessMm
  const parentMm =
    measured.length === 0
      ? stack.thicknessMm
      : measured.reduce((total, place) => total + place, 0) / measured.length
  const scale = parentMm / stack.thicknessMm
  const repair = plan.plies.filter((ply) => ply.replaces !== null)
  const depthMm = repair.reduce((total, ply) => total + ply.thicknessMm, 0) * scale
  const bottom = fromFace ? depthMm : parentMm - depthMm
  const towards = fromFace ? -1 : 1
  const taper: Xy[] = [[0, bottom]]
  let height = bottom
  for (const ply of repair) {
    const reach = ply.growthMm
    if (input.edge === 'steps') taper.push([reach, height])
    height += towards * ply.thicknessMm * scale
    taper.push([reach, height])
  }
  const lengthMm = repair[repair.length - 1]?.growthMm ?? 0
  const farthest = Math.max(lengthMm, ...plan.section.map((ply) => ply.toMm))
  const heights = plan.section.flatMap((ply) => [ply.bottomMm, ply.topMm])
  return {
    fromFace,
    parentMm,
    floorMm: fromFace ? parentMm - depthMm : bottom,
    taper,
    lengthMm,
    insideMm: Math.max(5, ...plan.section.map((ply) => -ply.fromMm)),
    outsideMm: farthest + Math.max(12, 0.16 * farthest),
    lowMm: Math.min(0, ...heights),
    highMm: Math.max(parentMm, ...heights),
    plies: plan.section,
  }
}
