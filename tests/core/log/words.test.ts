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
  'test-patch': { surface: 'a tile', sealer: null, agent: 'release', result: 'releases' },
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
  repair: {
    method: 'fill',
    what: 'a chip, with filler',
    interim: true,
    untilPulls: 5,
    untilOn: '2026-06-01',
    maxC: 60,
    uMm: 10,
    vMm: 20,
  },
  'dowel-changed': { tag: 'D02', what: 're-bushed', uMm: null, vMm: null, diameterMm: 8 },
  're-machined': { what: 'the seal land', depthMm: 0.25, by: 'the router' },
  heat: { what: 'post-cure', toC: 120.04, holdMin: 240, withPart: false },
  pins: { tag: null, insertions: 3 },
  measured: {
    instrument: 'arm',
    temperatureC: 21,
    frame: 'datum',
    points: [
      { tag: 'D01', xMm: 1, yMm: 2, zMm: null },
      { tag: 'D02', xMm: 3, yMm: 4, zMm: 5 },
    ],
  },
  moved: { place: 'rack B4' },
  state: { state: 'away', on: false, reason: 'came back' },
  'patch-laid': { planId: 'p', number: 7, lots: [{ material: '200 twill', lot: 'A1' }] },
  proved: { planId: null, number: 7 },
  'before-book': {
    pullsLow: 30,
    pullsBest: 40,
    pullsHigh: 50,
    heatLow: null,
    heatBest: null,
    heatHigh: null,
    what: 'from what Ada remembers',
  },
  matter: { what: 'order a bush', who: 'Ada', untilOn: '2026-06-01' },
  settled: { entryId: 'm', outcome: 'carried', who: null, untilOn: '2026-07-01', how: 'not come yet' },
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
  'test-patch': ['Test patch releases', 'a tile, release'],
  'leak-check': ['Leak check', '6.5 mbar in 10 min from 20 mbar, hot, 80 °C, pins in, mould alone'],
  inspection: ['Inspected, look', 'Whole face, haze'],
  damage: ['Damage, stop', 'Whole face, u 100, v -20.3 mm, a crack'],
  repair: [
    'Repair, fill',
    'Whole face, u 10, v 20 mm, a chip, with filler, for the time being: for 5 pulls, until 1 Jun 2026, at most 60 °C',
  ],
  'dowel-changed': ['D02 re-bushed', '⌀ 8 mm'],
  're-machined': ['Re-machined', 'the seal land, 0.3 mm deep, by the router'],
  heat: ['Post-cure to 120 °C', 'held 240 min, standing free'],
  pins: ['All pins driven', '3 times'],
  measured: ['2 points measured', 'datum axes, arm, at 21 °C, D01 D02'],
  moved: ['Moved', 'rack B4'],
  state: ['No longer away', 'came back'],
  'patch-laid': ['Patch 7 laid', '200 twill lot A1'],
  proved: ['Patch 7 proved', ''],
  'before-book': ['Before the book: about 40 (30-50) pulls', 'from what Ada remembers'],
  matter: ['Open matter', 'order a bush, Ada, until 1 Jun 2026'],
  settled: ['Matter carried on', 'not come yet, until 1 Jul 2026'],
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
    place: null,
    patchId: null,
    patchNumber: null,
    note: '',
    groupId: null,
    uses: [],
    correctsId: null,
    correctedById: null,
    kind,
    data: data[kind],
  } as LogEntry
  expect(entryWords(entry)).toEqual({ what: expected[kind][0], detail: expected[kind][1] })
})

test('a place that is known by the location grid goes before its figures and names the area', () => {
  const told = (kind: 'damage' | 'repair' | 'dowel-changed' | 'measured', changes: Partial<LogEntry> = {}) =>
    entryWords({
      kind,
      data: kind === 'dowel-changed' ? { ...data[kind], uMm: 10, vMm: 20 } : data[kind],
      areaName: 'floor',
      patchNumber: null,
      place: 'floor B5, 40 mm from D03',
      ...changes,
    } as LogEntry).detail
  expect(told('damage')).toBe('floor B5, 40 mm from D03 (u 100, v -20.3 mm), a crack')
  expect(told('damage', { place: null })).toBe('floor, u 100, v -20.3 mm, a crack')
  expect(told('repair', { patchNumber: 7 })).toMatch(
    /^Patch 7, floor B5, 40 mm from D03 \(u 10, v 20 mm\), a chip/,
  )
  expect(told('dowel-changed')).toBe('floor B5, 40 mm from D03 (u 10, v 20 mm), ⌀ 8 mm')
  expect(told('measured', { place: 'D01 in A1, D02 in A2' })).toBe(
    'datum axes, arm, at 21 °C, D01 in A1, D02 in A2',
  )
})
