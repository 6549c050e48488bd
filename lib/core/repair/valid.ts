import type { Loop } from '../geometry/types'
import type { PatchInput } from './types'

/**
 * Misuse of the planner: numbers that no shop means. RangeError with the figure. What a shop may well mean but
 * can't be built is no matter of this check; the planner answers it in words.
 */
export function assertPlannable(input: PatchInput): void {
  const { taper, rules, area } = input
  atLeast(taper.ratio, 1, 'taper ratio')
  above(taper.mmPerPly, 'millimetres a ply')
  for (const [name, value] of Object.entries(rules)) atLeast(value, 0, `shop rule ${name}`)
  if (!Number.isInteger(rules.pliesPerDebulk) || rules.pliesPerDebulk < 1) {
    throw new RangeError(`plies per debulk must be a whole number from 1, got ${rules.pliesPerDebulk}`)
  }
  for (const place of input.measuredThicknessMm) above(place, 'measured thickness')
  for (const { material, directionDeg } of [...input.stack, ...input.coverPlies]) {
    above(material.rollWidthMm, `roll width of ${material.name}`)
    if (material.thickestCureMm !== null) above(material.thickestCureMm, `thickest cure of ${material.name}`)
    finite(directionDeg, `direction of a ply of ${material.name}`)
  }
  for (const limit of [...Object.values(input.heat), input.nextPartCureC]) {
    if (limit !== null) finite(limit, 'temperature')
  }
  for (const cycle of [input.cure, input.postCure]) {
    for (const { rampCPerMin, toC, holdMin } of cycle?.segments ?? []) {
      for (const value of [rampCPerMin, toC, holdMin]) finite(value, `a figure of ${cycle?.name}`)
    }
    if (typeof cycle?.tgAfterC === 'number') finite(cycle.tgAfterC, `Tg after ${cycle.name}`)
  }
  above(area.grid.cellMm, 'cell of the location grid')
  assertOutlines(input)
  for (const dowel of area.dowels) {
    above(dowel.diameterMm, `diameter of ${dowel.tag}`)
    if (dowel.bushDiameterMm !== null) above(dowel.bushDiameterMm, `bush of ${dowel.tag}`)
  }
}

function assertOutlines({ opening, area }: PatchInput): void {
  assertPoints(opening.outer, 'opening')
  for (const hole of opening.holes) assertPoints(hole, 'hole in the opening')
  assertPoints(area.boundary, `boundary of ${area.name}`)
  for (const line of area.lines) assertPoints(line.points, `${line.kind} line ${line.name}`)
  for (const keepOut of area.keepOuts) assertPoints(keepOut.outline, keepOut.name)
  for (const old of area.oldPatches) {
    assertPoints(old.face, `face of ${old.name}`)
    assertPoints(old.footprint, `footprint of ${old.name}`)
  }
  assertPoints(
    area.dowels.map((dowel) => dowel.at),
    'dowels',
  )
  assertPoints([area.grid.originMm], 'origin of the location grid')
}

function assertPoints(points: Loop, what: string): void {
  for (const [u, v] of points) {
    finite(u, `a point of the ${what}`)
    finite(v, `a point of the ${what}`)
  }
}

function finite(value: number, what: string): void {
  if (!Number.isFinite(value)) throw new RangeError(`${what} must be a number, got ${value}`)
}

function above(value: number, what: string): void {
  if (!(value > 0 && Number.isFinite(value))) throw new RangeError(`${what} must be above 0, got ${value}`)
}

function atLeast(value: number, least: number, what: string): void {
  if (!(value >= least && Number.isFinite(value)))
    throw new RangeError(`${what} must be at least ${least}, got ${value}`)
}
