interface TaggedPoint {
  readonly tag: string
  readonly uMm: number
  readonly vMm: number
  readonly diameterMm: number
}

export interface TagComparison {
  readonly kept: readonly string[]
  readonly moved: readonly { readonly tag: string; readonly byMm: number }[]
  readonly resized: readonly string[]
  readonly added: readonly string[]
  readonly gone: readonly string[]
}

/** Coordinates as written differ in their last digit at most by this, mm. */
const sameMm = 0.0005

/** Two issues of a mould's points compared by tag alone, without regard to case. */
export function compareTags(before: readonly TaggedPoint[], after: readonly TaggedPoint[]): TagComparison {
  const key = (point: TaggedPoint) => point.tag.trim().toLowerCase()
  const old = new Map(before.map((point) => [key(point), point]))
  const now = new Set(after.map(key))
  const moved: { tag: string; byMm: number }[] = []
  const kept: string[] = []
  const resized: string[] = []
  const added: string[] = []
  for (const point of after) {
    const was = old.get(key(point))
    if (!was) {
      added.push(point.tag)
      continue
    }
    const byMm = Math.hypot(point.uMm - was.uMm, point.vMm - was.vMm)
    if (byMm > sameMm) moved.push({ tag: point.tag, byMm })
    else if (Math.abs(point.diameterMm - was.diameterMm) > sameMm) resized.push(point.tag)
    else kept.push(point.tag)
  }
  return {
    kept,
    moved,
    resized,
    added,
    gone: before.filter((point) => !now.has(key(point))).map((point) => point.tag),
  }
}
