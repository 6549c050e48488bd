import type { IsoDate } from '../dates'
import type { Loop, Point, Region } from '../geometry/types'
import type { Dowel, FaceLine, KeepOut, LocationGrid } from '../repair/types'

/** A locating point as a face drawing shows it, at its present (or coming) place. */
export interface FaceDowel extends Pick<Dowel, 'tag' | 'at' | 'diameterMm' | 'isDatum'> {
  /** Where it was before the move; null when it stays. */
  readonly oldPlace: Point | null
  /** The day of the log entry that this place comes from; null when it stands as in its table. */
  readonly setOn: IsoDate | null
}

export interface FacePatch {
  readonly name: string
  /** What broke the tool face. */
  readonly face: readonly Loop[]
  /** What it covers on the back. */
  readonly footprint: readonly Loop[]
}

export interface PlannedOpening {
  readonly name: string
  readonly regions: readonly Region[]
}

/** One face area with all that is drawn on it, in the area's frame, mm. */
export interface FaceModel {
  readonly mouldCode: string
  readonly areaName: string
  readonly boundary: Loop
  readonly grid: LocationGrid
  readonly lines: readonly FaceLine[]
  readonly keepOuts: readonly KeepOut[]
  readonly dowels: readonly FaceDowel[]
  readonly patches: readonly FacePatch[]
  readonly openings: readonly PlannedOpening[]
}

export type SeenFrom = 'cavity' | 'back'
