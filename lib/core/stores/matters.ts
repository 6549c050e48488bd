import type { IsoDate } from '../dates'
import type { Severity } from '../result'
import { amountText, type StockUnit } from './amount'
import { type LotFacts, type LotReason, lotStanding } from './lot'

/** A material or a product with its lots. */
export interface StockSubject {
  readonly kind: 'material' | 'product'
  readonly id: string
  readonly name: string
  readonly unit: StockUnit
  /** Below this over all usable lots it is low; null: never. */
  readonly lowBelow: number | null
  readonly retired: boolean
  readonly lots: readonly (LotFacts & { readonly id: string })[]
}

/** What has to be seen to in the stores, for the Bench. */
export interface StockMatter {
  readonly code: LotReason['code'] | 'stock-low' | 'stock-none'
  /** look: it stops work or will be told when it is used; note: it is coming. */
  readonly severity: Exclude<Severity, 'stop'>
  readonly subjectKind: StockSubject['kind']
  readonly subjectId: string
  readonly subjectName: string
  readonly lotId: string | null
  readonly lot: string | null
  readonly text: string
  readonly cure: string
  /** Last good day of the lot, where a day is the matter. */
  readonly on: IsoDate | null
}

const severityOf: Readonly<Record<LotReason['code'], StockMatter['severity'] | null>> = {
  late: 'look',
  'out-life-gone': 'look',
  overdrawn: 'look',
  empty: 'note',
  'nearly-late': 'note',
  'nearly-out': 'note',
  // How much there is in all counts on the Bench, not what one roll has.
  low: null,
}

const order: readonly StockMatter['code'][] = [
  'late',
  'out-life-gone',
  'stock-none',
  'stock-low',
  'overdrawn',
  'nearly-late',
  'nearly-out',
  'empty',
]

/** Low, late and soon late stock, what weighs most first. */
export function stockMatters(subjects: readonly StockSubject[], today: IsoDate): StockMatter[] {
  const found = subjects.flatMap((subject) => [...lotMatters(subject, today), ...lowMatter(subject, today)])
  return found.sort(
    (a, b) =>
      order.indexOf(a.code) - order.indexOf(b.code) ||
      compare(a.on ?? '9999', b.on ?? '9999') ||
      compare(a.subjectName, b.subjectName) ||
      compare(a.lot ?? '', b.lot ?? ''),
  )
}

const compare = (a: string, b: string) => (a < b ? -1 : a > b ? 1 : 0)

function lotMatters(subject: StockSubject, today: IsoDate): StockMatter[] {
  return subject.lots.flatMap((lot) => {
    const standing = lotStanding(lot, today)
    return standing.reasons.flatMap((reason): StockMatter[] => {
      const severity = severityOf[reason.code]
      if (severity === null) return []
      const aged = reason.code === 'late' || reason.code === 'nearly-late'
      return [
        {
          ...head(subject),
          code: reason.code,
          severity,
          lotId: lot.id,
          lot: lot.lot,
          text: reason.text,
          cure: reason.cure,
          on: aged ? (standing.goodUntil?.on ?? null) : null,
        },
      ]
    })
  })
}

function head(subject: StockSubject) {
  return { subjectKind: subject.kind, subjectId: subject.id, subjectName: subject.name }
}

/** What is usable of a subject in all, and in how many lots. */
export function usableStock(
  subject: Pick<StockSubject, 'lots'>,
  today: IsoDate,
): { readonly amount: number; readonly lots: number } {
  const usable = subject.lots.filter((lot) => lotStanding(lot, today).usable)
  return { amount: usable.reduce((sum, lot) => sum + lot.remaining, 0), lots: usable.length }
}

function lowMatter(subject: StockSubject, today: IsoDate): StockMatter[] {
  if (subject.lowBelow === null || subject.retired) return []
  const { amount, lots } = usableStock(subject, today)
  if (amount >= subject.lowBelow) return []
  const none = lots === 0
  const limit = amountText(subject.lowBelow, subject.unit)
  return [
    {
      ...head(subject),
      code: none ? 'stock-none' : 'stock-low',
      severity: 'look',
      lotId: null,
      lot: null,
      text: none
        ? `nothing of it is fit for use; low below ${limit}`
        : `low: ${amountText(amount, subject.unit)} fit for use in ${lots === 1 ? '1 lot' : `${lots} lots`}, low below ${limit}`,
      cure: 'Order it, or receive the lot that has come.',
      on: null,
    },
  ]
}
