/** W. D. Callister, Materials Science and Engineering, problem 16.8. Published: inputs and output both seen. */
import { expect, test } from 'vitest'
import { mixture } from '#lib/core/laminate/index'
import { sources } from '#lib/core/sources'

test('PT-01: 45 % aramid of 131 GPa in polycarbonate of 2.4 GPa is 60.27 GPa along the fibre, to 0.1 %', () => {
  expect(Math.abs(mixture(0.45, 131, 2.4) / 60.27 - 1)).toBeLessThan(0.001)
  expect(sources.callister.kind).toBe('published')
})
