/** Farthest that a straight chord may lie inside the arc it stands for, mm. Every flattening of ours keeps it. */
export const chordErrorMm = 0.005

/** Points nearer to each other than this are one point, mm. */
export const samePointMm = 1e-6

/** Coordinates leave offsets and booleans on this grid, mm. */
export const gridMm = 1e-4

/** Pieces smaller than this are crumbs of rounding, not outlines, mm2. */
export const crumbMm2 = 1e-3
