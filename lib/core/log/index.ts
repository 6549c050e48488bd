/** The log of a mould: what its entries mean, the state that follows, what must be settled before the next lay-up. */
export { beforeLayUp } from './before-lay-up'
export { leakLossMbar } from './leak-matters'
export type { Matter } from './matter'
export { holdingStates, type MouldStanding, mouldStanding } from './state'
export { pullStrokes, type StripMarks } from './strip'
export * from './types'
export { entryWords, kindNames } from './words'
