/** Outlines in the plane of a face: measures, offsets, booleans, distances, placing. All lengths in mm. */
export { type Arc, arcByAngles, arcByBulge, flattenArc, flattenBulge } from './arc'
export { areaOutside, difference, intersection, union } from './combine'
export { openInsideCorners } from './corners'
export { crossings, type SelfCrossing, selfCrossings } from './crossings'
export {
  distanceBetweenLoops,
  distanceToLoop,
  nearestToPath,
  nearestToPoint,
  nearestToRegion,
} from './distance'
export { grow, growSteps, steppedErrorMm, stepSimplificationMm } from './grow'
export { pointInLoop, pointInRegion, type Whereabouts, whereInLoop } from './inside'
export { lobes } from './lobes'
export { cellOf, columnName, type GridStrip, type GridStrips, gridStrips, rowName } from './location-grid'
export {
  clockwise,
  counterClockwise,
  distanceBetweenPoints,
  dropRepeatedPoints,
  loopArea,
  loopBounds,
  loopPerimeter,
  signedArea,
} from './loop'
export { meetingGrowthMm } from './meeting-growth'
export { type OutlineMeasures, outlineMeasures } from './outline-measures'
export { leastSignedDistance, overrun } from './overrun'
export { middleOfLoop, type NamedArea, type NearDowel, nearestDowel, placeWords } from './place-words'
export { asDrawn, inversePlacement, type Placement, placeLoop, placePoint, placeRegion } from './placement'
export { area, area as regionsArea, bounds, orientRegion, perimeter } from './region'
export type { Nearest } from './segment'
export { circle, roundedRectangle } from './shapes'
export { simplify, simplifyRegion } from './simplify'
export { type SnapLine, type SnapPoint, type SnapTargets, snapTargets } from './snap-targets'
export { type SnapFrom, type Snapped, snap } from './snapping'
export { chordErrorMm, gridMm, samePointMm } from './tolerance'
export type { Bounds, Loop, Point, Region } from './types'
export { uncrossed } from './uncross'
