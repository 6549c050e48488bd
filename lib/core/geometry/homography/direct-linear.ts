import { mostShortened } from '../../linear-algebra'
import type { Point } from '../types'
import { type Projection, projectionOf } from './projection'

/**
 * The direct linear transform (Hartley and Zisserman, algorithm 4.2, the part between its normalisations): two rows for each
 * pair, and the figures that satisfy them best by the algebraic distance. Exact for four pairs of which no three lie in a line.
 */
export function directLinear(from: readonly Point[], to: readonly Point[]): Projection {
  const rows = from.flatMap(([x, y], index) => {
    const [u, v] = to[index]!
    return [
      [x, y, 1, 0, 0, 0, -u * x, -u * y, -u],
      [0, 0, 0, x, y, 1, -v * x, -v * y, -v],
    ]
  })
  return projectionOf(mostShortened(rows))
}
