import { mouldStates } from '#lib/core/log/index'
import type { RackRow } from '#lib/services/moulds'

interface Column {
  readonly name: string
  /** The word in the address, where the rack can be sorted by this column. */
  readonly sort?: string
  /** Sorted with the highest first. */
  readonly falling?: boolean
  readonly number?: boolean
}

export const columns: readonly Column[] = [
  { name: 'Mould', sort: 'code' },
  { name: 'State', sort: 'state' },
  { name: 'Pulls, season / all', sort: 'pulls', falling: true, number: true },
  { name: 'Since coated / sealed / stripped', sort: 'coated', falling: true, number: true },
  { name: 'Last leak check', sort: 'leak', number: true },
  { name: 'Next', sort: 'next' },
  { name: 'Place', sort: 'place' },
  { name: 'Pull strip' },
]

function plain(text: string): string {
  return text
    .normalize('NFD')
    .replace(/\p{Diacritic}/gu, '')
    .toLowerCase()
}

/** Every word of the search stands somewhere in what names the mould, without regard to case and accents. */
export function matchesWords({ mould, counts }: RackRow, find: string): boolean {
  const named = plain(
    [
      mould.code,
      mould.name,
      mould.part?.code,
      mould.part?.name,
      mould.pattern?.code,
      mould.pattern?.name,
      mould.set?.code,
      mould.set?.name,
      mould.owner,
      counts.place,
    ].join(' '),
  )
  return plain(find)
    .split(/\s+/)
    .every((word) => named.includes(word))
}

const severities = ['stop', 'look', 'note']

type Order = (a: RackRow, b: RackRow) => number

const byCode: Order = (a, b) => a.mould.code.localeCompare(b.mould.code, 'en', { numeric: true })

const orders: Readonly<Record<string, Order>> = {
  code: byCode,
  state: (a, b) => mouldStates.indexOf(a.standing.state) - mouldStates.indexOf(b.standing.state),
  pulls: (a, b) => b.counts.pulls - a.counts.pulls,
  coated: (a, b) => sinceCoated(b) - sinceCoated(a),
  leak: (a, b) => (a.counts.lastLeak?.doneOn ?? '').localeCompare(b.counts.lastLeak?.doneOn ?? ''),
  next: (a, b) => worst(a) - worst(b),
  place: (a, b) => (a.counts.place ?? '').localeCompare(b.counts.place ?? '', 'en', { numeric: true }),
}

function sinceCoated(row: RackRow): number {
  return row.counts.release[0]?.pullsSinceCoat ?? 0
}

function worst(row: RackRow): number {
  const first = row.matters[0]
  return first ? severities.indexOf(first.severity) : severities.length
}

/** The rack in the order that was asked for; codes decide between equals. */
export function inOrder(rows: readonly RackRow[], sort: string): RackRow[] {
  const order = orders[sort] ?? byCode
  return [...rows].sort((a, b) => order(a, b) || byCode(a, b))
}
