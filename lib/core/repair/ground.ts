import {
  areaOutside,
  distanceBetweenLoops,
  loopBounds,
  middleOfLoop,
  type Nearest,
  nearestToPath,
  nearestToPoint,
  nearestToRegion,
  overrun,
} from '../geometry/index'
import type { Loop, Point, Region } from '../geometry/types'
import { namePlace } from './place'
import type { Recess } from './recess'
import type { TaperPlan } from './taper'
import type { Dowel, FaceLine, KeepOut, OldPatch, PatchInput } from './types'

/**
 * What lies round the opening and how far off. Every outline of a patch is the opening grown by a length, so the
 * distance of a thing from an outline is its distance from the opening less that length: one measurement serves
 * all plies. Distances in mm, 0 where the thing reaches into the opening.
 */
export interface Ground {
  readonly input: PatchInput
  readonly recess: Recess
  readonly taper: TaperPlan
  readonly opening: Region
  /** Area and grid cell of the opening. */
  readonly place: string
  /** How far what breaks the tool face lies beyond the opening; null when the face stays whole. */
  readonly faceMm: number | null
  /** How far what lies on the back, cover plies included, goes beyond the opening; null when nothing does. */
  readonly backMm: number | null
  /** All cover laps together. */
  readonly lapsMm: number
  /** To the boundary of the area; negative: how far the opening runs off. */
  readonly edgeMm: number
  readonly lines: readonly Seen<FaceLine>[]
  readonly keepOuts: readonly Seen<KeepOut>[]
  /** To the middle of each dowel. */
  readonly dowels: readonly Seen<Dowel>[]
  readonly oldFaces: readonly Seen<OldPatch>[]
  readonly oldFootprints: readonly Seen<OldPatch>[]
}

export interface Seen<Thing> {
  readonly thing: Thing
  /** For what lies beyond the reach of any outline and margin: at least so far. */
  readonly mm: number
  readonly at: Point
  /** Area, grid cell and the thing's own name. */
  readonly place: string
}

export function surveyGround(input: PatchInput, recess: Recess, taper: TaperPlan, opening: Region): Ground {
  const { area } = input
  const see = <Thing>(thing: Thing, name: string, nearest: Nearest): Seen<Thing> => ({
    thing,
    mm: nearest.mm,
    at: nearest.at,
    place: namePlace(area, nearest.at, name),
  })
  const reachMm = farthestReach(input, taper)
  const measured = <Path extends Loop>(path: Path, measure: (path: Path) => Nearest): Nearest =>
    boxGap(opening.outer, path) > reachMm ? { mm: boxGap(opening.outer, path), at: path[0]! } : measure(path)
  const toRegion = (outline: Loop) => nearestToRegion([opening], outline)
  const lapsMm = input.rules.coverLapMm * input.coverPlies.length
  const largestMm = Math.max(...taper.growthsMm)
  return {
    input,
    recess,
    taper,
    opening,
    place: namePlace(area, middleOfLoop(opening.outer)),
    faceMm: recess.breaksFace ? (input.side === 'place-face' ? largestMm : 0) : null,
    backMm: backGrowth(input, recess, largestMm, lapsMm),
    lapsMm,
    edgeMm:
      areaOutside([opening], area.boundary) > 0
        ? -overrun([opening], area.boundary).mm
        : distanceBetweenLoops(opening.outer, area.boundary),
    lines: area.lines.map((line) =>
      see(
        line,
        `${line.kind} line ${line.name}`,
        measured(line.points, (path) => nearestToPath([opening], path, line.closed)),
      ),
    ),
    keepOuts: area.keepOuts.map((keepOut) => see(keepOut, keepOut.name, measured(keepOut.outline, toRegion))),
    dowels: area.dowels.map((dowel) =>
      see(
        dowel,
        dowel.tag,
        measured([dowel.at], () => nearestToPoint([opening], dowel.at)),
      ),
    ),
    oldFaces: area.oldPatches.map((old) => see(old, old.name, measured(old.face, toRegion))),
    oldFootprints: area.oldPatches.map((old) => see(old, old.name, measured(old.footprint, toRegion))),
  }
}

/** Area and grid cell where the opening comes nearest to the edge of the area, or runs off it farthest. */
export function edgePlace({ input, opening, edgeMm }: Ground): string {
  const { boundary } = input.area
  const { at } = edgeMm < 0 ? overrun([opening], boundary) : nearestToPath([opening], boundary, true)
  return namePlace(input.area, at)
}

/** No outline of this plan or of a cure for it, with margin or rim, reaches farther than this from the opening. */
function farthestReach({ rules, area, coverPlies }: PatchInput, { lengths, growthsMm }: TaperPlan): number {
  const taperMm = Math.max(lengths.byRatioMm, lengths.byMmPerPlyMm, ...growthsMm) + rules.leastSurfaceStepMm
  const marginMm = Math.max(rules.edgeMarginMm, rules.patchSpacingMm, rules.footprintToDowelRimMm)
  const rimMm = Math.max(
    0,
    ...area.dowels.map((dowel) => Math.max(dowel.diameterMm, dowel.bushDiameterMm ?? 0) / 2),
  )
  return taperMm + rules.coverLapMm * coverPlies.length + marginMm + rimMm
}

/** Least distance between the boxes round two outlines: no more than that between the outlines. */
function boxGap(a: Loop, b: Loop): number {
  const [au0, av0, au1, av1] = loopBounds(a)
  const [bu0, bv0, bu1, bv1] = loopBounds(b)
  return Math.hypot(Math.max(0, au0 - bu1, bu0 - au1), Math.max(0, av0 - bv1, bv0 - av1))
}

/** From the back every ply lies there; from the face only cover plies do, and the cut where it goes through. */
function backGrowth(input: PatchInput, recess: Recess, largestMm: number, lapsMm: number): number | null {
  if (input.side !== 'place-face' || input.coverPlies.length > 0) return largestMm + lapsMm
  return recess.breaksBack ? 0 : null
}

/** Does a locating point's rim reach into the cut where that matters: through the face, or its bush on the back? */
export function dowelsInOpening(ground: Ground): readonly Dowel[] {
  return ground.dowels
    .filter(({ thing, mm }) => {
      const onFace = ground.recess.breaksFace && mm < thing.diameterMm / 2
      const rim = backRimMm(thing)
      return onFace || (ground.recess.breaksBack && rim !== null && mm < rim)
    })
    .map((seen) => seen.thing)
}

/** Points outside the opening that plies lie over, on the face or by their bush on the back: they come out first. */
export function dowelsUnderPlies(ground: Ground): readonly Dowel[] {
  const { faceMm, backMm, input } = ground
  const gone = dowelsInOpening(ground)
  return ground.dowels
    .filter(({ thing, mm }) => {
      const rim = backRimMm(thing)
      const onFace = input.side === 'place-face' && faceMm !== null && mm - thing.diameterMm / 2 < faceMm
      return !gone.includes(thing) && (onFace || (backMm !== null && rim !== null && mm - rim < backMm))
    })
    .map((seen) => seen.thing)
}

/** Radius of what a locating point has on the back: its bush flange, or the bore where it goes through. */
export function backRimMm(dowel: Dowel): number | null {
  if (dowel.bushDiameterMm !== null) return dowel.bushDiameterMm / 2
  return dowel.through ? dowel.diameterMm / 2 : null
}
