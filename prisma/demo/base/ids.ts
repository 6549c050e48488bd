import { createHash } from 'node:crypto'

/** The id that a name has in the demo shop: shaped like a random uuid, the same at every load. */
export function idOf(name: string): string {
  const hex = createHash('sha256').update(`lanternfish-solar/${name}`).digest('hex')
  const variant = '89ab'[Number.parseInt(hex.charAt(16), 16) % 4]
  return `${hex.slice(0, 8)}-${hex.slice(8, 12)}-4${hex.slice(13, 16)}-${variant}${hex.slice(17, 20)}-${hex.slice(20, 32)}`
}

/** Whole numbers from `low` to `high` that look random and are the same at every load for the same seed. */
export function drawer(seed: string): (low: number, high: number) => number {
  let state = createHash('sha256').update(seed).digest().readUInt32LE(0)
  return (low, high) => {
    // mulberry32: a 32-bit generator of a few lines, plenty for small variations of a story.
    state = (state + 0x6d2b79f5) | 0
    let mixed = Math.imul(state ^ (state >>> 15), 1 | state)
    mixed = (mixed + Math.imul(mixed ^ (mixed >>> 7), 61 | mixed)) ^ mixed
    const share = ((mixed ^ (mixed >>> 14)) >>> 0) / 4294967296
    return low + Math.floor(share * (high - low + 1))
  }
}
