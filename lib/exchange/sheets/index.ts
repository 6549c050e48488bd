/** Sheets of a patch plan as PDF: the bench sheet and the ply templates true to size. */
export { benchSheet } from './bench-sheet'
export { type PaperName, paperNames, paperSizes } from './paper-sizes'
export { plyTemplates } from './ply-templates'
export type { PatchSheet, SheetSignature } from './types'
