import 'server-only'
import { db, type Sql } from '../db'

/** A read-only look at the book, planned anew: the best way to a word depends on how often it stands there. */
export function look<Value>(work: (sql: Sql) => Promise<Value>): Promise<Value> {
  return db().sql.begin('read only', async (sql) => {
    await sql`
      select set_config('plan_cache_mode', 'force_custom_plan', true), set_config('jit', 'off', true), set_config('statement_timeout', '3000', true)`
    return work(sql)
  }) as Promise<Value>
}
