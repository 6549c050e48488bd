import 'server-only'
import type { Actor } from '#lib/schema/actor'
import type { LeaveDemo } from '#lib/schema/leave-demo'
import { defaultShopRules } from '#lib/schema/shop'
import { db, type Sql } from './db'
import { Refusal } from './errors'
import { contentHash } from './once'
import { shopRecordId } from './shop'

/** What the shop keeps: people with their accounts and open sessions, the shop's own row, tokens (ended), and the migrations. */
const kept = [
  'person',
  'account',
  'session',
  'verification',
  'shop',
  'api_token',
  '_prisma_migrations',
] as const

/** Longer than this the emptying does not wait for others who are writing. */
const patienceMs = 8000

/** What leaving the demo shop would take away and leave, counted. */
export interface DemoContents {
  readonly shopName: string
  readonly timeZone: string
  readonly currency: string
  readonly moulds: number
  readonly patterns: number
  readonly patches: number
  readonly entries: number
  readonly builtParts: number
  readonly pictures: number
  readonly stores: number
  /** People who stand in the history only: they have no account. */
  readonly names: number
  readonly accounts: readonly { readonly name: string; readonly role: string }[]
  readonly tokens: number
}

/** Null where the shop is no demo. */
export async function readDemoContents(): Promise<DemoContents | null> {
  return contentsOf(db().sql)
}

async function contentsOf(sql: Sql): Promise<DemoContents | null> {
  const [row] = await sql`
    select name as "shopName", time_zone as "timeZone", currency,
      (select count(*)::int from mould) as moulds, (select count(*)::int from pattern) as patterns, (select count(*)::int from patch) as patches,
      (select count(*)::int from log_entry) as entries, (select count(*)::int from built_part) as "builtParts",
      (select count(*)::int from picture) as pictures,
      (select count(*) from material)::int + (select count(*) from product)::int + (select count(*) from stock_lot)::int as stores,
      (select count(*)::int from person p where not exists (select 1 from account a where a.person_id = p.id)) as names,
      (select coalesce(json_agg(json_build_object('name', name, 'role', role) order by name), '[]') from person p
        where ended_at is null and exists (select 1 from account a where a.person_id = p.id)) as accounts,
      (select count(*)::int from api_token where ended_at is null) as tokens
    from shop where id = 1 and is_demo`
  return (row as DemoContents | undefined) ?? null
}

/**
 * Empties the demo shop and makes it the user's own: all or nothing. Every table but the kept ones is emptied, also those
 * that a later version adds. Sent twice it is done once; a second lead is told that there is no demo any more.
 */
export async function leaveDemo(actor: Actor, input: LeaveDemo): Promise<void> {
  try {
    await db().sql.begin(async (sql) => {
      await sql`select set_config('lock_timeout', ${String(patienceMs)}, true)`
      // Held to the end: of two leads the second finds what the first has made.
      const [shop] = await sql`select name, is_demo from shop where id = 1 for update`
      const hash = contentHash(input)
      const [done] = await sql`select content_hash from creation where id = ${input.id}`
      if (done?.content_hash === hash) return
      if (!shop?.is_demo) {
        throw new Refusal(
          'This is no demo shop: it has been left already, or never was one. Nothing was changed.',
          {
            status: 409,
          },
        )
      }
      if (plain(input.confirm) !== plain(shop.name as string)) {
        throw new Refusal('Nothing was emptied', {
          fields: { confirm: `Type the name of the demo shop as it stands above: ${shop.name}` },
        })
      }
      const gone = await contentsOf(sql)
      await empty(sql)
      await sql`
        update shop set name = ${input.name}, time_zone = ${input.timeZone}, currency = ${input.currency}, address = '',
          rules = ${sql.json(defaultShopRules as never)}, is_demo = false, version = version + 1 where id = 1`
      await sql`update api_token set ended_at = now() where ended_at is null`
      await sql`delete from person p where not exists (select 1 from account a where a.person_id = p.id)`
      await sql`insert into creation (id, record_kind, content_hash) values (${input.id}, 'leave-demo', ${hash})`
      const { name, timeZone, currency } = input
      await sql`
        insert into audit (by_id, by_name, act, record_kind, record_id, before, after)
        values (${actor.id}, ${actor.name}, 'left the demo shop', 'shop', ${shopRecordId}, ${sql.json(gone as never)}, ${sql.json({ name, timeZone, currency })})`
    })
  } catch (error) {
    if (isBusy(error)) {
      throw new Refusal(
        'Others are using the book just now, so nothing was emptied. Try again in a moment.',
        {
          status: 409,
        },
      )
    }
    throw error
  }
}

async function empty(sql: Sql): Promise<void> {
  const rows = await sql<{ name: string }[]>`
    select tablename as name from pg_tables where schemaname = current_schema() and tablename <> all(${[...kept]}::text[])`
  const tables = rows.map(({ name }) => sql`${sql(name)}`).reduce((all, table) => sql`${all}, ${table}`)
  // Append-only tables refuse that a row is taken away; emptying the whole table is another act, and this is its one use.
  await sql`truncate ${tables} restart identity`
}

const plain = (name: string) => name.trim().replace(/\s+/g, ' ').toLowerCase()

/** Waited too long for a lock, or ran into somebody who waited for us. */
function isBusy(error: unknown): boolean {
  const code = typeof error === 'object' && error !== null && 'code' in error ? error.code : null
  return code === '55P03' || code === '40P01'
}
