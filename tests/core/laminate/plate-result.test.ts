import { expect, test } from 'vitest'
import { type EnteredLayer, plateResult } from '#lib/core/laminate/plate/index'
import { workedOut } from '#tests/support/worked-out'

const lamina = {
  e1MPa: 181_000,
  e2MPa: 10_300,
  g12MPa: 7170,
  nu12: 0.28,
  alpha1PerK: 0.02e-6,
  alpha2PerK: 22.5e-6,
}
const stack = (...directions: number[]): EnteredLayer[] =>
  directions.map((directionDeg) => ({ lamina, directionDeg, thicknessMm: 0.5, weave: 'as measured' }))

test('every line of working of a stack that is not mirrored comes to its value', () => {
  const { working } = plateResult({ layers: stack(0, 30, -45), changeK: -75 })
  for (const line of working) {
    expect(Math.abs(workedOut(line) / line.value - 1), `${line.symbol} = ${line.numbers}`).toBeLessThan(0.003)
  }
  expect(working.map(({ symbol }) => symbol)).toEqual(
    expect.arrayContaining(['Q11', 'A11', 'B11', 'D22', 'Ex', 'alpha_y', 'k_x']),
  )
})

test('of a long stack the first layers are written out, and how many follow', () => {
  const { working } = plateResult({ layers: stack(...Array.from({ length: 20 }, () => 0)), changeK: null })
  const line = working.find(({ symbol }) => symbol === 'A11')
  expect(line?.numbers).toMatch(/ \+ 8 more$/)
  expect(working.some(({ symbol }) => symbol === 'k_x')).toBe(false)
})
