import { area, areaOutside, bounds, growSteps, perimeter, steppedErrorMm } from '../geometry/index'
import type { Region } from '../geometry/types'
import { curedPly } from '../laminate'
import type { PlyMaterial } from '../laminate/types'
import type { WorkingStep } from '../result'
import { figure } from '../units'
import type { Ground } from './ground'
import type { PlannedPly } from './types'
import { line } from './working-line'

interface Layer {
  readonly replaces: number | null
  readonly material: PlyMaterial
  readonly directionDeg: number
  readonly growthMm: number
}

/**
 * Outlines of all plies in laying order, cover plies last: the opening grown by true offsets with round corners,
 * each from the one before it. Cover plies lie one lap beyond the last outline, each beyond the one under it.
 */
export function outlinesOf(ground: Ground): PlannedPly[] {
  const layers = layersOf(ground)
  const stepsMm = layers.map((layer, index) => layer.growthMm - (layers[index - 1]?.growthMm ?? 0))
  const outlines = growSteps([ground.opening], stepsMm)
  return layers.map((layer, index) => {
    const outline = outlines[index]!
    const box = bounds(outline)
    return {
      layingOrder: index + 1,
      replaces: layer.replaces,
      material: layer.material,
      directionDeg: layer.directionDeg,
      thicknessMm: curedPly(layer.material).thicknessMm,
      stepMm: stepsMm[index]!,
      growthMm: layer.growthMm,
      outline,
      areaMm2: area(outline),
      perimeterMm: perimeter(outline),
      boundsMm: box,
      acrossMm: [box[2] - box[0], box[3] - box[1]],
      areaOutsideMm2: outsideMm2(ground, outline, layer.growthMm),
      distanceToEdgeMm: ground.edgeMm - layer.growthMm,
    }
  })
}

function layersOf({ input, recess, taper }: Ground): Layer[] {
  const repair = recess.plies.map((ply, index) => ({
    replaces: ply.number,
    material: ply.material,
    directionDeg: ply.directionDeg,
    growthMm: taper.growthsMm[index]!,
  }))
  const largestMm = Math.max(...taper.growthsMm)
  const covers = input.coverPlies.map((cover, index) => ({
    replaces: null,
    material: cover.material,
    directionDeg: cover.directionDeg,
    growthMm: largestMm + (index + 1) * input.rules.coverLapMm,
  }))
  return [...repair, ...covers]
}

/** An outline that the boundary is farther from than it has grown lies inside: no need to cut it. */
function outsideMm2(ground: Ground, outline: readonly Region[], growthMm: number): number {
  return ground.edgeMm >= growthMm ? 0 : areaOutside(outline, ground.input.area.boundary)
}

function coverLines(ply: PlannedPly): WorkingStep[] {
  if (ply.replaces !== null) return []
  const k = ply.layingOrder
  const before = figure(ply.growthMm - ply.stepMm)
  return [
    line(
      `s_${k}`,
      `lap of the cover ply laid no. ${k}`,
      "the shop's lap",
      figure(ply.stepMm),
      ply.stepMm,
      'mm',
      'shop-rule',
    ),
    line(
      `g_${k}`,
      `ply laid no. ${k}: beyond the opening`,
      'last outline + lap',
      `${before} + ${figure(ply.stepMm)}`,
      ply.growthMm,
      'mm',
    ),
  ]
}

function sizeLines(ply: PlannedPly): WorkingStep[] {
  const k = ply.layingOrder
  const [u0, v0, u1, v1] = ply.boundsMm
  const grown = `g = ${figure(ply.growthMm)} mm, round corners`
  return [
    line(
      `A_${k}`,
      `area of the ply laid no. ${k}`,
      'area inside the opening grown by g',
      grown,
      ply.areaMm2,
      'mm²',
    ),
    line(
      `P_${k}`,
      `perimeter of the ply laid no. ${k}`,
      'length of its outline',
      grown,
      ply.perimeterMm,
      'mm',
    ),
    line(
      `u_${k}`,
      `ply laid no. ${k}, along u`,
      'greatest u - least u',
      `${figure(u1, 1)} - ${figure(u0, 1)}`,
      ply.acrossMm[0],
      'mm',
    ),
    line(
      `v_${k}`,
      `ply laid no. ${k}, along v`,
      'greatest v - least v',
      `${figure(v1, 1)} - ${figure(v0, 1)}`,
      ply.acrossMm[1],
      'mm',
    ),
  ]
}

function edgeLines(ply: PlannedPly): WorkingStep[] {
  const k = ply.layingOrder
  const distance = line(
    `d_${k}`,
    `ply laid no. ${k} to the edge of the area`,
    'd_opening - g',
    `${figure(ply.distanceToEdgeMm + ply.growthMm)} - ${figure(ply.growthMm)}`,
    ply.distanceToEdgeMm,
    'mm',
  )
  if (ply.areaOutsideMm2 === 0) return [distance]
  const outside = line(
    `O_${k}`,
    `ply laid no. ${k}: area beyond the edge`,
    'outline less the area inside the boundary',
    `of ${figure(ply.areaMm2, 0)} mm²`,
    ply.areaOutsideMm2,
    'mm²',
  )
  return [distance, outside]
}

/** Lines for size, place and error bound of all outlines. */
export function outlineWorking(plies: readonly PlannedPly[]): WorkingStep[] {
  const bound = line(
    'e',
    'outlines are true to within',
    'chords, simplification and rounding of every step added up',
    `${plies.length} steps`,
    steppedErrorMm(plies.length),
    'mm',
  )
  const lines = plies.flatMap((ply) => [...coverLines(ply), ...sizeLines(ply), ...edgeLines(ply)])
  return [...lines, bound]
}
