/** Materials and stacks: cured ply thickness, fibre content, thickness of a stack, is it mirrored. */
export { meanThicknessMm } from './measured'
export { isMirrored } from './mirror'
export { type FibreShares, fibreSharesFromDensity, mixture } from './mixture'
export { assumedResinDensityGcm3, type CuredPly, curedPly } from './ply'
export { type StackedPly, type StackUp, stackUp } from './stack'
export type { CureCycle, CureSegment, FibreContent, Ply, PlyMaterial } from './types'
