import fc from 'fast-check'
import { expect, test } from 'vitest'
import {
  doubleLap,
  longDoubleLap,
  neededRatio,
  scarfAngleDeg,
  scarfStress,
  singleLap,
} from '#lib/core/joint/index'

const positive = (min: number, max: number) => fc.double({ min, max, noNaN: true })
const adherend = fc.record({
  eMPa: positive(5000, 200_000),
  thicknessMm: positive(0.3, 10),
  alphaPerK: positive(-1e-6, 3e-5),
})
const bond = fc.record({ gMPa: positive(100, 3000), thicknessMm: positive(0.05, 1) })

const mean = (at: (x: number) => number, length: number) => {
  const steps = 4000
  let sum = 0
  for (let step = 0; step < steps; step += 1) sum += at((-0.5 + (step + 0.5) / steps) * length)
  return sum / steps
}

test('a single lap hands over the whole load, whatever its sheets', () => {
  fc.assert(
    fc.property(adherend, adherend, bond, positive(2, 30), (one, other, line, length) => {
      const { atMPa, meanMPa, highestMPa } = singleLap(100, length, one, other, line)
      expect(mean(atMPa, length) / meanMPa).toBeCloseTo(1, 3)
      expect(highestMPa).toBeGreaterThanOrEqual(meanMPa * (1 - 1e-9))
    }),
  )
})

test('what the mismatch of a double lap does is balanced in itself, and nought where both grow alike', () => {
  fc.assert(
    fc.property(adherend, adherend, bond, positive(-150, 150), (outer, inner, line, change) => {
      const { byHeat } = doubleLap(100, 20, outer, inner, line, change)
      expect(byHeat.atMPa(-7)).toBeCloseTo(-byHeat.atMPa(7), 9)
      const alike = doubleLap(100, 20, outer, { ...inner, alphaPerK: outer.alphaPerK }, line, change)
      expect(alike.byHeat.highestMPa).toBe(0)
    }),
  )
})

test('the ratio that is needed has just the shear that is allowed', () => {
  fc.assert(
    fc.property(positive(10, 1000), positive(0.01, 0.49), (pull, share) => {
      const ratio = neededRatio(pull, pull * share) ?? Number.NaN
      expect(scarfStress(pull, scarfAngleDeg(ratio)).shearMPa / (pull * share)).toBeCloseTo(1, 9)
    }),
  )
  expect(neededRatio(10, 5)).toBeNull()
})

test('a long lap gives way at the softer side, and more yielding carries more', () => {
  const film = { yieldMPa: 40, elasticStrain: 0.05, plasticStrain: 0.5, thicknessMm: 0.125 }
  const thin = { eMPa: 50_000, thicknessMm: 1, alphaPerK: 0 }
  const thick = { eMPa: 50_000, thicknessMm: 8, alphaPerK: 0 }
  expect(longDoubleLap(thin, thick, film).endsAt).toBe('outer sheet')
  expect(longDoubleLap(thick, thin, film).endsAt).toBe('inner sheet')
  const more = longDoubleLap(thin, thick, { ...film, plasticStrain: 1 })
  expect(more.loadNPerMm).toBeGreaterThan(longDoubleLap(thin, thick, film).loadNPerMm)
})

test('what cannot be is refused with the figure', () => {
  const sheet = { eMPa: 70_000, thicknessMm: 1, alphaPerK: 0 }
  expect(() => scarfAngleDeg(0)).toThrow(/ratio must be above 0, got 0/)
  expect(() => neededRatio(100, 0)).toThrow(/0/)
  expect(() => singleLap(1, 0, sheet, sheet, { gMPa: 1, thicknessMm: 1 })).toThrow(/length of the lap/)
  expect(() => singleLap(1, 1, { ...sheet, eMPa: -1 }, sheet, { gMPa: 1, thicknessMm: 1 })).toThrow(/-1/)
})
