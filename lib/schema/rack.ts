/** What the rack can be sorted by. */
export const rackSorts = ['code', 'state', 'pulls', 'coated', 'leak', 'next', 'place'] as const
export type RackSort = (typeof rackSorts)[number]
