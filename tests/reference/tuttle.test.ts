/**
 * M. E. Tuttle, Structural Analysis of Polymeric Composite Materials: a published solution for [30/0/90]; the figure seen in
 * part (107... GPa), data of graphite and epoxy from memory, confirmed by recomputation (107.6). Tolerance 0.5 %.
 */
import { expect, test } from 'vitest'
import { turnedStiffness } from '#lib/core/laminate/plate/index'

test('CL-20: stiffness along the plate of a ply at 30 degrees: 107.6 GPa', () => {
  const lamina = { e1MPa: 170_000, e2MPa: 10_000, g12MPa: 13_000, nu12: 0.3, alpha1PerK: 0, alpha2PerK: 0 }
  expect(Math.abs(turnedStiffness(lamina, 30).q11 / 107_600 - 1)).toBeLessThanOrEqual(0.005)
})
