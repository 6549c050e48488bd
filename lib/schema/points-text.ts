import { parseQuantity } from '#lib/core/units'

export type PointsText =
  | { readonly ok: true; readonly points: readonly (readonly [number, number])[] }
  | { readonly ok: false; readonly reason: string }

/** Points written a line each, "u; v" or "u v", with or without units. The line with a fault is named. */
export function pointsOfText(text: string): PointsText {
  const points: (readonly [number, number])[] = []
  for (const [index, line] of text.split(/\r\n|\r|\n/).entries()) {
    if (line.trim() === '') continue
    const cells = line.includes(';')
      ? line.split(';')
      : line.includes('\t')
        ? line.split('\t')
        : line.trim().split(/\s+/)
    const [u, v] = cells.map((cell) => parseQuantity(cell, 'length'))
    if (cells.length !== 2 || !u || !v) {
      return { ok: false, reason: `Line ${index + 1}, "${line.trim()}": give u and v, parted by a semicolon` }
    }
    if (!u.ok) return { ok: false, reason: `Line ${index + 1}, u: ${u.reason}` }
    if (!v.ok) return { ok: false, reason: `Line ${index + 1}, v: ${v.reason}` }
    points.push([u.value, v.value])
  }
  return { ok: true, points }
}

export function textOfPoints(points: readonly (readonly [number, number])[]): string {
  return points.map(([u, v]) => `${Math.round(u * 1000) / 1000}; ${Math.round(v * 1000) / 1000}`).join('\n')
}
