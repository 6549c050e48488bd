import { expect, test } from 'vitest'
import { type JoinInput, joinResult } from '#lib/core/joint/index'
import { workedOut } from '#tests/support/worked-out'

const thin = { eMPa: 70_000, thicknessMm: 1.6, alphaPerK: 23e-6 }
const thick = { eMPa: 50_000, thicknessMm: 4, alphaPerK: 3e-6 }
const bond = { gMPa: 1000, thicknessMm: 0.2 }
const film = { yieldMPa: 40, elasticStrain: 0.05, plasticStrain: 0.5, thicknessMm: 0.125 }

const inputs: readonly JoinInput[] = [
  { kind: 'scarf', pullMPa: 400, ratio: 20, allowedShearMPa: 15 },
  { kind: 'steps', pullMPa: 500, plyThicknessMm: 0.25, stepMm: 12.7, allowedShearMPa: 20 },
  { kind: 'single lap', loadNPerMm: 100, lengthMm: 12.5, sheets: [thin, thick], bond },
  { kind: 'double lap', loadNPerMm: 100, lengthMm: 12.5, outer: thin, inner: thick, bond, changeK: -100 },
  { kind: 'long double lap', outer: thin, inner: thick, bond: film },
  { kind: 'long double lap', outer: thick, inner: thin, bond: film },
]

test.each(inputs)('every line of working of a $kind comes to its value', (input) => {
  const { working } = joinResult(input)
  expect(working.length).toBeGreaterThan(0)
  for (const line of working) {
    const found = workedOut(line) * (line.unit === '°' ? 180 / Math.PI : 1)
    expect(Math.abs(found / line.value - 1), `${line.symbol} = ${line.numbers}`).toBeLessThan(0.003)
  }
})

test('what is over the allowable wants a look, with the ratio that would do', () => {
  const { findings } = joinResult({ kind: 'scarf', pullMPa: 400, ratio: 20, allowedShearMPa: 15 })
  expect(findings.map(({ code, severity }) => `${code}: ${severity}`)).toEqual([
    'joint-screen: note',
    'joint-shear-over: look',
  ])
  expect(findings[1]?.cure).toMatch(/26\.\d to 1/)
})
