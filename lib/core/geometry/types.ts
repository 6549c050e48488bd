/** A point of a face, [u, v] in mm. */
export type Point = readonly [number, number]

/** A closed outline without a repeated last point. Outer loops run counter-clockwise seen from n, holes clockwise. */
export type Loop = readonly Point[]

/** One connected piece of a face: an outer loop with its holes. */
export interface Region {
  readonly outer: Loop
  readonly holes: readonly Loop[]
}

/** [uMin, vMin, uMax, vMax] in mm. */
export type Bounds = readonly [number, number, number, number]
