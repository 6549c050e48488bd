/** The shop's seasons. */
export { type SeasonDays, type SeasonSeam, seasonSeams } from './overlaps'
export { seasonOn } from './season-on'
