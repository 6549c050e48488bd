import type { Item, PathItem } from './types'

/**
 * Neighbouring lines of one look drawn as one: a strip of a hundred strokes becomes a handful of shapes. Filled shapes stay
 * apart, since where they overlap the even-odd rule would leave a hole.
 */
export function joinedPaths(items: readonly Item[]): readonly Item[] {
  const joined: Item[] = []
  for (const item of items) {
    const last = joined.at(-1)
    if (last?.kind === 'path' && item.kind === 'path' && sameLook(last, item)) {
      joined[joined.length - 1] = { ...last, lines: [...last.lines, ...item.lines] }
    } else joined.push(item)
  }
  return joined
}

function sameLook(a: PathItem, b: PathItem): boolean {
  return (
    a.fill === 'none' &&
    b.fill === 'none' &&
    a.closed === b.closed &&
    a.style === b.style &&
    a.role === b.role
  )
}
