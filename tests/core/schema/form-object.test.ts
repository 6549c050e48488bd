import { expect, test } from 'vitest'
import { formObject } from '#lib/schema/form-object'

function formOf(fields: readonly (readonly [string, string])[]): FormData {
  const form = new FormData()
  for (const [name, value] of fields) form.append(name, value)
  return form
}

test('dots make things within things, numbers make rows', () => {
  const fields = [
    ['kind', 'coat'],
    ['data.coats', '2'],
    ['data.lot', ''],
    ['rows.0.lot', 'A'],
    ['rows.1.lot', 'B'],
  ] as const
  expect(formObject(formOf(fields))).toEqual({
    kind: 'coat',
    data: { coats: '2', lot: '' },
    rows: { '0': { lot: 'A' }, '1': { lot: 'B' } },
  })
})

test("of fields with one name the last counts; files and the framework's own fields are left out", () => {
  const form = formOf([
    ['through', 'off'],
    ['through', 'on'],
    ['$ACTION_ID_1', 'x'],
  ])
  form.set('drawing', new File(['x'], 'a.dxf'))
  expect(formObject(form)).toEqual({ through: 'on' })
})

test.each(['__proto__.role', 'constructor.prototype.role', 'data.__proto__.role', '__proto__'])(
  '%s reaches nothing that all objects share',
  (name) => {
    expect(formObject(formOf([[name, 'lead']]))).toEqual({})
    expect(({} as Record<string, unknown>).role).toBeUndefined()
  },
)

test('a plain value and things within it: the things stay', () => {
  expect(
    formObject(
      formOf([
        ['data', 'x'],
        ['data.coats', '2'],
      ]),
    ),
  ).toEqual({ data: { coats: '2' } })
})
