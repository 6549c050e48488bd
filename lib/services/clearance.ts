import 'server-only'
import { beforeLayUp, type LogEntry } from '#lib/core/log/index'
import type { Actor } from '#lib/schema/actor'
import type { NewLogEntry } from '#lib/schema/log'
import { mouldCounts } from '#lib/store/counts'
import { Refusal } from '#lib/store/errors'
import { type EntryToWrite, pullAfter } from '#lib/store/log'
import type { ShopContext } from './shop'

/**
 * The gate: what is open, whether it may be cleared, by whom. Judged under the mould's lock. `piece` is the code of
 * the mould where it is cleared as a piece of a split mould: what stops is then told with it.
 */
export async function judgeClearance(
  actor: Actor,
  entry: Extract<NewLogEntry, { kind: 'cleared' }>,
  dayOrder: number,
  context: ShopContext,
  sql: Parameters<NonNullable<EntryToWrite['judge']>>[0],
  piece: string | null = null,
): Promise<LogEntry['data']> {
  const named = piece === null ? '' : `${piece}: `
  if (await pullAfter(entry.mouldId, entry.doneOn, dayOrder, sql)) {
    throw new Refusal(
      `${named === '' ? 'A' : `${named}a`} later pull is written down already: a mould is cleared before the lay-up, not after the pull`,
      {
        fields: { doneOn: 'A pull stands after it' },
      },
    )
  }
  const counts = (await mouldCounts([entry.mouldId], context.season?.startsOn ?? null, sql)).get(
    entry.mouldId,
  )
  if (!counts) throw new Refusal('There is no such mould', { status: 404 })
  const matters = beforeLayUp(counts, context.shop.rules.upkeep, context.today, context.now)
  const stops = matters.filter((matter) => matter.severity === 'stop')
  const because = entry.data.because
  if (stops.length > 0 && !(actor.role === 'lead' && because)) {
    const open = stops.map((matter) => `${named}${matter.text}`).join('. ')
    throw new Refusal(
      actor.role === 'lead'
        ? `${open}. Give a because to clear it all the same.`
        : `${open}. Settle it first, or ask a lead.`,
      actor.role === 'lead' ? { fields: { 'data.because': 'Give a because' } } : {},
    )
  }
  return {
    open: matters.filter((matter) => matter.severity !== 'note').map((matter) => matter.text),
    because,
    proof: counts.unprovedPatches.length > 0,
  }
}
