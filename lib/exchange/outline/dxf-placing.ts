import { composed, type Matrix, scaling } from './matrix'

/** How the numbers of a drawing or block come to lie in the model, mm; z goes its own way: planes stay level. */
export interface Placing {
  readonly plane: Matrix
  readonly zScale: number
  readonly zShift: number
}

/** First `inner`, then `outer`. */
export function placedIn(outer: Placing, inner: Placing): Placing {
  return {
    plane: composed(outer.plane, inner.plane),
    zScale: outer.zScale * inner.zScale,
    zShift: outer.zScale * inner.zShift + outer.zShift,
  }
}

/** The drawing itself, without any INSERT. */
export function inUnit(mmPerUnit: number): Placing {
  return { plane: scaling(mmPerUnit, mmPerUnit), zScale: mmPerUnit, zShift: 0 }
}

/** What is given in axes seen from (0, 0, -1), in the drawing's own; done twice it is undone. */
export const fromBehind: Placing = { plane: scaling(-1, 1), zScale: -1, zShift: 0 }
