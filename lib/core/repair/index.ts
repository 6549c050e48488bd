/** Patch planning: plies, outlines, taper, checks, take-off, job lines, and the states of a plan. */
export { type OpeningShape, openingRegion } from './opening'
export { planPatch } from './plan-patch'
export {
  type Allowed,
  becauseKey,
  type MoveFacts,
  mayMove,
  movesFrom,
  type PlanState,
  planStates,
  signable,
} from './plan-state'
export { ratioOfStep, scarfAngleDeg, taperLengthMm } from './scarf'
export type * from './types'
export { defaultRepairRules, edges, sides } from './types'
export { edgeWords, sideWords } from './words'
