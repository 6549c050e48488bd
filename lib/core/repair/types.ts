import type { Bounds, Loop, Point, Region } from '../geometry/types'
import type { CureCycle, Ply, PlyMaterial } from '../laminate/types'

/**
 * The three sides that a patch is worked from. They are asked and never guessed.
 * pattern-back: against the pattern, from the back. place-back: in place, from the back, with a caul on the face.
 * place-face: in place, from the face; the join shows on the tool face.
 */
export const sides = ['pattern-back', 'place-back', 'place-face'] as const
export type Side = (typeof sides)[number]

/** scarf: sanded, even taper. steps: machined, a land for each ply. */
export const edges = ['scarf', 'steps'] as const
export type Edge = (typeof edges)[number]

/** Shop rules that a plan is judged by. Lengths in mm, measured from outline to rim or boundary. */
export interface RepairRules {
  readonly edgeMarginMm: number
  readonly patchSpacingMm: number
  readonly footprintToDowelRimMm: number
  readonly insideRadiusMm: number
  readonly coverLapMm: number
  /** Least step of the surface ply; 0 is allowed and means: no least step. */
  readonly leastSurfaceStepMm: number
  /** Built against measured thickness, share of the measured one (0.1 = 10 %). */
  readonly thicknessTolerance: number
  /** Directions may be off by this much when a ply is laid. */
  readonly plyAlignmentDeg: number
  /** Debulk after the first ply, then every so many plies, and after the last. */
  readonly pliesPerDebulk: number
  /** Least distance of a limit temperature above the temperature asked for, degC. */
  readonly heatMarginC: number
  readonly cuttingAllowanceMm: number
}

/** Defaults of DESIGN, from memory, editable by the shop. */
export const defaultRepairRules: RepairRules = {
  edgeMarginMm: 25,
  patchSpacingMm: 50,
  footprintToDowelRimMm: 25,
  insideRadiusMm: 12.7,
  coverLapMm: 25,
  leastSurfaceStepMm: 10,
  thicknessTolerance: 0.1,
  plyAlignmentDeg: 2,
  pliesPerDebulk: 3,
  heatMarginC: 20,
  cuttingAllowanceMm: 10,
}

/** How far each ply steps beyond the one below it. Both rules are always worked out; `use` says which is built. */
export interface Taper {
  /** Length of the taper over the measured thickness, 20 for 20:1. At least 1. */
  readonly ratio: number
  /** The other rule: a fixed step for every ply. */
  readonly mmPerPly: number
  /** longer: whichever gives the longer scarf. */
  readonly use: 'ratio' | 'mm-per-ply' | 'longer'
}

export interface CoverPly {
  readonly material: PlyMaterial
  readonly directionDeg: number
}

export interface Dowel {
  readonly tag: string
  readonly at: Point
  readonly diameterMm: number
  /** Outer diameter of the bush flange on the back; null when there is no bush. */
  readonly bushDiameterMm: number | null
  /** A through-bush counts on face and back alike. */
  readonly through: boolean
  readonly isDatum: boolean
}

/** A trim or scribe line on the tool face. */
export interface FaceLine {
  readonly name: string
  readonly kind: 'trim' | 'scribe'
  readonly points: readonly Point[]
  readonly closed: boolean
}

/** Ground that a footprint on the back must keep off. */
export interface KeepOut {
  readonly name: string
  readonly kind: 'flange' | 'seal-land' | 'backing' | 'other'
  readonly outline: Loop
}

export interface OldPatch {
  readonly name: string
  /** What broke the tool face then. */
  readonly face: Loop
  /** Its footprint on the back. */
  readonly footprint: Loop
}

/** What a plan must know of the face area that it lies on. All in the area's own frame, mm. */
export interface PatchArea {
  readonly name: string
  readonly boundary: Loop
  readonly lines: readonly FaceLine[]
  readonly keepOuts: readonly KeepOut[]
  readonly dowels: readonly Dowel[]
  readonly oldPatches: readonly OldPatch[]
  readonly grid: LocationGrid
}

/** Letters along v from the top (no I, O), numbers along u. The origin is the top left corner of cell A1. */
export interface LocationGrid {
  readonly originMm: Point
  readonly cellMm: number
}

/** Three heat limits, not one. Null: unknown, and unknown is told. */
export interface HeatLimits {
  /** In use, under pressure. */
  readonly inUseC: number | null
  /** Free-standing: the present Tg. */
  readonly freeStandingC: number | null
  /** Bonded bushes and backing. */
  readonly bondedC: number | null
}

export interface PatchInput {
  readonly side: Side
  readonly edge: Edge
  /** The cut at the bottom of the recess, in the area's frame. */
  readonly opening: Region
  /** The parent stack; ply 1 is the surface ply. */
  readonly stack: readonly Ply[]
  /** Numbers of the plies that are taken out and replaced, counted from 1. All of them unless worked from the face. */
  readonly removedPlies: readonly number[]
  /** Thickness of the mould measured near the opening, each place in mm. Empty: nothing measured. */
  readonly measuredThicknessMm: readonly number[]
  readonly taper: Taper
  readonly coverPlies: readonly CoverPly[]
  readonly area: PatchArea
  readonly rules: RepairRules
  readonly heat: HeatLimits
  readonly cure: CureCycle | null
  readonly postCure: CureCycle | null
  /** Hottest cure that parts will see in this mould, degC; null when not said. */
  readonly nextPartCureC: number | null
  /** False: no pattern to lay against, so a splash comes first. */
  readonly patternAvailable: boolean
}

export interface PlannedPly {
  /** 1 is laid first, at the bottom of the recess. */
  readonly layingOrder: number
  /** The parent ply that it replaces; null for a cover ply. */
  readonly replaces: number | null
  readonly material: PlyMaterial
  readonly directionDeg: number
  readonly thicknessMm: number
  /** How far this ply's outline lies beyond the one before it (beyond the opening for the first). */
  readonly stepMm: number
  /** How far this ply's outline lies beyond the opening. */
  readonly growthMm: number
  readonly outline: readonly Region[]
  readonly areaMm2: number
  readonly perimeterMm: number
  readonly boundsMm: Bounds
  /** Longest extent along u and along v. */
  readonly acrossMm: readonly [number, number]
  /** Area of the outline that lies beyond the boundary of the face area. */
  readonly areaOutsideMm2: number
  /** Least distance from the outline to the boundary; negative: how far it runs off. */
  readonly distanceToEdgeMm: number
}

/** One strip cut off the roll, with the plies that lie side by side in it. */
export interface RollStrip {
  readonly lengthMm: number
  readonly usedWidthMm: number
  readonly pieces: readonly {
    readonly layingOrder: number
    readonly alongMm: number
    readonly acrossMm: number
    readonly offsetAcrossMm: number
  }[]
}

/** Material for the patch by bounding strips on the roll, directions kept. */
export interface MaterialTakeOff {
  readonly material: PlyMaterial
  readonly netAreaM2: number
  readonly grossAreaM2: number
  readonly rollLengthM: number
  /** Mass of prepreg taken off the roll, kg. */
  readonly massKg: number
  /** Share of the gross area that is not in a ply, 0 to 1. */
  readonly offcutShare: number
  readonly strips: readonly RollStrip[]
}

/** One line of work, in the order it is done. Ticked on the bench with name and time. */
export interface JobLine {
  /** Stable name, e.g. "debulk-1", "lay-4". */
  readonly code: string
  readonly title: string
  readonly detail: string
  /** Cautions stand at the job line that they concern. */
  readonly cautions: readonly string[]
  /** Second person needed to tick it. */
  readonly secondPerson: boolean
}

export interface ScarfLengths {
  readonly nominalThicknessMm: number
  readonly measuredThicknessMm: number | null
  /** Highest less lowest of the measured places. */
  readonly measuredSpreadMm: number | null
  /** (measured - nominal) / nominal in percent. */
  readonly differencePercent: number | null
  readonly byRatioNominalMm: number
  readonly byRatioMm: number
  readonly byMmPerPlyMm: number
  /** The length that is built, after the least surface step. */
  readonly lengthMm: number
  readonly governs: 'ratio' | 'mm-per-ply'
  /** Length built over the thickness it is judged by. */
  readonly ratioReached: number
  /** How much the built length falls short of ratio x thickness; 0 when it does not. */
  readonly shortByMm: number
  /** The ratio that the millimetre rule gives on each ply of the stack. */
  readonly ratioOfMmPerPly: readonly number[]
}

/** A point of the section through the join: distance from the opening outwards, height from the tool face. */
export interface SectionPly {
  readonly layingOrder: number
  readonly fromMm: number
  readonly toMm: number
  readonly bottomMm: number
  readonly topMm: number
  readonly kind: 'ply' | 'cover'
}

export interface PatchPlan {
  readonly lengths: ScarfLengths
  /** Repair plies and then cover plies, in laying order. */
  readonly plies: readonly PlannedPly[]
  readonly opening: Region
  readonly openingAreaMm2: number
  /** What breaks the tool face. */
  readonly face: readonly Region[]
  /** What must fit the back, cover plies included. */
  readonly footprint: readonly Region[]
  readonly footprintAreaMm2: number
  readonly builtThicknessMm: number
  readonly takeOff: readonly MaterialTakeOff[]
  readonly jobLines: readonly JobLine[]
  readonly section: readonly SectionPly[]
  /** Name of the place on the location grid, e.g. "floor B5". */
  readonly place: string
}
