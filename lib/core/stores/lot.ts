import { daysAfter, daysBetween, type IsoDate, shortDate } from '../dates'
import { figure } from '../units'
import { amountText, leastAmount, type StockUnit } from './amount'

/** A roll or a tin as the book has it today. */
export interface LotFacts {
  readonly lot: string
  readonly unit: StockUnit
  readonly quantity: number
  /** By the book; below zero when more was taken than there was. */
  readonly remaining: number
  readonly receivedOn: IsoDate
  readonly expiresOn: IsoDate | null
  readonly openedOn: IsoDate | null
  readonly closedOn: IsoDate | null
  readonly closedWhy: string | null
  readonly outHours: number
  /** Of its material: hours out of the freezer that it stands in all. */
  readonly outLifeH: number | null
  /** Of its product's card. */
  readonly shelfLifeDays: number | null
  readonly openLifeDays: number | null
  /** Of its material or product: below this it is said to be low. */
  readonly lowBelow: number | null
}

export const lotStates = ['closed', 'late', 'out life gone', 'empty', 'use first', 'low', 'fit'] as const
export type LotState = (typeof lotStates)[number]

export interface LotReason {
  readonly code: 'late' | 'out-life-gone' | 'overdrawn' | 'empty' | 'nearly-late' | 'nearly-out' | 'low'
  /** What is so, with the figures; begins with a small letter, to stand after the lot's name. */
  readonly text: string
  readonly cure: string
}

export interface LotStanding {
  /** The first of `lotStates` that holds. */
  readonly state: LotState
  /** May be used without a because. */
  readonly usable: boolean
  /** The last day on which it is fit, and what says so. */
  readonly goodUntil: {
    readonly on: IsoDate
    readonly by: 'date on the lot' | 'shelf life' | 'open life'
  } | null
  /** Hours that are left out of the freezer; null where no out life is known. */
  readonly outHoursLeft: number | null
  readonly reasons: readonly LotReason[]
}

/** How long before its last day a lot is told; common practice, no source. */
export const soonDays = 14
/** Share of the out life after which a lot is nearly out of it; from memory. */
export const nearlyOutShare = 0.8

/** How a lot stands on a day. A lot is fit on its last day, and late the day after. */
export function lotStanding(lot: LotFacts, today: IsoDate): LotStanding {
  const goodUntil = lastGoodDay(lot)
  const outHoursLeft = lot.outLifeH === null ? null : lot.outLifeH - lot.outHours
  if (lot.closedOn !== null) {
    return { state: 'closed', usable: false, goodUntil, outHoursLeft, reasons: [] }
  }
  const reasons = [...ageReasons(goodUntil, today), ...outReasons(lot, outHoursLeft), ...stockReasons(lot)]
  const codes = new Set(reasons.map((reason) => reason.code))
  const state: LotState = codes.has('late')
    ? 'late'
    : codes.has('out-life-gone')
      ? 'out life gone'
      : codes.has('empty') || codes.has('overdrawn')
        ? 'empty'
        : codes.has('nearly-late') || codes.has('nearly-out')
          ? 'use first'
          : codes.has('low')
            ? 'low'
            : 'fit'
  return {
    state,
    usable: state === 'use first' || state === 'low' || state === 'fit',
    goodUntil,
    outHoursLeft,
    reasons,
  }
}

/** The earliest of the date on the lot (else the shelf life from its receipt) and the open life from its opening. */
function lastGoodDay(lot: LotFacts): LotStanding['goodUntil'] {
  const ends: NonNullable<LotStanding['goodUntil']>[] = []
  if (lot.expiresOn !== null) ends.push({ on: lot.expiresOn, by: 'date on the lot' })
  else if (lot.shelfLifeDays !== null)
    ends.push({ on: daysAfter(lot.receivedOn, lot.shelfLifeDays), by: 'shelf life' })
  if (lot.openedOn !== null && lot.openLifeDays !== null)
    ends.push({ on: daysAfter(lot.openedOn, lot.openLifeDays), by: 'open life' })
  return ends.sort((a, b) => (a.on < b.on ? -1 : a.on > b.on ? 1 : 0))[0] ?? null
}

function ageReasons(goodUntil: LotStanding['goodUntil'], today: IsoDate): LotReason[] {
  if (goodUntil === null) return []
  const left = daysBetween(today, goodUntil.on)
  const on = shortDate(goodUntil.on, today)
  const by = goodUntil.by === 'date on the lot' ? '' : ` by its ${goodUntil.by}`
  if (left < 0) {
    return [
      {
        code: 'late',
        text: `past its date${by}: it was good until ${on}`,
        cure: 'Close it, or write in the date that the maker agrees to.',
      },
    ]
  }
  if (left > soonDays) return []
  return [
    {
      code: 'nearly-late',
      text: left === 0 ? `good until today${by}` : `good until ${on}${by}, ${days(left)} from now`,
      cure: 'Use it first.',
    },
  ]
}

const days = (count: number) => (count === 1 ? '1 day' : `${count} days`)

function outReasons(lot: LotFacts, leftH: number | null): LotReason[] {
  if (leftH === null || lot.outLifeH === null) return []
  const out = `${figure(lot.outHours, 1)} of ${figure(lot.outLifeH, 0)} h out of the freezer`
  if (leftH <= 0) {
    return [
      {
        code: 'out-life-gone',
        text: `its out life is gone: ${out}`,
        cure: 'Close it, or lay a test piece and say so when it is used.',
      },
    ]
  }
  if (lot.outHours < nearlyOutShare * lot.outLifeH) return []
  return [
    {
      code: 'nearly-out',
      text: `${out}; ${figure(leftH, 1)} h are left`,
      cure: 'Use it first, or cut kits and freeze them.',
    },
  ]
}

function stockReasons(lot: LotFacts): LotReason[] {
  if (lot.remaining < -leastAmount) {
    return [
      {
        code: 'overdrawn',
        text: `${amountText(-lot.remaining, lot.unit)} more were taken than the book had`,
        cure: 'Count what is there.',
      },
    ]
  }
  if (lot.remaining <= leastAmount) {
    return [{ code: 'empty', text: 'nothing is left by the book', cure: 'Close it as used up, or count it.' }]
  }
  if (lot.lowBelow === null || lot.remaining >= lot.lowBelow) return []
  return [
    {
      code: 'low',
      text: `${amountText(lot.remaining, lot.unit)} left, low below ${amountText(lot.lowBelow, lot.unit)}`,
      cure: 'Order in time.',
    },
  ]
}

/** Orders lots as they are offered: usable first, then those that end first; what ends nowhere last. */
export function byUse(
  a: { readonly standing: LotStanding; readonly receivedOn: IsoDate },
  b: { readonly standing: LotStanding; readonly receivedOn: IsoDate },
): number {
  if (a.standing.usable !== b.standing.usable) return a.standing.usable ? -1 : 1
  const end = (lot: { readonly standing: LotStanding }) => lot.standing.goodUntil?.on ?? '9999-12-31'
  return compare(end(a), end(b)) || compare(a.receivedOn, b.receivedOn)
}

const compare = (a: string, b: string) => (a < b ? -1 : a > b ? 1 : 0)
