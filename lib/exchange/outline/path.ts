import { distanceBetweenPoints, type Point, samePointMm } from '#lib/core/geometry/index'

/** A corner with the bulge of the edge that leaves it: the tangent of a quarter of its sweep, 0 when straight. */
export interface Vertex {
  readonly at: Point
  readonly bulge: number
}

/** One drawn piece: a line, an arc, a circle or a polyline, in mm. */
export interface Path {
  /** As the file calls it: LINE, ARC, path ... */
  readonly entity: string
  readonly line: number
  readonly layer: string
  readonly vertices: readonly Vertex[]
  readonly closed: boolean
  /** Its vertices are points of curves that were flattened. */
  readonly curved?: true
  /** Lowest and highest z, mm. */
  readonly heightsMm: readonly [number, number]
}

export interface Edge {
  readonly from: Point
  readonly to: Point
  readonly bulge: number
}

/** Edges in drawn order; a closed path's last one leads back to its first corner. */
export function edgesOfPath({ vertices, closed }: Pick<Path, 'vertices' | 'closed'>): readonly Edge[] {
  const count = closed ? vertices.length : vertices.length - 1
  return vertices.slice(0, count).map(({ at, bulge }, index) => {
    return { from: at, to: vertices[(index + 1) % vertices.length]!.at, bulge }
  })
}

/** "LINE on layer CUT"; a drawing without layers has but the piece. */
export function pathName({ entity, layer }: Pick<Path, 'entity' | 'layer'>): string {
  return layer === '' ? entity : `${entity} on layer ${layer}`
}

/**
 * The path without vertices that repeat the one before, nor, when it is closed, a last one that lies within the
 * tolerance of the first. `repeats` counts them. A path without length keeps one vertex.
 */
export function withoutRepeats(
  path: Path,
  toleranceMm: number,
): { readonly path: Path; readonly repeats: number } {
  const kept: Vertex[] = []
  for (const vertex of path.vertices) {
    // The edge that leaves the last of equal vertices is the one that is drawn.
    if (kept.length > 0 && distanceBetweenPoints(kept.at(-1)!.at, vertex.at) <= samePointMm) kept.pop()
    kept.push(vertex)
  }
  if (path.closed && kept.length > 1) {
    if (distanceBetweenPoints(kept[0]!.at, kept.at(-1)!.at) <= toleranceMm) kept.pop()
  }
  return { path: { ...path, vertices: kept }, repeats: path.vertices.length - kept.length }
}

/** Whether a path goes nowhere: all of its vertices lie within the tolerance of the first. */
export function isLengthless({ vertices }: Path, toleranceMm: number): boolean {
  const first = vertices[0]!.at
  return vertices.every(({ at }) => distanceBetweenPoints(first, at) <= toleranceMm)
}
