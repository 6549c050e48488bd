import { composed, identity, type Matrix, rotation, scaling, translation } from './matrix'

/** The transforms of an attribute, the last one done first. Null when one of them can't be read. */
export function transformOf(text: string): Matrix | null {
  let rest = text
  let all: Matrix = identity
  while (rest.trim() !== '') {
    const found = /^[\s,]*(matrix|translate|scale|rotate|skewX|skewY)\s*\(([^()]*)\)/.exec(rest)
    const values = found === null ? null : numbersOf(found[2]!)
    if (found === null || values === null) return null
    const matrix = matrixOf(found[1]!, values)
    if (matrix?.every(Number.isFinite) !== true) return null
    all = composed(all, matrix)
    rest = rest.slice(found[0].length)
  }
  return all
}

/** Numbers parted by blanks, a comma, or by their own sign or point, as SVG allows. Null when something else is there. */
export function numbersOf(text: string): readonly number[] | null {
  const number = /[-+]?(?:\d+\.?\d*|\.\d+)(?:[eE][-+]?\d+)?/y
  const between = /\s*,?\s*/y
  const end = text.trimEnd().length
  const values: number[] = []
  let at = text.length - text.trimStart().length
  while (at < end) {
    number.lastIndex = at
    const found = number.exec(text)
    if (found === null) return null
    values.push(Number(found[0]))
    between.lastIndex = number.lastIndex
    between.exec(text)
    at = between.lastIndex
    if (at >= end && text.slice(number.lastIndex, end).includes(',')) return null
  }
  return values
}

function matrixOf(name: string, values: readonly number[]): Matrix | null {
  const [p = 0, q, r] = values
  const count = values.length
  if (name === 'matrix') return count === 6 ? (values as unknown as Matrix) : null
  if (count === 0) return null
  if (name === 'translate') return count <= 2 ? translation(p, q ?? 0) : null
  if (name === 'scale') return count <= 2 ? scaling(p, q ?? p) : null
  if (name === 'skewX') return count === 1 ? [1, 0, Math.tan(radians(p)), 1, 0, 0] : null
  if (name === 'skewY') return count === 1 ? [1, Math.tan(radians(p)), 0, 1, 0, 0] : null
  if (count !== 1 && count !== 3) return null
  const about = rotation(p)
  if (q === undefined || r === undefined) return about
  return composed(translation(q, r), composed(about, translation(-q, -r)))
}

function radians(degrees: number): number {
  return (degrees * Math.PI) / 180
}
