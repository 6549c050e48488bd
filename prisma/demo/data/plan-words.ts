/** Placing of an opening in its area. */
export const here = (u: number, v: number, turnDeg = 0) => ({
  shiftMm: [u, v] as [number, number],
  turnDeg,
  mirrored: false,
})
export const twentyToOne = { ratio: 20, mmPerPly: 12.7, use: 'ratio' } as const
export const freeStanding =
  'Post-cured free-standing on flat supports all over, no bag and no pressure on it; 0.3 °C/min.'
