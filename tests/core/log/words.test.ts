import { expect, test } from 'vitest'
import { entryWords, type LogData, type LogEntry, type LogKind, logKinds } from '#lib/core/log/index'

const data: LogData = {
  cleared: { open: ['leak check missing'], because: 'race week', proof: false },
  pull: { went: 'harder', serial: 'N-12', partFate: 'rework', mouldFate: 'marked', cureC: 80 },
  strip: { product: 'stripper' },
  clean: { product: 'cleaner' },
  seal: { product: 'sealer', lot: 'S1', coats: 2 },
  coat: { product: 'release', lot: null, coats: 1, minutesBetween: 20 },
  'tape-test': { result: 'grips' },
  'leak-check': {
    bagging: 'mould alone',
    heat: 'hot',
    temperatureC: 80,
    pins: 'in',
    volumeL: null,
    startMbar: 20,
    endMbar: 26.5,
    minutes: 10,
  },
  inspection: { verdict: 'look', what: 'haze' },
  damage: { weight: 'stop', uMm: 100, vMm: -20.34, what: 'a crack' },
  'dowel-changed': { tag: 'D02', what: 're-bushed', uMm: null, vMm: null, diameterMm: 8 },
  moved: { place: 'rack B4' },
  state: { state: 'away', on: false, reason: 'came back' },
  'patch-laid': { planId: 'p', number: 7, lots: [{ material: '200 twill', lot: 'A1' }] },
  proved: { planId: null, number: 7 },
  note: {},
  correction: {},
}

const expected: { readonly [Kind in LogKind]: readonly [string, string] } = {
  cleared: ['Cleared to lay up', 'open: leak check missing, because race week'],
  pull: ['Pull, harder', 'part N-12, part to rework, mould marked, cured at 80 °C'],
  strip: ['Stripped', 'Whole face, stripper'],
  clean: ['Cleaned', 'Whole face, cleaner'],
  seal: ['2 × sealer', 'Whole face, sealer, lot S1'],
  coat: ['1 coat', 'Whole face, release, 20 min apart'],
  'tape-test': ['Tape grips', 'Whole face'],
  'leak-check': ['Leak check', '6.5 mbar in 10 min from 20 mbar, hot, 80 °C, pins in, mould alone'],
  inspection: ['Inspected, look', 'Whole face, haze'],
  damage: ['Damage, stop', 'Whole face, u 100, v -20.3 mm, a crack'],
  'dowel-changed': ['D02 re-bushed', '⌀ 8 mm'],
  moved: ['Moved', 'rack B4'],
  state: ['No longer away', 'came back'],
  'patch-laid': ['Patch 7 laid', '200 twill lot A1'],
  proved: ['Patch 7 proved', ''],
  note: ['Note', ''],
  correction: ['Struck out', 'an earlier entry'],
}

test.each(logKinds)('%s', (kind) => {
  const entry = {
    id: 'e',
    doneOn: '2026-05-10',
    doneAt: null,
    precision: 'day',
    writtenAt: '2026-05-10T10:00:00Z',
    byName: 'Ada',
    areaId: null,
    areaName: null,
    patchId: null,
    patchNumber: null,
    note: '',
    correctsId: null,
    correctedById: null,
    kind,
    data: data[kind],
  } as LogEntry
  expect(entryWords(entry)).toEqual({ what: expected[kind][0], detail: expected[kind][1] })
})
