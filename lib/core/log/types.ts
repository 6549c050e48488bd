import type { IsoDate } from '../dates'

/** Everything that can be written into a mould's log in this version. */
export const logKinds = [
  'cleared',
  'pull',
  'strip',
  'clean',
  'seal',
  'coat',
  'tape-test',
  'leak-check',
  'inspection',
  'damage',
  'dowel-changed',
  'moved',
  'state',
  'patch-laid',
  'proved',
  'note',
  'correction',
] as const
export type LogKind = (typeof logKinds)[number]

/** How a pull went, against what is usual for that mould. */
export const pullGrades = ['usual', 'harder', 'forced', 'stuck'] as const
export type PullGrade = (typeof pullGrades)[number]

/** States that are set by hand; the others follow from the log. */
export const handStates = ['being built', 'held', 'under repair', 'away', 'racked', 'retired'] as const
export type HandState = (typeof handStates)[number]

/** A mould is in the first of these that holds. */
export const mouldStates = [
  'retired',
  'away',
  'being built',
  'part in it',
  'under repair',
  'held',
  'proof pull only',
  'racked',
  'fit for use',
] as const
export type MouldState = (typeof mouldStates)[number]

/** What each kind of entry carries beside day, place and note. */
export interface LogData {
  readonly cleared: {
    readonly open: readonly string[]
    readonly because: string | null
    readonly proof: boolean
  }
  readonly pull: {
    readonly went: PullGrade
    readonly serial: string | null
    readonly partFate: 'good' | 'rework' | 'scrapped'
    readonly mouldFate: 'unharmed' | 'marked' | 'damaged'
    readonly cureC: number | null
  }
  readonly strip: { readonly product: string }
  readonly clean: { readonly product: string }
  readonly seal: { readonly product: string; readonly lot: string | null; readonly coats: number }
  readonly coat: {
    readonly product: string
    readonly lot: string | null
    readonly coats: number
    readonly minutesBetween: number | null
  }
  readonly 'tape-test': { readonly result: 'slips' | 'grips' }
  readonly 'leak-check': {
    /** What was bagged: the mould alone or with its bag. */
    readonly bagging: string
    readonly heat: 'cold' | 'hot'
    readonly temperatureC: number | null
    readonly pins: 'in' | 'out' | 'none'
    readonly volumeL: number | null
    readonly startMbar: number
    readonly endMbar: number
    readonly minutes: number
  }
  readonly inspection: { readonly verdict: 'sound' | 'look' | 'not sound'; readonly what: string }
  readonly damage: {
    readonly weight: 'mark' | 'open matter' | 'stop'
    readonly uMm: number | null
    readonly vMm: number | null
    readonly what: string
  }
  readonly 'dowel-changed': {
    readonly tag: string
    readonly what: 're-bushed' | 'plugged' | 'set new' | 'removed'
    readonly uMm: number | null
    readonly vMm: number | null
    readonly diameterMm: number | null
  }
  readonly moved: { readonly place: string }
  readonly state: { readonly state: HandState; readonly on: boolean; readonly reason: string }
  readonly 'patch-laid': {
    readonly planId: string
    readonly number: number
    readonly lots: readonly { readonly material: string; readonly lot: string }[]
  }
  readonly proved: { readonly planId: string | null; readonly number: number }
  readonly note: Readonly<Record<string, never>>
  readonly correction: Readonly<Record<string, never>>
}

export type Precision = 'minute' | 'day' | 'month' | 'year' | 'before'

interface EntryHead {
  readonly id: string
  readonly doneOn: IsoDate
  readonly doneAt: string | null
  readonly precision: Precision
  readonly writtenAt: string
  readonly byName: string
  readonly areaId: string | null
  readonly areaName: string | null
  readonly patchId: string | null
  readonly patchNumber: number | null
  readonly note: string
  /** The entry that this one puts right. */
  readonly correctsId: string | null
  /** The entry that put this one right: it is readable and no longer counts. */
  readonly correctedById: string | null
}

/** One line of a mould's history. */
export type LogEntry = {
  [Kind in LogKind]: EntryHead & { readonly kind: Kind; readonly data: LogData[Kind] }
}[LogKind]

/** Counts and last acts for the whole face, an area, or the spot of a patch. Null: never recorded, so not known. */
export interface ReleaseCount {
  readonly target: 'face' | 'area' | 'patch'
  readonly areaId: string | null
  readonly patchId: string | null
  /** "whole face", "floor", "Patch 7, floor B5" */
  readonly name: string
  readonly laidOn: IsoDate | null
  readonly stripOn: IsoDate | null
  readonly sealOn: IsoDate | null
  readonly coatOn: IsoDate | null
  readonly coatAt: string | null
  readonly tapeOn: IsoDate | null
  readonly tapeResult: 'slips' | 'grips' | null
  readonly sealedSinceStrip: boolean
  readonly tapeSinceCoat: boolean
  readonly sealProduct: string | null
  readonly sealLot: string | null
  readonly coatProduct: string | null
  readonly coatLot: string | null
  readonly coatsSinceStrip: number
  readonly pulls: number
  readonly pullsSinceStrip: number
  readonly pullsSinceSeal: number
  readonly pullsSinceCoat: number
}

export interface LeakReading {
  readonly doneOn: IsoDate
  readonly bagging: string
  readonly heat: 'cold' | 'hot'
  readonly temperatureC: number | null
  readonly pins: 'in' | 'out' | 'none'
  readonly startMbar: number
  readonly endMbar: number
  readonly minutes: number
}

/** What the log's views say of one mould: counts and last entries, no judgement. */
export interface MouldCounts {
  readonly pulls: number
  readonly pullsThisSeason: number
  readonly pullsNotCleared: number
  readonly lastPullOn: IsoDate | null
  readonly lastPullWent: PullGrade | null
  /** Cleared to lay up, and no pull since. */
  readonly clearedOn: IsoDate | null
  readonly clearedForProof: boolean
  readonly place: string | null
  readonly flags: readonly { readonly state: HandState; readonly reason: string; readonly doneOn: IsoDate }[]
  readonly openDamage: readonly {
    readonly what: string
    readonly areaName: string | null
    readonly doneOn: IsoDate
  }[]
  readonly planOnBench: { readonly number: number; readonly place: string } | null
  readonly unprovedPatches: readonly {
    readonly patchId: string
    readonly number: number
    readonly place: string
    readonly laidOn: IsoDate
  }[]
  readonly lastRepairOn: IsoDate | null
  readonly lastLeak: LeakReading | null
  /** The last leak check was written later than the last repair. */
  readonly leakSinceRepair: boolean
  readonly release: readonly ReleaseCount[]
  /** Products and lots on the face at the last pull that went as usual. */
  readonly atLastGoodPull: {
    readonly sealProduct: string | null
    readonly sealLot: string | null
    readonly coatProduct: string | null
    readonly coatLot: string | null
  } | null
}

/** Shop rules that release and leak are judged by. Defaults from memory, editable. */
export interface UpkeepRules {
  readonly coatsAfterStrip: number
  readonly sealNeeded: boolean
  readonly firstPulls: number
  readonly pullsPerTouchUp: number
  readonly pullsPerStrip: number
  readonly coatDryMin: number
  /** Leak limit as mbar lost over so many minutes. */
  readonly leakLimitMbar: number
  readonly leakLimitMin: number
  readonly leakEveryDays: number
}

export const defaultUpkeepRules: UpkeepRules = {
  coatsAfterStrip: 4,
  sealNeeded: true,
  firstPulls: 3,
  pullsPerTouchUp: 5,
  pullsPerStrip: 50,
  coatDryMin: 30,
  leakLimitMbar: 10,
  leakLimitMin: 10,
  leakEveryDays: 180,
}
