import type { IsoDate } from '../dates'
import type { HandState, LogData, LogKind, PullGrade } from './kinds'

export type Precision = 'minute' | 'day' | 'month' | 'year' | 'before'

/** An amount taken from a stock lot, in the unit in which the lot is kept. */
export interface LotUsed {
  readonly lotId: string
  readonly lot: string
  readonly name: string
  readonly amount: number
  readonly unit: string
}

interface EntryHead {
  readonly id: string
  readonly doneOn: IsoDate
  readonly doneAt: string | null
  readonly precision: Precision
  readonly writtenAt: string
  readonly byName: string
  readonly areaId: string | null
  readonly areaName: string | null
  /** Where on the area, as `entryPlace` names it with the grid and the points of today; null: no place is told, or its grid isn't known. */
  readonly place: string | null
  readonly patchId: string | null
  readonly patchNumber: number | null
  readonly note: string
  /** Shared by the entries of several pieces that were entered as one. */
  readonly groupId: string | null
  /** What was taken from stock for it. */
  readonly uses: readonly LotUsed[]
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

/** A figure that is known only as a range. */
export interface Guess {
  readonly low: number
  readonly best: number
  readonly high: number
}

/** The hottest that was seen, and when. */
export interface Hottest {
  readonly toC: number
  readonly doneOn: IsoDate
}

/** Every heat that the log tells of: entries of their own, and the cures that pulls name. */
export interface HeatCount {
  /** Heats by temperature, hottest first. */
  readonly cycles: readonly { readonly toC: number; readonly count: number }[]
  readonly hottestC: number | null
  /** Since the whole face was last inspected and found sound. */
  readonly hottestWithPart: Hottest | null
  readonly hottestFree: Hottest | null
}

/** A fill, a surface ply or another repair, and what was done to its ground since. */
export interface RepairCount {
  readonly entryId: string
  readonly areaId: string | null
  readonly areaName: string | null
  readonly doneOn: IsoDate
  readonly method: LogData['repair']['method']
  readonly what: string
  readonly interim: boolean
  readonly untilPulls: number | null
  readonly untilOn: IsoDate | null
  readonly maxC: number | null
  readonly pullsSince: number
  readonly usualSince: number
  readonly sealedSince: boolean
  readonly coatsSince: number
  readonly tapeSlipsSince: boolean
  /** Its matter was closed: the limit no longer holds. */
  readonly closed: boolean
}

/** A matter that somebody has to see to, with the last word on who and until when. */
export interface OpenMatter {
  /** The entry that it began with; to be named by what settles it. */
  readonly entryId: string
  readonly kind: 'matter' | 'damage' | 'repair'
  readonly what: string
  readonly who: string | null
  readonly untilOn: IsoDate | null
  readonly doneOn: IsoDate
  readonly byName: string
  readonly areaName: string | null
  /** It was carried on at least once. */
  readonly carried: boolean
}

/** What the log's views say of one mould: counts and last entries, no judgement. */
export interface MouldCounts {
  /** Of the book alone. */
  readonly pulls: number
  readonly pullsThisSeason: number
  readonly pullsNotCleared: number
  readonly lastPullOn: IsoDate | null
  readonly lastPullWent: PullGrade | null
  /** Cleared to lay up, and no pull since. */
  readonly clearedOn: IsoDate | null
  readonly clearedForProof: boolean
  readonly place: string | null
  readonly flags: readonly {
    readonly state: HandState
    readonly reason: string
    readonly doneOn: IsoDate
    readonly untilOn: IsoDate | null
  }[]
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
  /** Pulls and heats before the book, summed over what was written of them; null: nobody has written it. */
  readonly beforeBook: Guess | null
  readonly heatBeforeBook: Guess | null
  readonly heat: HeatCount
  /** The three heat limits of the mould; null: not known. */
  readonly heatLimits: {
    readonly inUseC: number | null
    readonly freeC: number | null
    readonly bondedC: number | null
  }
  /** Pin insertions since the bush was last set or re-bushed; tag null: those of every pin alike. */
  readonly pins: readonly { readonly tag: string | null; readonly insertions: number }[]
  /** Oldest first. */
  readonly repairs: readonly RepairCount[]
  readonly openMatters: readonly OpenMatter[]
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
