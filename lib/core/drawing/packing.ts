/** A block to be put on a sheet, in any one unit. */
export interface Block {
  readonly width: number
  readonly height: number
}

export interface Packed {
  /** Left and top of each block, in the order in which they came. */
  readonly places: readonly { readonly left: number; readonly top: number }[]
  readonly width: number
  readonly height: number
}

interface Placed extends Block {
  readonly left: number
  readonly top: number
}

/**
 * Blocks beside and below each other in a strip of a given width, upright as they are, as low as they go. Tried with the tallest, the widest
 * and the first first; the lowest pile counts. Null when a block is wider than the strip.
 */
export function packBlocks(blocks: readonly Block[], width: number): Packed | null {
  if (blocks.some((block) => block.width > width * (1 + 1e-9))) return null
  const numbered = blocks.map((block, index) => ({ block, index }))
  const orders = [
    numbered,
    [...numbered].sort((a, b) => b.block.height - a.block.height || a.index - b.index),
    [...numbered].sort((a, b) => b.block.width - a.block.width || a.index - b.index),
  ]
  let best: Packed | null = null
  for (const order of orders) {
    const packed = pile(order, width)
    if (best === null || packed.height < best.height - 1e-9) best = packed
  }
  return best
}

function pile(order: readonly { readonly block: Block; readonly index: number }[], width: number): Packed {
  const placed: Placed[] = []
  const places: { left: number; top: number }[] = order.map(() => ({ left: 0, top: 0 }))
  for (const { block, index } of order) {
    const spot = lowest(block, placed, width)
    placed.push({ ...block, ...spot })
    places[index] = spot
  }
  return {
    places,
    width: placed.reduce((most, block) => Math.max(most, block.left + block.width), 0),
    height: placed.reduce((most, block) => Math.max(most, block.top + block.height), 0),
  }
}

/** Where a block ends highest up when it is let down from below against what lies there; the leftmost of several. */
function lowest(block: Block, placed: readonly Placed[], width: number): { left: number; top: number } {
  const lefts = [0, ...placed.map((other) => other.left + other.width)].sort((a, b) => a - b)
  let best: { left: number; top: number } | null = null
  for (const left of lefts) {
    if (left + block.width > width * (1 + 1e-9)) continue
    const top = placed
      .filter((other) => other.left < left + block.width - 1e-9 && left < other.left + other.width - 1e-9)
      .reduce((most, other) => Math.max(most, other.top + other.height), 0)
    if (best === null || top < best.top - 1e-9) best = { left, top }
  }
  return best ?? { left: 0, top: 0 }
}
