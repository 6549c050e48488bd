import type { IsoDate } from '../dates'
import type { Finding } from '../result'
import { amountText, leastAmount } from './amount'
import { type LotFacts, lotStanding } from './lot'

/** What a take-off needs of a material, and what the stores have of it. */
export interface StockCover {
  readonly material: string
  readonly needM2: number
  /** Null where the stores keep no lot of it: the shop doesn't count it. */
  readonly stock: { readonly amountM2: number; readonly lots: number } | null
  readonly enough: boolean
  /** "12 m² fit for use in 2 lots". */
  readonly text: string
}

/** Needs and stock of one material. `lots` are all that the stores ever had of it, closed ones too. */
export function stockCover(
  material: string,
  needM2: number,
  lots: readonly LotFacts[],
  today: IsoDate,
): StockCover {
  if (lots.length === 0) {
    return { material, needM2, stock: null, enough: true, text: 'no lot of it is kept' }
  }
  const usable = lots.filter((lot) => lotStanding(lot, today).usable)
  const amountM2 = usable.reduce((sum, lot) => sum + lot.remaining, 0)
  const enough = amountM2 + leastAmount >= needM2
  const held = `${amountText(amountM2, 'm2')} fit for use in ${usable.length === 1 ? '1 lot' : `${usable.length} lots`}`
  return {
    material,
    needM2,
    stock: { amountM2, lots: usable.length },
    enough,
    text: usable.length === 0 ? 'none is fit for use' : enough ? held : `only ${held}`,
  }
}

/** What is taken from a lot in one go. */
export interface Taking {
  readonly subjectName: string
  readonly lot: LotFacts
  readonly amount: number
}

/**
 * What has to be told before lots are used: out of life, or short. A look is answered with a because. What the lot
 * does not hold can't be taken: that is a stop, and the cure is to count it.
 */
export function takingFindings(takings: readonly Taking[], today: IsoDate): Finding[] {
  return takings.flatMap((taking) => {
    const { lot, amount, subjectName } = taking
    const place = `${subjectName}, lot ${lot.lot}`
    const standing = lotStanding(lot, today)
    if (standing.state === 'closed') {
      return [
        finding(
          'lot-closed',
          'stop',
          `${place} is closed: ${lot.closedWhy ?? ''}`,
          place,
          'Choose another lot, or open it again.',
        ),
      ]
    }
    const found: Finding[] = standing.reasons
      .filter((reason) => reason.code === 'late' || reason.code === 'out-life-gone')
      .map((reason) =>
        finding(
          `lot-${reason.code}`,
          'look',
          `${place}: ${reason.text}`,
          place,
          'Take a fit lot, or give a because.',
        ),
      )
    if (amount > lot.remaining + leastAmount) {
      found.push(
        finding(
          'lot-short',
          'stop',
          `${place} has ${amountText(Math.max(0, lot.remaining), lot.unit)} left by the book; ${amountText(amount, lot.unit)} can't be taken from it`,
          place,
          'Count the lot if more is there, or take the rest from another one.',
        ),
      )
    }
    return found
  })
}

function finding(
  code: string,
  severity: Finding['severity'],
  text: string,
  place: string,
  cure: string,
): Finding {
  return { code, severity, text, place, cure }
}
