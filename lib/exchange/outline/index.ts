/** Outlines from files and pasted text. */
export { readLoops, readOutline } from './read-outline'
export type {
  ChosenUnit,
  FileUnit,
  LayerFound,
  LoopReading,
  OutlineFile,
  OutlineReading,
  Verdict,
} from './types'
