/** Locating points: tables as they are pasted, issues compared. */
export { compareTags, type TagComparison } from './compare-tags'
export { type PastedRows, type PointRow, pastedRows } from './pasted-rows'
