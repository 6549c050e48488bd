/**
 * R. J. Crawford, Plastics Engineering, chapter 3, example 3.1. Published: density of the composite seen, densities
 * of glass and epoxy from memory, outputs confirmed by recomputation.
 */
import { expect, test } from 'vitest'
import { fibreSharesFromDensity } from '#lib/core/laminate/index'
import { toInside } from '#lib/core/units'

test('PT-02: 1950 kg/m3 of glass 2540 in epoxy 1300 is 0.524 by volume, 0.683 by mass, to 0.5 %', () => {
  const [composite, glass, epoxy] = [1950, 2540, 1300].map((each) => toInside(each, 'density', 'kg/m3'))
  const shares = fibreSharesFromDensity(composite!, glass!, epoxy!)
  expect(Math.abs(shares.byVolume / 0.524 - 1)).toBeLessThan(0.005)
  expect(Math.abs(shares.byMass / 0.683 - 1)).toBeLessThan(0.005)
})
