import * as z from 'zod'
import { seasonOn } from '#lib/core/season/index'
import { ShopSettings } from '#lib/schema/shop'
import { Refusal, violatedConstraint } from '#lib/store/errors'
import {
  changeShop,
  listSeasons,
  readShop,
  type StoredSeason,
  type StoredShop,
  shopNow,
} from '#lib/store/shop'
import { everyone, leads, verb } from './verb'

export interface ShopContext {
  readonly shop: StoredShop
  /** The moment, and the day that it is in the shop. */
  readonly now: string
  readonly today: string
  readonly season: StoredSeason | null
  /** By their first day. */
  readonly seasons: readonly StoredSeason[]
}

/** The shop with its clock and season. Refused before it is set up. */
export async function shopContext(): Promise<ShopContext> {
  const [shop, seasons] = await Promise.all([readShop(), listSeasons()])
  if (!shop) throw new Refusal('This shop is not set up yet; open /first-lead', { status: 404 })
  const clock = shopNow(shop.timeZone)
  return { shop, ...clock, season: seasonOn(seasons, clock.today), seasons }
}

export const readSettings = verb('shop.read', everyone, z.object({}), shopContext)

export const saveSettings = verb(
  'shop.save',
  leads,
  ShopSettings.safeExtend({ version: z.int() }),
  (actor, { version, ...settings }) => changeShop(actor, version, settings),
)

/**
 * Turns a broken unique rule into words at the field that has to change, and a reference to something that is not
 * there into words; anything else goes on.
 */
export async function told<Value>(
  write: Promise<Value>,
  names: Readonly<Record<string, { field: string; says: string }>>,
): Promise<Value> {
  try {
    return await write
  } catch (error) {
    const rule = violatedConstraint(error) ?? ''
    const broken = names[rule]
    if (broken) throw new Refusal(broken.says, { fields: { [broken.field]: broken.says } })
    const field = referringField(rule)
    if (field === null) throw error
    throw new Refusal('It refers to something that is not in the book; load the page again and choose anew', {
      fields: { [field]: 'Not in the book' },
    })
  }
}

/** What stands at the field when a code is taken. */
export const codeTaken = (what: string) => ({
  field: 'code',
  says: `Another ${what} has this code; codes are compared without case`,
})

const tables = [
  'mould_set',
  'mould',
  'pattern',
  'built_part',
  'face_area',
  'thickness_reading',
  'locating_table',
  'locating_point',
  'stack_ply',
  'patch',
]

/** "mould_part_id_fkey" -> "partId"; null for a rule of another kind. */
function referringField(rule: string): string | null {
  const table = tables.find((name) => rule.startsWith(`${name}_`) && rule.endsWith('_fkey'))
  if (table === undefined) return null
  const column = rule.slice(table.length + 1, -'_fkey'.length)
  return column.replace(/_(\w)/g, (_match, letter: string) => letter.toUpperCase())
}
