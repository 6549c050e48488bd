import { describe, expect, test } from 'vitest'
import { cautions } from '#lib/core/repair/cautions'
import type { JobLine, PatchInput } from '#lib/core/repair/index'
import { bareArea, cycle, dowel, planned, plyOf, quietPatch } from './sample-patch'

const lines = (input: PatchInput): readonly JobLine[] => planned(input).value.jobLines
const order = (input: PatchInput) => lines(input).map((line) => line.code)
const line = (input: PatchInput, code: string) => lines(input).find((each) => each.code === code)!
const withPin = { area: { ...bareArea, dowels: [dowel('D3', [0, 0])] } }

function expectInOrder(all: readonly string[], wanted: readonly string[]): void {
  expect(all.filter((code) => wanted.includes(code))).toEqual(wanted)
}

describe('job lines stand in the order in which the work is done', () => {
  test('against the pattern, from the back', () => {
    expectInOrder(order(quietPatch({ ...withPin, patternAvailable: true })), [
      'seat-gap',
      'as-found',
      'strip',
      'mark',
      'cut',
      're-inspect',
      'dry',
      'scarf',
      'clean',
      'release',
      'seat',
      'kit',
      'lay-1',
      'debulk-1',
      'lay-2',
      'lay-3',
      'lay-4',
      'debulk-4',
      'lay-5',
      'lay-6',
      'debulk-6',
      'coupon',
      'ply-check',
      'bag',
      'bag-leak',
      'cure',
      'post-cure',
      'reseat',
      'bush',
      'lift',
      'dress',
      'leak-cold',
      'leak-hot',
      'measure',
      'seal',
      'coats',
      'tape-test',
      'proof-pull',
    ])
  })

  test('without a pattern the splash comes before anything is cut, and pins are measured', () => {
    const input = quietPatch({ ...withPin, patternAvailable: false })
    expect(order(input)[0]).toBe('splash')
    expect(line(input, 'bush').title).toMatch(/by measuring/)
    expect(order(input)).not.toContain('reseat')
  })

  test('in place from the back a caul closes the face; there is no pattern to seat on or lift off', () => {
    const codes = order(quietPatch({ side: 'place-back' }))
    expectInOrder(codes, ['scarf', 'clean', 'release', 'caul', 'lay-1'])
    expectInOrder(codes, ['cure', 'caul-off', 'post-cure', 'dress'])
    for (const code of ['seat-gap', 'seat', 'lift']) expect(codes).not.toContain(code)
  })

  test('in place from the face the surround is masked, and a through cut gets a backing plate', () => {
    expectInOrder(order(quietPatch({ side: 'place-face' })), ['clean', 'mask', 'backing', 'lay-1'])
    expectInOrder(order(quietPatch({ side: 'place-face' })), ['cure', 'backing-off', 'post-cure'])
    expect(order(quietPatch({ side: 'place-face', removedPlies: [1, 2] }))).not.toContain('backing')
  })

  test('from the face the mould is turned once before the cover plies', () => {
    const codes = order(
      quietPatch({ side: 'place-face', removedPlies: [1, 2], coverPlies: [plyOf(0.5), plyOf(0.5)] }),
    )
    expectInOrder(codes, ['scarf', 'cover-ground', 'clean', 'lay-2', 'turn', 'lay-3', 'lay-4', 'bag'])
    expect(codes.filter((code) => code === 'turn')).toHaveLength(1)
  })

  test('machined steps are lines of their own, from the largest and shallowest inwards', () => {
    const input = quietPatch({
      edge: 'steps',
      stack: Array.from({ length: 3 }, () => plyOf(0.5)),
      removedPlies: [1, 2, 3],
      measuredThicknessMm: [1.8],
    })
    expectInOrder(order(input), ['cut', 'step-3', 'step-2', 'clean'])
    expect(line(input, 'step-3').detail).toMatch(
      /Outline 24 mm beyond the opening, 0\.6 mm deep from the back/,
    )
    expect(line(input, 'step-2').detail).toMatch(/Outline 12 mm beyond the opening, 1\.2 mm deep/)
  })

  test('a patch that leaves the face whole is not sealed and coated', () => {
    const codes = order(quietPatch({ side: 'place-back', removedPlies: [4, 5, 6] }))
    for (const code of ['seal', 'coats', 'tape-test', 'caul']) expect(codes).not.toContain(code)
    expect(codes.at(-1)).toBe('proof-pull')
  })

  test('a bush is set only where a dowel stands in the opening', () => {
    expect(order(quietPatch())).not.toContain('bush')
    expect(line(quietPatch(withPin), 'bush')).toMatchObject({
      title: 'Set D3 off the pattern pin',
      detail: expect.stringContaining('before the mould is lifted'),
    })
  })

  test('a bush that the plies run over is taken out before the cut and set anew with those in the opening', () => {
    const dowels = [dowel('D3', [0, 0]), dowel('D4', [70, 0]), dowel('D5', [0, 300])]
    const input = quietPatch({ area: { ...bareArea, dowels } })
    expectInOrder(order(input), ['mark', 'take-out', 'cut', 'bush'])
    expect(line(input, 'take-out').title).toBe('Take out D4')
    expect(line(input, 'bush').title).toBe('Set D3, D4 off the pattern pin')
    expect(line(input, 'seat').detail).toMatch(/Pins for D3, D4 in and released/)
    expect(order(quietPatch(withPin))).not.toContain('take-out')
  })

  test('codes are unique, whatever the side and the edge', () => {
    for (const side of ['pattern-back', 'place-back', 'place-face'] as const) {
      for (const edge of ['scarf', 'steps'] as const) {
        const codes = order(
          quietPatch({ ...withPin, side, edge, coverPlies: [plyOf(0.5)], patternAvailable: false }),
        )
        expect(new Set(codes).size).toBe(codes.length)
      }
    }
  })
})

describe('debulks', () => {
  const debulks = (pliesPerDebulk: number) =>
    order(quietPatch({ rules: { ...quietPatch().rules, pliesPerDebulk } })).filter((code) =>
      code.startsWith('debulk'),
    )

  test('come after the first ply, every so many after it, and after the last, once each', () => {
    expect(debulks(3)).toEqual(['debulk-1', 'debulk-4', 'debulk-6'])
    expect(debulks(5)).toEqual(['debulk-1', 'debulk-6'])
    expect(debulks(1)).toHaveLength(6)
    expect(debulks(50)).toEqual(['debulk-1', 'debulk-6'])
  })
})

describe('what a line says', () => {
  test('a ply: material, direction with its tolerance as seen where it is laid, film off', () => {
    const stack = [0, 45, -45, 90].map((direction) => plyOf(0.5, direction))
    const input = quietPatch({ stack, removedPlies: [1, 2, 3, 4] })
    expect(line(input, 'lay-2').title).toBe('Lay 2 of 4: 0.5 mm ply at 45°')
    expect(line(input, 'lay-2').detail).toMatch(
      /Direction 45° ± 2°: as you see it from the back, 45° clockwise.*Film off\.$/,
    )
    expect(line(input, 'lay-3').detail).toMatch(/45° anticlockwise/)
    expect(line(input, 'lay-1').detail).toMatch(/along the u arrow/)
    const fromFace = quietPatch({ stack, side: 'place-face', removedPlies: [1, 2] })
    expect(line(fromFace, 'lay-1').detail).toMatch(/from the cavity, 45° anticlockwise/)
  })

  test('cure and post-cure: ramps and holds with the limits of the mould', () => {
    const input = quietPatch({ heat: { inUseC: 135, freeStandingC: 190, bondedC: null } })
    expect(line(input, 'cure').detail).toMatch(
      /^Ramp 0\.5 °C\/min to 60 °C, hold 2 h; ramp 0\.2 °C\/min to 65 °C, hold 8 h\./,
    )
    expect(line(input, 'cure').detail).toMatch(/in use 135 °C, free-standing 190 °C, bonded parts unknown/)
    const cooled = {
      name: 'cooled',
      segments: [
        { rampCPerMin: 1, toC: 90, holdMin: 90 },
        { rampCPerMin: 1, toC: 50, holdMin: 0 },
      ],
      tgAfterC: 120,
    }
    expect(line(quietPatch({ cure: cooled }), 'cure').detail).toMatch(
      /hold 1 h 30 min; cool at 1 °C\/min to 50 °C\./,
    )
    expect(line(quietPatch({ cure: null }), 'cure').title).toMatch(/not given yet/)
    expect(order(quietPatch({ postCure: null }))).not.toContain('post-cure')
  })

  test('the scarf: how deep it is at every ply border', () => {
    const stack = [plyOf(0.5), plyOf(0.5), plyOf(0.5)]
    const input = quietPatch({ stack, removedPlies: [1, 2, 3], measuredThicknessMm: [1.8] })
    expect(line(input, 'scarf').detail).toMatch(
      /from nothing at 36 mm beyond the opening to 1\.8 mm deep at its edge.*mm: 12 out 1\.2 deep, 24 out 0\.6 deep\./,
    )
  })

  test('drying stays below the limits of the mould, and says when that is slow', () => {
    const dry = (inUseC: number | null, freeStandingC: number | null, bondedC: number | null) =>
      line(quietPatch({ heat: { inUseC, freeStandingC, bondedC } }), 'dry').detail
    expect(dry(160, 200, 160)).toMatch(/at 80 to 120 °C until/)
    expect(dry(125, 200, null)).toMatch(/at 80 to 105 °C until.*within the mould's limits/)
    expect(dry(null, 75, null)).toMatch(/at 55 °C or less, which is what the mould's limits leave/)
  })

  test('outlines are marked on the face that they are cut from; cover plies on the back', () => {
    const cover = [plyOf(0.5)]
    const face = line(
      quietPatch({ side: 'place-face', removedPlies: [1, 2], coverPlies: cover }),
      'mark',
    ).detail
    expect(face).toMatch(/^On the tool face: the opening, each outline \(13\.8, 18\.5 mm beyond it\)/)
    expect(face).toMatch(/On the back: the cover ply \(43\.5 mm beyond the opening\)/)
    const steps = line(quietPatch({ edge: 'steps', coverPlies: cover }), 'mark').detail
    expect(steps).toMatch(/each outline \(4\.6, /)
    expect(line(quietPatch({ edge: 'steps' }), 'lay-1').detail).toMatch(/^For ply 1, butted into the opening/)
  })

  test('a second person looks at the marking, the plies and the measuring', () => {
    const second = lines(quietPatch())
      .filter((each) => each.secondPerson)
      .map((each) => each.code)
    expect(second).toEqual(['mark', 'ply-check', 'measure'])
  })

  test('cautions stand where they concern', () => {
    const input = quietPatch({ cure: cycle('cure', 65, 70) })
    expect(line(input, 'scarf').cautions).toContain(cautions.dust)
    expect(line(input, 'lay-3').cautions).toEqual([cautions.skin])
    expect(line(input, 'clean').cautions).toEqual([cautions.solvent])
    expect(line(input, 'cure').cautions).toEqual(
      expect.arrayContaining([cautions.thickStack, cautions.vessel]),
    )
    expect(line(input, 'debulk-1').cautions).toEqual([cautions.vacuum])
    expect(line(input, 'lift').cautions).toContain(cautions.lifting)
    expect(line(input, 'cut').cautions).toContain(cautions.edges)
    const used = new Set(lines(quietPatch(withPin)).flatMap((each) => each.cautions))
    expect([...used].sort()).toEqual(Object.values(cautions).sort())
  })

  test('no line with release in it stands between cleaning and masking or releasing what it is laid on', () => {
    expect(line(quietPatch(), 'clean').detail).toMatch(/No release near the scarf/)
  })
})
