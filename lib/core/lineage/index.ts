/** Which mould came off which pattern, and what is lost for good when it is lost. */
export {
  type Irreplaceable,
  isCutting,
  isRisky,
  mouldLost,
  type PatternLeft,
  patternLost,
  riskyKinds,
} from './made-again'
