import { figure } from '#lib/core/units'
import type { DxfBlock, DxfItem } from './dxf-blocks'
import { keyOf } from './dxf-layers'
import { lineName, Refused, stop } from './finding'
import { mostNested, mostPlaced } from './limits'

/** What a block comes to once it is placed. */
interface Weight {
  readonly pieces: number
  /** Blocks one within another, itself counted. */
  readonly levels: number
}

/**
 * Throws Refused before anything is placed when a block holds itself, when blocks lie too deep in one another, or when
 * they come to more pieces than are read. Each block is counted once, so that the largest figure is told at once.
 */
export function assertBlocksFit(items: readonly DxfItem[], blocks: ReadonlyMap<string, DxfBlock>): void {
  const known = new Map<DxfBlock, Weight>()
  let placed = 0
  for (const { insert } of items) {
    const block = insert === null ? undefined : blocks.get(keyOf(insert.block))
    if (insert === null || block === undefined) continue
    placed += insert.columns * insert.rows * (1 + weigh(block, [], insert.line).pieces)
    if (placed > mostPlaced) throw tooMany(placed, insert.line)
  }

  function weigh(block: DxfBlock, around: readonly DxfBlock[], line: number): Weight {
    if (around.includes(block)) throw inItself([...around.slice(around.indexOf(block)), block], line)
    const before = known.get(block)
    const levels = around.length + (before?.levels ?? 1)
    if (levels > mostNested) throw tooDeep(block, line)
    if (before !== undefined) return before
    let [pieces, deepest] = [0, 0]
    for (const { insert } of block.items()) {
      const inner = insert === null ? undefined : blocks.get(keyOf(insert.block))
      pieces += 1
      if (insert === null || inner === undefined) continue
      const weight = weigh(inner, [...around, block], insert.line)
      pieces += insert.columns * insert.rows * (1 + weight.pieces)
      deepest = Math.max(deepest, weight.levels)
    }
    const weight = { pieces, levels: deepest + 1 }
    known.set(block, weight)
    return weight
  }
}

const explode = 'In the drawing program keep the outline alone, its blocks exploded, then save the DXF again.'

function tooMany(pieces: number, line: number): Refused {
  return new Refused(
    stop(
      'blocks-too-many',
      `Once placed, the blocks come to ${pieces < 1e15 ? figure(pieces, 0) : pieces.toExponential(2)} pieces or more; at most ${mostPlaced} are read.`,
      lineName(line),
      explode,
      { pieces, mostPlaced, line },
    ),
  )
}

function tooDeep({ name }: DxfBlock, line: number): Refused {
  return new Refused(
    stop(
      'blocks-too-deep',
      `Block ${name.slice(0, 60)} lies in more than ${mostNested - 1} others, one within another; at most ${mostNested} levels are read.`,
      lineName(line),
      explode,
      { mostNested, line },
    ),
  )
}

function inItself(ring: readonly DxfBlock[], line: number): Refused {
  return new Refused(
    stop(
      'block-in-itself',
      `A block holds itself: ${ring.map(({ name }) => name.slice(0, 60)).join(' > ')}.`,
      lineName(line),
      'The file is damaged: mend or explode the block in the drawing program, then save the DXF again.',
      { line },
    ),
  )
}
