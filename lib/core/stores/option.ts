import { amountText, type StockUnit } from './amount'
import type { LotFacts, LotStanding } from './lot'

/** A lot as it stands in a list to choose from. */
export interface LotOption {
  readonly value: string
  readonly label: string
  readonly unit: StockUnit
  readonly subject: string
  readonly usable: boolean
}

const told: Readonly<Record<LotStanding['state'], string>> = {
  closed: ', closed',
  late: ', past its date',
  'out life gone': ', out life gone',
  empty: '',
  'use first': ', use first',
  low: '',
  fit: '',
}

/** "Semi-permanent agent A, lot A-121: 0.8 l left, use first". */
export function lotOption(
  lot: LotFacts & {
    readonly id: string
    readonly subjectCode: string | null
    readonly subjectName: string
    readonly standing: LotStanding
  },
): LotOption {
  const subject = lot.subjectCode ?? lot.subjectName
  return {
    value: lot.id,
    label: `${subject}, lot ${lot.lot}: ${amountText(lot.remaining, lot.unit)} left${told[lot.standing.state]}`,
    unit: lot.unit,
    subject,
    usable: lot.standing.usable,
  }
}
