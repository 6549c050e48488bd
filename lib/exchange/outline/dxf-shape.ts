import type { Point } from '#lib/core/geometry/index'
import type { DxfEntity } from './dxf-sections'
import type { Ellipse } from './ellipse'
import type { Vertex } from './path'
import type { Spline } from './spline'

/** Where a shape runs, in the numbers of its drawing or block. */
export type Course =
  | { readonly kind: 'corners'; readonly vertices: readonly Vertex[] }
  | { readonly kind: 'ellipse'; readonly ellipse: Ellipse }
  | { readonly kind: 'spline'; readonly spline: Spline }

/** One drawn entity in the numbers of its drawing or block: neither unit nor INSERT is applied yet. */
export interface DxfShape {
  readonly entity: string
  readonly line: number
  readonly course: Course
  readonly closed: boolean
  /** Lowest and highest z. */
  readonly heights: readonly [number, number]
  /** Given in axes that are seen from behind: x and z run the other way. */
  readonly mirrored: boolean
}

export function cornered(
  entity: DxfEntity,
  vertices: readonly Vertex[],
  { closed, heights, mirrored }: { closed: boolean; heights: readonly number[]; mirrored: boolean },
): DxfShape {
  return { ...named(entity), course: { kind: 'corners', vertices }, closed, heights: span(heights), mirrored }
}

export function named(entity: DxfEntity): Pick<DxfShape, 'entity' | 'line'> {
  return { entity: entity.type, line: entity.line }
}

/** Lowest and highest of the heights, 0 when there are none. */
export function span(heights: readonly number[]): readonly [number, number] {
  const first = heights[0] ?? 0
  return [heights.reduce((a, b) => Math.min(a, b), first), heights.reduce((a, b) => Math.max(a, b), first)]
}

export function corner(at: Point): Vertex {
  return { at, bulge: 0 }
}
