import { describe, expect, test } from 'vitest'
import { type ChosenUnit, readLoops } from '#lib/exchange/outline/index'
import { codes, read } from './draw-dxf'

const outer = [
  [0, 0],
  [10, 0],
  [10, 4],
  [0, 4],
]
const json = (value: unknown, unit: ChosenUnit | null = null) =>
  read(JSON.stringify(value), unit, 'outline.json')

describe('outline as JSON', () => {
  test('with unit and no holes', () => {
    expect(json({ unit: 'in', outer, holes: [] })).toMatchObject({
      verdict: 'accept',
      unit: 'in',
      loops: [{ role: 'outer' }],
    })
    expect(json({ unit: 'in', outer }).loops[0]!.boundsMm[2]).toBeCloseTo(254, 9)
  })

  test('without a unit it is asked; a choice settles it, and the file goes before a choice', () => {
    expect(json({ outer })).toMatchObject({
      verdict: 'ask',
      unit: null,
      findings: [{ code: 'unit-unknown' }],
    })
    expect(json({ outer }, 'cm')).toMatchObject({ verdict: 'accept', unit: 'cm' })
    expect(json({ unit: 'mm', outer }, 'cm')).toMatchObject({ verdict: 'accept-with-notice', unit: 'mm' })
  })

  test('holes are refused by name', () => {
    const reading = json({
      unit: 'mm',
      outer,
      holes: [
        [
          [2, 1],
          [4, 1],
          [4, 3],
          [2, 3],
        ],
      ],
    })
    expect(reading).toMatchObject({
      verdict: 'refuse',
      findings: [{ code: 'holes', figures: { holes: 1, holesMm2: [4] } }],
    })
    expect(reading.loops.map(({ role }) => role)).toEqual(['outer', 'hole'])
  })

  test('all loops: holes inside the outline are accepted, those astray or in one another are not', () => {
    const rectangle = (u: number, v: number, side: number) => [
      [u, v],
      [u + side, v],
      [u + side, v + side],
      [u, v + side],
    ]
    const loops = (holes: readonly unknown[]) =>
      readLoops({
        name: 'a.json',
        text: JSON.stringify({ unit: 'mm', outer: rectangle(0, 0, 50), holes }),
        unit: null,
      })
    expect(loops([rectangle(5, 5, 10), rectangle(25, 5, 10)])).toMatchObject({
      verdict: 'accept',
      findings: [],
    })
    expect(codes(loops([rectangle(60, 5, 10)]))).toEqual(['hole-astray'])
    expect(codes(loops([rectangle(5, 5, 30), rectangle(10, 10, 5)]))).toEqual(['hole-astray'])
    expect(codes(loops([rectangle(-20, -20, 99)]))).toEqual(['hole-astray'])
    expect(codes(loops([rectangle(45, 5, 10)]))).toEqual(['loops-meet'])
  })

  test('a repeated last point and keys that are not read are told', () => {
    expect(codes(json({ unit: 'mm', outer: [...outer, [0, 0]], colour: 'red' }))).toEqual([
      'keys-left-out',
      'last-point-dropped',
    ])
  })

  test.each([
    ['broken off', '[1, 2', 'json-not-read', null],
    ['a word without quotes', '{"unit": "mm",\n "outer": [[0, 0], x]}', 'json-not-read', null],
    ['a bare list', '[[0, 0], [1, 0]]', 'json-not-read', null],
    ['no outer', '{"unit": "mm"}', 'json-not-read', 'outer'],
    ['outer is a number', '{"unit": "mm", "outer": 7}', 'json-not-read', 'outer'],
    ['holes are a number', '{"outer": [[0, 0], [1, 0], [1, 1]], "holes": 7}', 'json-not-read', 'holes'],
    ['a hole is a number', '{"outer": [[0, 0], [1, 0], [1, 1]], "holes": [7]}', 'json-not-read', 'holes[0]'],
    ['an unknown unit', '{"unit": "furlong", "outer": [[0, 0]]}', 'unit-not-read', 'unit'],
    [
      'a unit named like a part of the language',
      '{"unit": "constructor", "outer": []}',
      'unit-not-read',
      'unit',
    ],
    [
      'a number too large',
      '{"unit": "mm", "outer": [[0, 0], [1, 0], [1e400, 1]]}',
      'point-not-read',
      'outer[2]',
    ],
    ['null', '{"unit": "mm", "outer": [[0, 0], [1, 0], [1, null]]}', 'point-not-read', 'outer[2]'],
    ['text', '{"unit": "mm", "outer": [[0, 0], ["1", 0], [1, 1]]}', 'point-not-read', 'outer[1]'],
    ['three numbers', '{"unit": "mm", "outer": [[0, 0], [1, 0, 5], [1, 1]]}', 'point-not-read', 'outer[1]'],
    ['no points', '{"unit": "mm", "outer": []}', 'too-few-points', null],
    ['a deep pit', '['.repeat(200_000), 'json-not-read', null],
    ['a deep nest', `{"outer": ${'['.repeat(200_000)}${']'.repeat(200_000)}}`, 'point-not-read', 'outer[0]'],
  ])('%s is refused', (_, text, code, place) => {
    const reading = read(text, null, 'pasted')
    expect(reading).toMatchObject({ verdict: 'refuse', loops: [] })
    expect(reading.findings[0]!.code).toBe(code)
    if (place !== null) expect(reading.findings[0]!.place).toBe(place)
    expect(reading.findings[0]!.cure).not.toBeNull()
  })
})
