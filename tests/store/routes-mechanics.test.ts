import { describe, expect, test } from 'vitest'
import { JoinAnswer, PlateAnswer } from '#lib/schema/answers/mechanics'
import { joinExample, plateExample } from '#lib/web/openapi/examples'
import * as joinRoute from '../../app/api/v1/compute/join/route'
import * as plateRoute from '../../app/api/v1/compute/plate/route'
import { book } from './book'
import { answered, post, problem, withTokens } from './calls'

book()
withTokens()

const sheet = { eMPa: 70_000, thicknessMm: 1.6 }

describe('POST compute/plate', () => {
  const call = async (body: object) => answered(await plateRoute.POST(post('/', body)), PlateAnswer)

  test('the textbook stack (Kaw, CL-09): its moduli with their working; mirrored, so without a finding', async () => {
    const { working, findings, ...value } = await call(plateExample)
    expect(value.constants.exMPa / 124_500).toBeCloseTo(1, 3)
    expect(value.constants.eyMPa / 67_430).toBeCloseTo(1, 3)
    expect(working.find(({ symbol }) => symbol === 'Ex')?.value).toBe(value.constants.exMPa)
    expect(working.every(({ sourceId }) => sourceId === 'kaw-mechanics')).toBe(true)
    expect(findings).toEqual([])
    expect(Math.abs(value.thermal?.curvaturesPerMm[0] ?? 1)).toBeLessThan(1e-12)
  })

  test('a stack that is not mirrored warps, and is told so', async () => {
    const { findings, ...value } = await call({ ...plateExample, layers: plateExample.layers.slice(0, 2) })
    expect(value.thermal?.curvaturesPerMm[0]).toBeCloseTo(-0.1276e-3, 6)
    expect(findings.map(({ code }) => code)).toEqual(['plate-not-mirrored'])
  })

  test('a weave as two crossed layers is alike along and across in the plane', async () => {
    const [layer] = plateExample.layers
    const value = await call({ layers: [{ ...layer, weave: 'two crossed layers' }] })
    expect(value.a[0][0]).toBeCloseTo(value.a[1][1], 6)
    expect(value.thermal).toBeNull()
  })

  test('nonsense is refused with the place, and what no material can be with the figure', async () => {
    const [layer] = plateExample.layers
    const wrong = await problem(
      await plateRoute.POST(post('/', { layers: [{ ...layer, thicknessMm: 0 }] })),
      422,
    )
    expect(Object.keys(wrong.fields ?? {})).toEqual(['layers.0.thicknessMm'])
    const lamina = { ...layer?.lamina, nu12: 4.9 }
    const impossible = await problem(
      await plateRoute.POST(post('/', { layers: [{ ...layer, lamina }] })),
      422,
    )
    expect(impossible.detail).toMatch(/nu12 must lie within/)
    await problem(await plateRoute.POST(post('/', { layers: [] })), 422)
  })
})

describe('POST compute/join', () => {
  const call = async (body: object) => answered(await joinRoute.POST(post('/', body)), JoinAnswer)

  test('a scarf: the ratio that is needed (SS-10: 19.95) and the caution that it is a screen', async () => {
    const { figures, findings } = await call(joinExample)
    expect(figures.neededRatio).toBeCloseTo(19.95, 2)
    expect(findings.map(({ code, severity }) => [code, severity])).toEqual([['joint-screen', 'note']])
    const steep = await call({ ...joinExample, ratio: 10 })
    expect(steep.findings.find(({ code }) => code === 'joint-shear-over')?.cure).toMatch(/19\.9|20/)
  })

  test.each([
    [
      'steps',
      { kind: 'steps', pullMPa: 500, plyThicknessMm: 0.25, stepMm: 12.7, allowedShearMPa: 15 },
      { shearMPa: 9.843 },
    ],
    [
      'single lap',
      {
        kind: 'single lap',
        loadNPerMm: 100,
        lengthMm: 12.5,
        sheets: [sheet, sheet],
        bond: { gMPa: 1000, thicknessMm: 0.2 },
      },
      { meanMPa: 8, highestMPa: 15.67 },
    ],
    [
      'double lap',
      {
        kind: 'double lap',
        loadNPerMm: 100,
        lengthMm: 12.5,
        outer: sheet,
        inner: { ...sheet, thicknessMm: 3.2 },
        bond: { gMPa: 1000, thicknessMm: 0.2 },
      },
      { meanMPa: 4, byHeatHighestMPa: 0 },
    ],
    [
      'long double lap',
      {
        kind: 'long double lap',
        outer: { eMPa: 50_000, thicknessMm: 2 },
        inner: { eMPa: 50_000, thicknessMm: 4 },
        bond: { yieldMPa: 40, elasticStrain: 0.05, plasticStrain: 0.5, thicknessMm: 0.125 },
      },
      { loadNPerMm: 2049.4, restingMm: 42.4 },
    ],
  ])('%s', async (_name, body, expected) => {
    const { figures, working } = await call(body)
    for (const [name, figure] of Object.entries(expected))
      expect(Math.abs((figures[name] ?? Number.NaN) - figure)).toBeLessThanOrEqual(Math.abs(figure) * 0.002)
    expect(working.length).toBeGreaterThan(0)
  })

  test('a kind that nobody knows is refused', async () => {
    await problem(await joinRoute.POST(post('/', { kind: 'rivet' })), 422)
  })
})
