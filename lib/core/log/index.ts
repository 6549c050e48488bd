/** The log of a mould: what its entries mean, the state that follows, what must be settled before the next lay-up. */
export { beforeLayUp, leakLossMbar, type Matter } from './before-lay-up'
export { holdingStates, type MouldStanding, mouldStanding } from './state'
export { pullStrokes, type StripMarks } from './strip'
export * from './types'
export { entryWords, kindNames } from './words'
