/** Larger files are refused before they are read. */
export const mostBytes = 8 * 1024 * 1024

/** Points of one outline after its arcs are flattened; the same limit as for outlines that come as numbers. */
export const mostPoints = 20_000

/** Points of all that a drawing holds, before arcs are flattened. */
export const mostVertices = 100_000

/** Coordinates farther from the origin than this are taken for a slip, mm. */
export const farthestMm = 100_000

/** Ends that lie this close are one point, mm. */
export const joinExactMm = 0.01

/** Ends up to this far apart are joined and told, mm. */
export const joinMostMm = 0.5

/** Outlines whose longer side is outside these are asked about, mm. */
export const smallestMm = 1
export const largestMm = 20_000

/** How many findings of one kind are written out; the rest is counted. */
export const mostOfAKind = 20

/** INSERT within block within block; drawings nest two or three deep. */
export const mostNested = 16

/** Pieces that all blocks together come to once they are placed, copies of arrays included. */
export const mostPlaced = 100_000
