import { expect, test } from 'vitest'
import { countsEdition, type MouldCounts } from '#lib/core/log/index'
import { open, quietCounts, release, repair } from './sample-counts'

/**
 * Counts are kept in the database as they were counted. Whoever changes their shape raises `countsEdition`, so that what
 * was kept in the older shape is counted anew, and writes the new shape down here under the new number.
 */
const shapes: Readonly<Record<number, readonly string[]>> = {
  1: [
    'atLastGoodPull.coatLot: string',
    'atLastGoodPull.coatProduct: string',
    'atLastGoodPull.sealLot: string',
    'atLastGoodPull.sealProduct: string',
    'beforeBook.best: number',
    'beforeBook.high: number',
    'beforeBook.low: number',
    'clearedForProof: boolean',
    'clearedOn: string',
    'flags[].doneOn: string',
    'flags[].reason: string',
    'flags[].state: string',
    'flags[].untilOn: string',
    'heat.cycles[].count: number',
    'heat.cycles[].toC: number',
    'heat.hottestC: number',
    'heat.hottestFree.doneOn: string',
    'heat.hottestFree.toC: number',
    'heat.hottestWithPart.doneOn: string',
    'heat.hottestWithPart.toC: number',
    'heatBeforeBook.best: number',
    'heatBeforeBook.high: number',
    'heatBeforeBook.low: number',
    'heatLimits.bondedC: number',
    'heatLimits.freeC: number',
    'heatLimits.inUseC: number',
    'lastLeak.bagging: string',
    'lastLeak.doneOn: string',
    'lastLeak.endMbar: number',
    'lastLeak.heat: string',
    'lastLeak.minutes: number',
    'lastLeak.pins: string',
    'lastLeak.startMbar: number',
    'lastLeak.temperatureC: number',
    'lastPullOn: string',
    'lastPullWent: string',
    'lastRepairOn: string',
    'leakSinceRepair: boolean',
    'openDamage[].areaName: string',
    'openDamage[].doneOn: string',
    'openDamage[].what: string',
    'openMatters[].areaName: string',
    'openMatters[].byName: string',
    'openMatters[].carried: boolean',
    'openMatters[].doneOn: string',
    'openMatters[].entryId: string',
    'openMatters[].kind: string',
    'openMatters[].untilOn: string',
    'openMatters[].what: string',
    'openMatters[].who: string',
    'pins[].insertions: number',
    'pins[].tag: string',
    'place: string',
    'planOnBench.number: number',
    'planOnBench.place: string',
    'pulls: number',
    'pullsNotCleared: number',
    'pullsThisSeason: number',
    'release[].areaId: string',
    'release[].coatAt: string',
    'release[].coatLot: string',
    'release[].coatOn: string',
    'release[].coatProduct: string',
    'release[].coatsSinceStrip: number',
    'release[].laidOn: string',
    'release[].name: string',
    'release[].patchId: string',
    'release[].pulls: number',
    'release[].pullsSinceCoat: number',
    'release[].pullsSinceSeal: number',
    'release[].pullsSinceStrip: number',
    'release[].sealLot: string',
    'release[].sealOn: string',
    'release[].sealProduct: string',
    'release[].sealedSinceStrip: boolean',
    'release[].stripOn: string',
    'release[].tapeOn: string',
    'release[].tapeResult: string',
    'release[].tapeSinceCoat: boolean',
    'release[].target: string',
    'repairs[].areaId: string',
    'repairs[].areaName: string',
    'repairs[].closed: boolean',
    'repairs[].coatsSince: number',
    'repairs[].doneOn: string',
    'repairs[].entryId: string',
    'repairs[].interim: boolean',
    'repairs[].maxC: number',
    'repairs[].method: string',
    'repairs[].pullsSince: number',
    'repairs[].sealedSince: boolean',
    'repairs[].tapeSlipsSince: boolean',
    'repairs[].untilOn: string',
    'repairs[].untilPulls: number',
    'repairs[].usualSince: number',
    'repairs[].what: string',
    'unprovedPatches[].laidOn: string',
    'unprovedPatches[].number: number',
    'unprovedPatches[].patchId: string',
    'unprovedPatches[].place: string',
  ],
}

/** Nothing left out and no list empty: what is null in a value has no shape. */
type Full<T> = T extends readonly (infer Each)[]
  ? readonly [Full<Each>, ...Full<Each>[]]
  : T extends object
    ? { readonly [Key in keyof T]-?: Full<NonNullable<T[Key]>> }
    : T

const guess = { low: 1, best: 2, high: 3 }
const hottest = { toC: 120, doneOn: '2026-05-01' }
const quiet = quietCounts()

const full: Full<MouldCounts> = {
  ...quiet,
  lastPullOn: '2026-05-20',
  lastPullWent: 'usual',
  clearedOn: '2026-05-21',
  place: 'rack B4',
  lastRepairOn: '2026-05-10',
  flags: [{ state: 'away', reason: 'lent', doneOn: '2026-05-01', untilOn: '2026-06-01' }],
  openDamage: [{ what: 'a crack', areaName: 'floor', doneOn: '2026-05-01' }],
  planOnBench: { number: 1, place: 'floor B5' },
  unprovedPatches: [{ patchId: 'p', number: 2, place: 'floor B6', laidOn: '2026-05-01' }],
  lastLeak: {
    doneOn: '2026-05-01',
    bagging: 'mould alone',
    heat: 'hot',
    temperatureC: 80,
    pins: 'out',
    startMbar: 20,
    endMbar: 24,
    minutes: 10,
  },
  release: [
    {
      ...(release() as Full<MouldCounts['release'][number]>),
      areaId: 'a',
      patchId: 'p',
      laidOn: '2026-05-01',
      coatAt: '2026-05-01T10:00:00Z',
      sealLot: 'S1',
      coatLot: 'C1',
    },
  ],
  atLastGoodPull: { sealProduct: 'sealer', sealLot: 'S1', coatProduct: 'agent', coatLot: 'C1' },
  beforeBook: guess,
  heatBeforeBook: guess,
  heat: {
    cycles: [{ toC: 120, count: 3 }],
    hottestC: 120,
    hottestWithPart: hottest,
    hottestFree: hottest,
  },
  heatLimits: { inUseC: 120, freeC: 150, bondedC: 140 },
  pins: [{ tag: 'D01', insertions: 4 }],
  repairs: [
    {
      ...(repair() as Full<MouldCounts['repairs'][number]>),
      untilPulls: 5,
      untilOn: '2026-06-01',
      maxC: 60,
    },
  ],
  openMatters: [
    { ...(open() as Full<MouldCounts['openMatters'][number]>), untilOn: '2026-06-01', areaName: 'floor' },
  ],
}

/** Every figure and word in a value by its way from the top: "repairs[].untilOn: string". */
function shapeOf(value: unknown, way = ''): string[] {
  if (Array.isArray(value)) return value.flatMap((each) => shapeOf(each, `${way}[]`))
  if (typeof value !== 'object') return [`${way}: ${typeof value}`]
  if (value === null) return [`${way}: not filled in`]
  return Object.entries(value).flatMap(([key, each]) => shapeOf(each, way === '' ? key : `${way}.${key}`))
}

test('counts have the shape of their edition', () => {
  expect([...new Set(shapeOf(full))].sort()).toEqual(shapes[countsEdition])
})

test('no two editions have one shape', () => {
  const told = Object.values(shapes).map((lines) => lines.join('\n'))
  expect(new Set(told).size).toBe(told.length)
})
