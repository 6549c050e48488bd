import type { PdfPage, PdfPath } from '#tests/support/pdf'

export function extent(path: PdfPath) {
  const x = path.points.map((point) => point[0])
  const y = path.points.map((point) => point[1])
  return { width: Math.max(...x) - Math.min(...x), height: Math.max(...y) - Math.min(...y) }
}

/** Lengths of the straight strokes along one axis that could be a 100 mm check bar, in points. */
export function barsOf(page: PdfPage, axis: 'across' | 'upright'): readonly number[] {
  const [wanted, slackPt] = [(100 * 72) / 25.4, 0.5]
  return page.paths
    .filter((path) => path.stroked && path.points.length === 2)
    .map((path) => extent(path))
    .filter(({ width, height }) => (axis === 'across' ? height < 1e-3 : width < 1e-3))
    .map(({ width, height }) => Math.max(width, height))
    .filter((length) => Math.abs(length - wanted) < slackPt)
}
