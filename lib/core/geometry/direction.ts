import type { Point } from './types'

/** Unit vector at an angle from u, positive towards v. Quarter turns are exact, where sin and cos leave 6e-17. */
export function unitVector(angleRad: number): Point {
  const quarters = angleRad / (Math.PI / 2)
  const whole = Math.round(quarters)
  if (Math.abs(quarters - whole) > 1e-12) return [Math.cos(angleRad), Math.sin(angleRad)]
  const exact: readonly Point[] = [
    [1, 0],
    [0, 1],
    [-1, 0],
    [0, -1],
  ]
  return exact[((whole % 4) + 4) % 4]!
}
