import {
  Clipper64,
  ClipperOffset,
  ClipType,
  EndType,
  FillRule,
  JoinType,
  type Path64,
  type PolyPath64,
  PolyTree64,
} from 'clipper2-ts'
import { loopArea } from './loop'
import { loopsOf, orientRegion } from './region'
import { chordErrorMm, crumbMm2, gridMm } from './tolerance'
import type { Loop, Region } from './types'

/**
 * The only file that knows the clipping library. It works on whole numbers, so outlines are laid on a grid of
 * 0.0001 mm; round joins get chords of at most `chordErrorMm`, one grid step kept back for the rounding.
 */

const perMm = 1 / gridMm

/** Beyond this the library's whole numbers lose their last digits, mm. */
const farthestMm = 100_000

const arcTolerance = chordErrorMm * perMm - 1

export type Combination = 'union' | 'difference' | 'intersection'

/** even-odd: an area run round twice is outside; non-zero: it is inside. */
export type Filling = 'even-odd' | 'non-zero'

/** Clean regions made of two sets, holes sorted to their outlines. RangeError on points that are no numbers. */
export function combine(
  combination: Combination,
  subjects: readonly Region[],
  clips: readonly Region[],
): readonly Region[] {
  return run(combination, pathsOf(subjects), pathsOf(clips), 'non-zero')
}

/** The pieces that a loop, crossing itself or not, encloses. */
export function enclosed(loop: Loop, filling: Filling): readonly Region[] {
  return run('union', [pathOf(loop)], [], filling)
}

/**
 * True offset with round joins: outwards when `mm` is positive. The regions must be clean (as `combine` leaves them),
 * which fixes which way their loops run.
 */
export function offset(regions: readonly Region[], mm: number): readonly Region[] {
  if (!Number.isFinite(mm)) throw new RangeError(`an offset must be a number of mm, got ${mm}`)
  if (Math.abs(mm) < gridMm || regions.length === 0) return regions
  const tool = new ClipperOffset(2, Math.min(arcTolerance, (Math.abs(mm) * perMm) / 4))
  tool.addPaths(pathsOf(regions), JoinType.Round, EndType.Polygon)
  const tree = new PolyTree64()
  tool.execute(mm * perMm, tree)
  return regionsOf(tree)
}

function run(
  combination: Combination,
  subjects: Path64[],
  clips: Path64[],
  filling: Filling,
): readonly Region[] {
  const tool = new Clipper64()
  tool.addSubject(subjects)
  if (clips.length > 0) tool.addClip(clips)
  const tree = new PolyTree64()
  const type = { union: ClipType.Union, difference: ClipType.Difference, intersection: ClipType.Intersection }
  tool.execute(type[combination], filling === 'non-zero' ? FillRule.NonZero : FillRule.EvenOdd, tree)
  return regionsOf(tree)
}

function pathsOf(regions: readonly Region[]): Path64[] {
  return loopsOf(regions.map(orientRegion)).map(pathOf)
}

function pathOf(loop: Loop): Path64 {
  return loop.map(([u, v], index) => {
    if (!(Math.abs(u) <= farthestMm && Math.abs(v) <= farthestMm)) {
      throw new RangeError(
        `point ${index + 1} of an outline must lie within ${farthestMm} mm, got (${u}, ${v})`,
      )
    }
    return { x: Math.round(u * perMm), y: Math.round(v * perMm) }
  })
}

/** Outlines and holes alternate down the tree: islands in a hole are regions of their own. */
function regionsOf(parent: PolyPath64): Region[] {
  return childrenOf(parent).flatMap((outer) => {
    const holes = childrenOf(outer)
    const islands = holes.flatMap(regionsOf)
    const loop = loopOf(outer)
    if (loopArea(loop) < crumbMm2) return islands
    const kept = holes.map(loopOf).filter((hole) => loopArea(hole) >= crumbMm2)
    return [orientRegion({ outer: loop, holes: kept }), ...islands]
  })
}

function childrenOf(parent: PolyPath64): PolyPath64[] {
  return Array.from({ length: parent.count }, (_, index) => parent.child(index))
}

/** Dividing by a whole number gives the decimal that is nearest; adding 0 turns -0 into 0. */
function loopOf(node: PolyPath64): Loop {
  return (node.poly ?? []).map(({ x, y }) => [x / perMm + 0, y / perMm + 0] as const)
}
