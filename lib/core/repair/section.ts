import type { Recess } from './recess'
import type { PatchInput, PlannedPly, SectionPly } from './types'
import { sum } from './working-line'

/** How much of the patch inside the opening the section shows, mm; drawn at negative distance. */
const shownInsideMm = 10

/**
 * Section through the join. Distance runs from the opening's edge outwards (the patch inside it lies at negative
 * distance), height from the tool face towards the back. The parent has its measured thickness where there is
 * one, the patch its own: what is built too thin or proud shows.
 */
export function sectionOf(input: PatchInput, recess: Recess, plies: readonly PlannedPly[]): SectionPly[] {
  const repair = plies.filter((ply) => ply.replaces !== null)
  const covers = plies.filter((ply) => ply.replaces === null)
  const parentMm = recess.parent.thicknessMm * recess.scale
  const outMm = sum(recess.plies.map((ply) => ply.thicknessMm)) * recess.scale
  const fromFace = input.side === 'place-face'
  const section: SectionPly[] = []
  let height = fromFace ? outMm : parentMm - outMm
  for (const ply of repair) {
    const next = fromFace ? height - ply.thicknessMm : height + ply.thicknessMm
    section.push(band(ply, Math.min(height, next), Math.max(height, next), 'ply'))
    height = next
  }
  let back = fromFace ? parentMm : height
  for (const ply of covers) {
    section.push(band(ply, back, back + ply.thicknessMm, 'cover'))
    back += ply.thicknessMm
  }
  return section
}

function band(ply: PlannedPly, bottomMm: number, topMm: number, kind: 'ply' | 'cover'): SectionPly {
  return { layingOrder: ply.layingOrder, fromMm: -shownInsideMm, toMm: ply.growthMm, bottomMm, topMm, kind }
}
