import { readFileSync } from 'node:fs'
import fc from 'fast-check'
import { describe, expect, test } from 'vitest'
import * as z from 'zod'
import { count, freeText, lengthMm, quantity, temperatureC, text, uuid } from '#lib/schema/fields'
import { fieldErrors, formOf, textOf } from '#lib/schema/form'
import { logData, NewLogEntry } from '#lib/schema/log'
import { OpeningSource, PatchSketch } from '#lib/schema/patch'

const errorsOf = (schema: z.ZodType, raw: unknown) => {
  const parsed = formOf(schema).safeParse(raw)
  return parsed.success ? {} : fieldErrors(parsed.error)
}

describe('T49: a blank number field is not nought', () => {
  const folder = 'tests/cases/T49a-blank-number-field-in-a-form'
  const inputs = JSON.parse(readFileSync(`${folder}/inputs.json`, 'utf8')) as string[]
  const expected = JSON.parse(readFileSync(`${folder}/expected.json`, 'utf8'))
  const keyOf = (input: string) => (input === '' ? '(empty)' : input)
  const required = formOf(z.object({ coats: count() }))
  const optional = formOf(z.object({ coats: count().nullable() }))

  test.each(inputs)('optional: %j', (input) => {
    const { coats } = optional.parse({ coats: input })
    expect(coats === null ? 'missing' : coats).toBe(expected.optional_field[keyOf(input)])
  })

  test.each(inputs)('required: %j', (input) => {
    const parsed = required.safeParse({ coats: input })
    const found = parsed.success
      ? parsed.data.coats
      : fieldErrors(parsed.error).coats
        ? 'field error'
        : 'no error'
    expect(found).toBe(expected.required_field[keyOf(input)])
  })

  test('the coats of the log are such a field: blank is an error at it, a typed 0 stays 0', () => {
    const coat = { product: 'release', lot: '', minutesBetween: '' }
    expect(errorsOf(logData.coat, { ...coat, coats: '' })).toEqual({
      coats: 'Give a number; blank is not zero',
    })
    expect(formOf(logData.coat).parse({ ...coat, coats: '0' })).toEqual({
      ...coat,
      lot: null,
      minutesBetween: null,
      coats: 0,
    })
  })

  test('a field that is not sent at all, one of blanks, and one that is null are blank too', () => {
    for (const raw of [{}, { coats: '  ' }, { coats: null }]) {
      expect(optional.parse(raw)).toEqual({ coats: null })
      expect(errorsOf(z.object({ coats: count() }), raw)).toHaveProperty('coats')
    }
  })

  test('a gap is shown as a gap when the form is opened again', () => {
    expect(textOf(z.object({ coats: count().nullable() }), { coats: null })).toEqual({ coats: '' })
    expect(textOf(z.object({ coats: count().nullable() }), { coats: 0 })).toEqual({ coats: '0' })
  })
})

describe('text into figures', () => {
  const size = z.object({ depthMm: lengthMm({ min: 0, max: 50 }) })

  test.each([
    ['12.5', 12.5],
    ['12,5', 12.5],
    ['12,5 mm', 12.5],
    ['1/2 in', 12.7],
    ['1 1/2"', 38.1],
    ['1.25 cm', 12.5],
    [' 3 ', 3],
    ['-0', 0],
  ])('%j is %d mm', (typed, mm) => {
    expect(formOf(size).parse({ depthMm: typed }).depthMm).toBeCloseTo(mm, 9)
  })

  test.each(['deep', '1,234', '5 kg', '60', '-1', '1e999', 'NaN', 'Infinity'])(
    '%j is refused at its field',
    (typed) => {
      expect(Object.keys(errorsOf(size, { depthMm: typed }))).toEqual(['depthMm'])
    },
  )

  test('the message of a range gives the bound with its unit', () => {
    expect(errorsOf(size, { depthMm: '60' })).toEqual({ depthMm: 'At most 50 mm' })
    expect(errorsOf(z.object({ limit: temperatureC() }), { limit: '1000' })).toEqual({
      limit: 'At most 500 C',
    })
  })

  test('a number that is one already goes through', () => {
    expect(formOf(size).parse({ depthMm: 12.5 })).toEqual({ depthMm: 12.5 })
  })

  test('all faults are told at once, each at its field, and each once', () => {
    const schema = z.object({
      name: text('a name'),
      id: uuid(),
      rows: z.array(size),
      left: lengthMm().nullable(),
    })
    const raw = {
      name: ' ',
      id: 'x',
      rows: [{ depthMm: '' }, { depthMm: '99' }, { depthMm: 'deep' }],
      left: 'west',
    }
    expect(Object.keys(errorsOf(schema, raw)).sort()).toEqual([
      'id',
      'left',
      'name',
      'rows.0.depthMm',
      'rows.1.depthMm',
      'rows.2.depthMm',
    ])
  })

  test('a tick is on, true or yes; anything else, and none at all, is no', () => {
    const schema = formOf(z.object({ through: z.boolean() }))
    for (const yes of ['on', 'true', 'yes', true])
      expect(schema.parse({ through: yes })).toEqual({ through: true })
    for (const no of ['off', 'false', '', undefined, false])
      expect(schema.parse({ through: no })).toEqual({ through: false })
  })

  test('blank text: null where it may be left out, blank where it may be blank, an error where it is needed', () => {
    const schema = z.object({ lot: text('a lot').nullable(), note: freeText(), name: text('a name') })
    expect(formOf(schema).parse({ lot: '  ', note: ' ', name: ' n ' })).toEqual({
      lot: null,
      note: '',
      name: 'n',
    })
    expect(errorsOf(schema, { lot: '', note: '', name: '  ' })).toEqual({ name: 'Give a name' })
  })

  test('rows come as a list, as numbered fields, or as one', () => {
    const rows = formOf(z.object({ rows: z.array(size) }))
    const both = { rows: [{ depthMm: 1 }, { depthMm: 2 }] }
    expect(rows.parse({ rows: [{ depthMm: '1' }, { depthMm: '2' }] })).toEqual(both)
    expect(rows.parse({ rows: { '1': { depthMm: '2' }, '0': { depthMm: '1' } } })).toEqual(both)
    expect(rows.parse({ rows: { depthMm: '1' } })).toEqual({ rows: [{ depthMm: 1 }] })
    expect(rows.parse({})).toEqual({ rows: [] })
    const ten = Object.fromEntries(
      Array.from({ length: 11 }, (_, index) => [String(index), { depthMm: String(index) }]),
    )
    expect(rows.parse({ rows: ten }).rows.map((row) => row.depthMm)).toEqual([
      0, 1, 2, 3, 4, 5, 6, 7, 8, 9, 10,
    ])
  })

  test('what is said beside the discriminator is read by its own kind', () => {
    const placement = { shiftMm: ['1', '2,5'], turnDeg: '', mirrored: '' }
    expect(errorsOf(OpeningSource, { kind: 'circle', diameterMm: '', placement })).toEqual({
      diameterMm: 'Give a number; blank is not zero',
      'placement.turnDeg': 'Give a number; blank is not zero',
    })
    expect(Object.keys(errorsOf(OpeningSource, { kind: 'blob' }))).toEqual(['kind'])
    const box = {
      kind: 'rounded-rectangle',
      lengthMm: '40',
      widthMm: '20',
      placement: { ...placement, turnDeg: '0' },
    }
    expect(errorsOf(OpeningSource, { ...box, cornerRadiusMm: '11' })).toEqual({
      cornerRadiusMm: 'At most half the shorter side',
    })
    expect(formOf(OpeningSource).parse({ ...box, cornerRadiusMm: '10' })).toMatchObject({
      cornerRadiusMm: 10,
    })
  })

  test('rules across fields speak once the fields themselves are good', () => {
    const check = {
      bagging: 'mould alone',
      heat: 'cold',
      temperatureC: '',
      pins: 'out',
      volumeL: '',
      startMbar: '20',
      endMbar: '10',
      minutes: '10',
    }
    expect(Object.keys(errorsOf(logData['leak-check'], check))).toEqual(['endMbar'])
    expect(Object.keys(errorsOf(logData['leak-check'], { ...check, minutes: '' }))).toContain('minutes')
  })

  test('something that is no form at all is refused, not an error', () => {
    for (const raw of [null, undefined, '', 'text', 7, []])
      expect(formOf(size).safeParse(raw).success).toBe(false)
    for (const raw of [null, {}, { kind: 'no such kind' }, { kind: 7 }]) {
      expect(formOf(NewLogEntry).safeParse(raw).success).toBe(false)
    }
  })
})

describe('there and back', () => {
  const finite = (range: { min: number; max: number }) =>
    fc.double({ ...range, noNaN: true }).map((value) => value + 0)
  const words = fc.string({ minLength: 1, maxLength: 20 }).map((value) => `x${value.trim()}`)
  const schema = z.object({
    name: text('a name'),
    note: freeText(),
    depthMm: lengthMm(),
    heatC: temperatureC({ min: -200, max: 500 }).nullable(),
    share: quantity('fraction', { min: 0, max: 1 }),
    ratio: quantity('ratio', { min: 1, max: 500 }),
    pieces: count(),
    through: z.boolean(),
    at: z.tuple([lengthMm(), lengthMm()]),
    rows: z.array(
      z.object({ minutes: quantity('duration', { min: 0 }).nullable(), side: z.enum(['port', 'starboard']) }),
    ),
  })
  const values = fc.record({
    name: words,
    note: fc.constantFrom('', 'a note', 'two\nlines'),
    depthMm: finite({ min: -1e6, max: 1e6 }),
    heatC: fc.option(finite({ min: -200, max: 500 })),
    share: finite({ min: 0, max: 1 }),
    ratio: finite({ min: 1, max: 500 }),
    pieces: fc.integer({ min: 0, max: 100_000 }),
    through: fc.boolean(),
    at: fc.tuple(finite({ min: -1e5, max: 1e5 }), finite({ min: -1e5, max: 1e5 })),
    rows: fc.array(
      fc.record({
        minutes: fc.option(finite({ min: 0, max: 1e5 })),
        side: fc.constantFrom('port' as const, 'starboard' as const),
      }),
      { maxLength: 4 },
    ),
  })

  test('a form that is opened and saved again changes nothing', () => {
    const form = formOf(schema)
    fc.assert(
      fc.property(values, (value) => {
        const shown = z.encode(form, value)
        expect(form.parse(shown)).toEqual(value)
        expect(textOf(schema, value)).toEqual(shown)
      }),
      { numRuns: 300 },
    )
  })

  test('what a form shows is text, ticks, and nothing else', () => {
    const leaves = (value: unknown): unknown[] =>
      typeof value === 'object' && value !== null ? Object.values(value).flatMap(leaves) : [value]
    fc.assert(
      fc.property(values, (value) => {
        for (const leaf of leaves(textOf(schema, value))) expect(['string', 'boolean']).toContain(typeof leaf)
      }),
    )
  })

  test('a sketch of a patch survives ten times open and save', () => {
    const sketch = PatchSketch.parse({
      id: '7b0f8f34-94f8-4d6a-9a2d-0d7f6a3f7c11',
      patchId: '7b0f8f34-94f8-4d6a-9a2d-0d7f6a3f7c12',
      mouldId: '7b0f8f34-94f8-4d6a-9a2d-0d7f6a3f7c13',
      areaId: '7b0f8f34-94f8-4d6a-9a2d-0d7f6a3f7c14',
      title: 'Opening',
      reason: '',
      side: 'place-back',
      edge: 'steps',
      taper: { ratio: 20, mmPerPly: 12.7, use: 'longer' },
      opening: {
        kind: 'outline',
        name: 'opening.dxf',
        points: [
          [0, 0],
          [80.25, 0],
          [0, 1 / 3],
        ],
        placement: { shiftMm: [0.1, -0.2], turnDeg: 33.3, mirrored: true },
      },
      measuredThicknessMm: [4.1, 4.2],
      pliesFromFace: null,
      coverPlies: [],
      nextPartCureC: 80,
      note: '',
    })
    const form = formOf(PatchSketch)
    let again: typeof sketch = sketch
    for (let time = 0; time < 10; time += 1) again = form.parse(textOf(PatchSketch, again))
    // The opening is a union: its text is what it was, figures as figures.
    expect(again).toEqual(sketch)
  })

  test('a date is text all the way', () => {
    const entry = { doneOn: '2026-05-10' }
    const schemaOfDate = z.object({ doneOn: NewLogEntry.options[0].shape.doneOn })
    expect(formOf(schemaOfDate).parse(textOf(schemaOfDate, entry))).toEqual(entry)
    for (const wrong of ['10.05.2026', '2026-02-30', '2026-5-1', '2026-05-10T00:00:00Z', '']) {
      expect(Object.keys(errorsOf(schemaOfDate, { doneOn: wrong }))).toEqual(['doneOn'])
    }
  })
})
