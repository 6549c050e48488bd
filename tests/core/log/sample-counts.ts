import type { MouldCounts, OpenMatter, ReleaseCount, RepairCount } from '#lib/core/log/index'

/** A face that was stripped, sealed and coated as new, with some pulls behind it. */
export function release(changes: Partial<ReleaseCount> = {}): ReleaseCount {
  return {
    target: 'face',
    areaId: null,
    patchId: null,
    name: 'whole face',
    laidOn: null,
    stripOn: '2026-01-05',
    sealOn: '2026-01-06',
    coatOn: '2026-05-01',
    coatAt: null,
    tapeOn: '2026-05-02',
    tapeResult: 'slips',
    sealedSinceStrip: true,
    tapeSinceCoat: true,
    sealProduct: 'sealer',
    sealLot: null,
    coatProduct: 'release',
    coatLot: null,
    coatsSinceStrip: 5,
    pulls: 9,
    pullsSinceStrip: 9,
    pullsSinceSeal: 9,
    pullsSinceCoat: 2,
    ...changes,
  }
}

/** A mould with nothing to say: fit for use, leak checked, release in order. */
export function quietCounts(changes: Partial<MouldCounts> = {}): MouldCounts {
  return {
    pulls: 9,
    pullsThisSeason: 9,
    pullsNotCleared: 0,
    lastPullOn: '2026-05-20',
    lastPullWent: 'usual',
    clearedOn: null,
    clearedForProof: false,
    place: 'rack B4',
    flags: [],
    openDamage: [],
    planOnBench: null,
    unprovedPatches: [],
    lastRepairOn: null,
    lastLeak: {
      doneOn: '2026-05-01',
      bagging: 'mould alone',
      heat: 'cold',
      temperatureC: null,
      pins: 'out',
      startMbar: 20,
      endMbar: 24,
      minutes: 10,
    },
    leakSinceRepair: true,
    release: [release()],
    atLastGoodPull: null,
    beforeBook: null,
    heatBeforeBook: null,
    heat: { cycles: [], hottestC: null, hottestWithPart: null, hottestFree: null },
    heatLimits: { inUseC: null, freeC: null, bondedC: null },
    pins: [],
    repairs: [],
    openMatters: [],
    ...changes,
  }
}

/** A fill for good that was sealed, coated as new and tape tested since. */
export function repair(changes: Partial<RepairCount> = {}): RepairCount {
  return {
    entryId: 'r',
    areaId: 'a',
    areaName: 'floor',
    doneOn: '2026-05-10',
    method: 'fill',
    what: 'chip filled',
    interim: false,
    untilPulls: null,
    untilOn: null,
    maxC: null,
    pullsSince: 0,
    usualSince: 0,
    sealedSince: true,
    coatsSince: 4,
    tapeSlipsSince: true,
    closed: false,
    ...changes,
  }
}

/** A matter without a day. */
export function open(changes: Partial<OpenMatter> = {}): OpenMatter {
  return {
    entryId: 'm',
    kind: 'matter',
    what: 'order a bush',
    who: 'Ada',
    untilOn: null,
    doneOn: '2026-05-10',
    byName: 'Ben',
    areaName: null,
    carried: false,
    ...changes,
  }
}
