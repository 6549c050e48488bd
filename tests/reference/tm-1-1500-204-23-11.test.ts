/** US Army TM 1-1500-204-23-11, pages 172 and 205. Published: 22 inHg = 10.8 psi seen; 20 inHg recomputed. */
import { expect, test } from 'vitest'
import { fromInside, toInside } from '#lib/core/units'

test.each([
  [22, 10.8],
  [22, 10.806],
  [20, 9.823],
])('VM-02: %f inHg is %f psi, to 0.1 %%', (inHg, psi) => {
  const found = fromInside(toInside(inHg, 'pressure', 'inHg'), 'pressure', 'psi')
  expect(Math.abs(found / psi - 1)).toBeLessThan(0.001)
})
