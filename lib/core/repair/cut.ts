import { area, openInsideCorners, orientRegion, union } from '../geometry/index'
import type { Loop, Point, Region } from '../geometry/types'
import type { Finding } from '../result'
import { figure } from '../units'
import { namePlace } from './place'
import type { PatchInput } from './types'

/** A corner that turns by more than this in one point has no radius to speak of, degrees. */
const sharpTurnDeg = 35

export interface CutPlan {
  readonly opening: Region
  readonly areaMm2: number
  readonly findings: readonly Finding[]
}

/**
 * The opening as it will be cut: inside corners of its outline opened to the least radius, since plies can't be
 * cut or laid into a sharp notch. Corners that point outwards are left as drawn, and told when sharp.
 * The reason, in words, when the outline is not one piece with an area.
 */
export function planCut(
  input: PatchInput,
): { readonly ok: true; readonly cut: CutPlan } | { readonly ok: false; readonly reason: string } {
  const drawn = orientRegion(input.opening)
  const pieces = drawn.outer.length < 3 ? [] : union([drawn])
  if (pieces.length === 0) {
    return { ok: false, reason: 'The opening has no area. Draw a closed outline round what is cut.' }
  }
  if (pieces.length > 1) {
    const reason = `The opening crosses itself or falls into ${pieces.length} pieces. Draw it as one outline, or plan one patch for each.`
    return { ok: false, reason }
  }
  const opening = openInsideCorners(drawn, input.rules.insideRadiusMm)
  const areaMm2 = area([opening])
  const findings = [...openedFinding(input, areaMm2 - area([drawn])), ...sharpFinding(input, opening)]
  return { ok: true, cut: { opening, areaMm2, findings } }
}

function openedFinding(input: PatchInput, addedMm2: number): Finding[] {
  if (addedMm2 < 0.5) return []
  const radius = figure(input.rules.insideRadiusMm)
  return [
    {
      code: 'inside-corners-opened',
      severity: 'note',
      text: `Inside corners of the opening were opened to a radius of ${radius} mm; it is ${figure(addedMm2, 0)} mm2 larger than drawn.`,
      place: namePlace(input.area, input.opening.outer[0]!),
      cure: null,
      figures: { addedMm2, insideRadiusMm: input.rules.insideRadiusMm },
    },
  ]
}

function sharpFinding(input: PatchInput, opening: Region): Finding[] {
  if (input.rules.insideRadiusMm === 0) return []
  const corners = opening.outer.filter((_, index) => turnDeg(opening.outer, index) > sharpTurnDeg)
  if (corners.length === 0) return []
  return [
    {
      code: 'opening-corner-sharp',
      severity: 'look',
      text: `The opening has ${corners.length} sharp corner${corners.length === 1 ? '' : 's'}: cracks start there.`,
      place: namePlace(input.area, corners[0]!),
      cure: `Draw it with a radius of ${figure(input.rules.insideRadiusMm)} mm or more, round the damage.`,
      figures: { sharpCorners: corners.length },
    },
  ]
}

/** Left turn at a point of a counter-clockwise outline, degrees; right turns are negative. */
function turnDeg(loop: Loop, index: number): number {
  const before = loop[(index + loop.length - 1) % loop.length]!
  const here = loop[index]!
  const after = loop[(index + 1) % loop.length]!
  const heading = (from: Point, to: Point) => Math.atan2(to[1] - from[1], to[0] - from[0])
  const turn = heading(here, after) - heading(before, here)
  return (Math.atan2(Math.sin(turn), Math.cos(turn)) * 180) / Math.PI
}
