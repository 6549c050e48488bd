/** Stores: how lots stand, what has to be told, what is in force on a day. */
export {
  amountText,
  leastAmount,
  type ParsedAmount,
  parseAmount,
  rollAreaM2,
  type StockUnit,
  stockUnits,
  unitWords,
} from './amount'
export { type StockCover, stockCover, type Taking, takingFindings } from './cover'
export { type DatedLine, inForceOn, isPutRight, latestFirst, sumByCurrency } from './dated'
export { hoursBetween } from './freezer'
export {
  byUse,
  type LotFacts,
  type LotReason,
  type LotStanding,
  type LotState,
  lotStanding,
  lotStates,
  soonDays,
} from './lot'
export { type StockMatter, type StockSubject, stockMatters, usableStock } from './matters'
export { type UsualOperation, usualOperations } from './operations'
export { type LotOption, lotOption } from './option'
export {
  type Basis,
  bases,
  basisWords,
  type Closing,
  type Container,
  closings,
  containers,
  type MoveKind,
  moveKinds,
  type ProductUse,
  perUnitWords,
  productUses,
  productUseWords,
  usesOfKind,
} from './words'
