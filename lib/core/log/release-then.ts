import type { IsoDate } from '../dates'
import type { LogKind } from './kinds'
import type { LogEntry } from './types'

type Of<Kind extends LogKind> = Extract<LogEntry, { kind: Kind }>

/** Sealer or release agent of one lot on one place: how many coats, from when to when. */
export interface ReleaseLine {
  readonly kind: 'seal' | 'coat'
  readonly place: string
  readonly product: string
  readonly lot: string | null
  readonly coats: number
  readonly firstOn: IsoDate
  readonly lastOn: IsoDate
  /** The entry that began it: parts since then came off it. */
  readonly firstEntryId: string
}

/** Entries, latest first, put together by place, product and lot; the last that went on comes first. */
export function releaseLines(entries: readonly (Of<'seal'> | Of<'coat'>)[]): readonly ReleaseLine[] {
  const lines = new Map<string, ReleaseLine>()
  for (const entry of entries) {
    const place = entry.patchNumber === null ? (entry.areaName ?? 'whole face') : `Patch ${entry.patchNumber}`
    const { product, lot, coats } = entry.data
    const key = JSON.stringify([entry.kind, place, product.trim().toLowerCase(), lot?.trim().toLowerCase()])
    const known = lines.get(key)
    lines.set(key, {
      kind: entry.kind,
      place,
      product: known?.product ?? product,
      lot: known?.lot ?? lot,
      coats: (known?.coats ?? 0) + coats,
      firstOn: entry.doneOn,
      lastOn: known?.lastOn ?? entry.doneOn,
      firstEntryId: entry.id,
    })
  }
  return [...lines.values()]
}
