/** Plate mechanics: classical laminate theory, expansion and warp. */
export { type PlateConstants, plateConstants } from './constants'
export {
  checkLamina,
  type Lamina,
  type PlaneStiffness,
  reducedStiffness,
  turnedExpansion,
  turnedStiffness,
} from './lamina'
export type { Matrix3, Row3 } from './matrix'
export { type EnteredLayer, type PlateFigures, type PlateInput, plateResult } from './plate-result'
export {
  crossedLayers,
  type PlateCompliance,
  type PlateLayer,
  type PlateStiffness,
  plateCompliance,
  plateStiffness,
} from './stiffness'
export { type ThermalAnswer, thermalAnswer } from './thermal'
