/** A mould of several pieces: what holds of the whole. */
export { type MassCheck, massCheck } from './mass-check'
