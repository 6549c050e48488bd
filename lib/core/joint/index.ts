/** Bonded joints by elementary methods: a screen, never an approval. */
export { type JoinFigures, type JoinInput, joinResult } from './join-result'
export {
  type Adherend,
  type BondLine,
  type DoubleLap,
  doubleLap,
  type LapShear,
  type LongLap,
  longDoubleLap,
  singleLap,
  type YieldingBond,
} from './lap'
export {
  neededRatio,
  type ScarfStress,
  scarfAngleDeg,
  scarfStress,
  stepShearMPa,
} from './scarf'
