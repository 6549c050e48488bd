import type { IsoDate } from '../dates'

/** Everything that can be written into the log of a mould or a pattern. */
export const logKinds = [
  'cleared',
  'pull',
  'strip',
  'clean',
  'seal',
  'coat',
  'tape-test',
  'test-patch',
  'leak-check',
  'inspection',
  'damage',
  'repair',
  'dowel-changed',
  're-machined',
  'heat',
  'pins',
  'measured',
  'moved',
  'state',
  'patch-laid',
  'proved',
  'before-book',
  'matter',
  'settled',
  'note',
  'correction',
] as const
export type LogKind = (typeof logKinds)[number]

/** What can be written into the log of a pattern: it sees no lay-up of its own. */
export const patternKinds = [
  'clean',
  'seal',
  'coat',
  'inspection',
  'damage',
  'repair',
  're-machined',
  'measured',
  'moved',
  'before-book',
  'matter',
  'settled',
  'note',
  'correction',
] as const satisfies readonly LogKind[]
export type PatternKind = (typeof patternKinds)[number]

/** Kinds that one act writes on every piece of a split mould. */
export const setKinds = ['cleared', 'pull'] as const satisfies readonly LogKind[]
export type SetKind = (typeof setKinds)[number]

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
  /** A small laminate or a spot of resin on a tile or on the face, to see whether sealer and agent release it. */
  readonly 'test-patch': {
    readonly surface: string
    readonly sealer: string | null
    readonly agent: string
    readonly result: 'releases' | 'grips'
  }
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
  readonly repair: {
    readonly method: 'fill' | 'surface ply' | 'other'
    readonly what: string
    /** For the time being, with a limit in pulls or a day. */
    readonly interim: boolean
    readonly untilPulls: number | null
    readonly untilOn: IsoDate | null
    /** No hotter than this where it was repaired. */
    readonly maxC: number | null
    readonly uMm: number | null
    readonly vMm: number | null
  }
  readonly 'dowel-changed': {
    readonly tag: string
    readonly what: 're-bushed' | 'plugged' | 'set new' | 'removed'
    readonly uMm: number | null
    readonly vMm: number | null
    readonly diameterMm: number | null
  }
  readonly 're-machined': { readonly what: string; readonly depthMm: number | null; readonly by: string }
  readonly heat: {
    readonly what: 'cure' | 'post-cure' | 'other'
    readonly toC: number
    readonly holdMin: number | null
    /** With a part or a bag in it; else the mould stood free. */
    readonly withPart: boolean
  }
  /** Pins driven into their bushes; tag null: every pin of the mould. */
  readonly pins: { readonly tag: string | null; readonly insertions: number }
  readonly measured: {
    readonly instrument: string
    readonly temperatureC: number | null
    /** In the frame of the entry's area (u, v, n), or in the datum axes of the mould or pattern. */
    readonly frame: 'area' | 'datum'
    readonly points: readonly {
      readonly tag: string
      readonly xMm: number
      readonly yMm: number
      readonly zMm: number | null
    }[]
  }
  readonly moved: { readonly place: string }
  /** `untilOn` is missing in entries of before it was asked for. */
  readonly state: {
    readonly state: HandState
    readonly on: boolean
    readonly reason: string
    readonly untilOn?: IsoDate | null | undefined
  }
  readonly 'patch-laid': {
    readonly planId: string
    readonly number: number
    readonly lots: readonly { readonly material: string; readonly lot: string }[]
  }
  readonly proved: { readonly planId: string | null; readonly number: number }
  /** What it went through before it was written down: a range each, never a single figure that nobody knows. */
  readonly 'before-book': {
    readonly pullsLow: number
    readonly pullsBest: number
    readonly pullsHigh: number
    readonly heatLow: number | null
    readonly heatBest: number | null
    readonly heatHigh: number | null
    /** What it is known from. */
    readonly what: string
  }
  readonly matter: { readonly what: string; readonly who: string; readonly untilOn: IsoDate | null }
  /** The last word on an open matter: closed, or carried on with another name or day (null: as before). */
  readonly settled: {
    readonly entryId: string
    readonly outcome: 'closed' | 'carried'
    readonly who: string | null
    readonly untilOn: IsoDate | null
    readonly how: string
  }
  readonly note: Readonly<Record<string, never>>
  readonly correction: Readonly<Record<string, never>>
}
