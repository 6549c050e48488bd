import 'server-only'
import { shopDay } from '#lib/core/dates'
import type { Actor } from '#lib/schema/actor'
import type { SeasonInput } from '#lib/schema/season'
import { ShopRules, type ShopSettings } from '#lib/schema/shop'
import { db } from './db'
import { changeSeen, dayOf, json } from './once'

export interface StoredShop extends ShopSettings {
  readonly isDemo: boolean
  readonly version: number
}

/** The shop, or null before the first lead has set it up. */
export async function readShop(): Promise<StoredShop | null> {
  const row = await db().prisma.shop.findUnique({ where: { id: 1 } })
  if (!row) return null
  const { id: _one, rules, ...rest } = row
  return { ...rest, rules: ShopRules.parse(rules) }
}

/** The audit wants a uuid for every record; the one shop has this one. */
export const shopRecordId = '00000000-0000-4000-8000-000000000001'

export async function changeShop(actor: Actor, sawVersion: number, settings: ShopSettings): Promise<void> {
  await changeSeen(
    actor,
    'shop',
    shopRecordId,
    (tx) => tx.shop.findUnique({ where: { id: 1 } }),
    (tx) =>
      tx.shop.updateMany({
        where: { id: 1, version: sawVersion },
        data: { ...settings, rules: json(settings.rules), version: { increment: 1 } },
      }),
  )
}

export interface StoredSeason extends SeasonInput {
  readonly version: number
}

/** By their first day. */
export async function listSeasons(): Promise<StoredSeason[]> {
  const rows = await db().prisma.season.findMany({ orderBy: { startsOn: 'asc' } })
  return rows.map((row) => ({ ...row, startsOn: dayOf(row.startsOn), endsOn: dayOf(row.endsOn) }))
}

/** The clock of the shop: the moment, and the day that it is there. */
export function shopNow(timeZone: string): { now: string; today: string } {
  const now = new Date().toISOString()
  return { now, today: shopDay(now, timeZone).day }
}
