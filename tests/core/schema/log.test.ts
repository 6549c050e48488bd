import { describe, expect, test } from 'vitest'
import { logKinds } from '#lib/core/log/index'
import { fieldErrors } from '#lib/schema/form'
import { NewLogEntry } from '#lib/schema/log'
import { logRequest } from '#lib/schema/log-request'

const id = '7b0f8f34-94f8-4d6a-9a2d-0d7f6a3f7c11'

const pull = {
  id,
  mouldId: id,
  areaId: null,
  patchId: null,
  doneOn: '2026-05-10',
  doneAt: null,
  precision: 'day',
  correctsId: null,
  note: '',
  sawVersion: null,
  kind: 'pull',
  data: { went: 'usual', serial: null, partFate: 'good', mouldFate: 'unharmed', cureC: null },
}

const faults = (changes: object) => {
  const parsed = NewLogEntry.safeParse({ ...pull, ...changes })
  return parsed.success ? [] : Object.keys(fieldErrors(parsed.error))
}

describe('an entry', () => {
  test('the sample is right', () => expect(faults({})).toEqual([]))

  test.each([
    ['doneAt', { precision: 'minute' }],
    ['doneAt', { doneAt: '2026-05-10T10:00:00Z' }],
    ['doneAt', { doneAt: '2026-05-10T10:00:00', precision: 'minute' }],
    ['doneOn', { doneOn: '2026-02-30' }],
    ['precision', { precision: 'week' }],
    ['id', { id: 'k-1' }],
    ['correctsId', { kind: 'correction', data: {} }],
    ['sawVersion', { kind: 'moved', data: { place: 'rack' } }],
    ['sawVersion', { kind: 'state', data: { state: 'held', on: true, reason: 'a crack' } }],
    ['data.place', { kind: 'moved', data: { place: ' ' }, sawVersion: 1 }],
    ['data.reason', { kind: 'state', data: { state: 'held', on: true, reason: '' }, sawVersion: 1 }],
    ['data.state', { kind: 'state', data: { state: 'part in it', on: true, reason: 'x' }, sawVersion: 1 }],
    ['data.went', { data: { ...pull.data, went: 'fine' } }],
    ['data.cureC', { data: { ...pull.data, cureC: 1000 } }],
    ['kind', { kind: 'pulled' }],
    ['note', { note: 'x'.repeat(2001) }],
  ])('%s is told for %j', (field, changes) => expect(faults(changes)).toEqual([field]))

  test('a coat of minus one, of a half, of nothing', () => {
    const coat = (coats: unknown) =>
      faults({ kind: 'coat', data: { product: 'r', lot: null, coats, minutesBetween: null } })
    expect(coat(0)).toEqual([])
    for (const wrong of [-1, 0.5, null, undefined, '2', Number.NaN])
      expect(coat(wrong)).toEqual(['data.coats'])
  })

  test('a leak check runs up, and takes some time', () => {
    const check = {
      bagging: 'b',
      heat: 'cold',
      temperatureC: null,
      pins: 'out',
      volumeL: null,
      startMbar: 20,
      endMbar: 30,
      minutes: 10,
    }
    const told = (changes: object) => faults({ kind: 'leak-check', data: { ...check, ...changes } })
    expect(told({})).toEqual([])
    expect(told({ endMbar: 19 })).toEqual(['data.endMbar'])
    expect(told({ minutes: 0 })).toEqual(['data.minutes'])
    expect(told({ startMbar: -1 })).toEqual(['data.startMbar'])
  })
})

describe('what a script sends', () => {
  const request = logRequest({})

  test('only what it knows: the rest is filled in as not given', () => {
    expect(
      request.parse({ id, kind: 'coat', doneOn: '2026-05-10', data: { product: 'release', coats: 2 } }),
    ).toEqual({
      id,
      kind: 'coat',
      doneOn: '2026-05-10',
      doneAt: null,
      precision: null,
      area: null,
      areaId: null,
      patchId: null,
      correctsId: null,
      note: '',
      sawVersion: null,
      data: { product: 'release', coats: 2, lot: null, minutesBetween: null },
    })
  })

  test('what must be known is not made up', () => {
    const faultsOf = (raw: unknown) => Object.keys(fieldErrors(request.safeParse(raw).error as never))
    expect(faultsOf({ id, kind: 'coat', data: { product: 'release' } })).toEqual(['data.coats'])
    expect(faultsOf({ id, kind: 'pull', data: { went: 'usual' } })).toEqual([
      'data.partFate',
      'data.mouldFate',
    ])
    expect(faultsOf({ kind: 'note' })).toEqual(['id', 'note'])
    expect(faultsOf({ id })).toEqual(['kind'])
    expect(faultsOf([])).toEqual([''])
  })

  test('every kind that a person may write can be sent, and no other', () => {
    const taken = logKinds.filter((kind) => {
      const issues = request.safeParse({ id, kind, data: {} }).error?.issues ?? []
      return !issues.some((issue) => issue.path[0] === 'kind')
    })
    expect(taken).toEqual(logKinds.filter((kind) => kind !== 'patch-laid' && kind !== 'proved'))
  })
})
