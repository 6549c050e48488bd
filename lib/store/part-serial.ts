import 'server-only'
import type postgres from 'postgres'
import type { Actor } from '#lib/schema/actor'
import type { NewLogEntry } from '#lib/schema/log'
import { Refusal } from './errors'

/**
 * The part that a pull names by its serial is in the book from then on; a piece of a split mould names the part of the
 * set. The same mould gives a serial once; the pieces of a split mould share it. Runs under the mould's lock.
 */
export async function keepSerial(
  sql: postgres.TransactionSql,
  actor: Actor,
  pull: Extract<NewLogEntry, { kind: 'pull' }>,
  mouldCode: string,
): Promise<void> {
  const serial = pull.data.serial?.trim() ?? ''
  if (serial === '') return
  // The entry that this one puts right no longer counts by now.
  const [before] = await sql<{ doneOn: string; byName: string }[]>`
    select done_on as "doneOn", by_name as "byName" from part_pull
    where mould_id = ${pull.mouldId} and serial_key = lower(btrim(${serial})) and id <> ${pull.id} limit 1`
  if (before) {
    const says = `${mouldCode} has given part ${serial} already: the pull of ${before.doneOn}, written by ${before.byName}. Give another serial, or put that pull right.`
    throw new Refusal(says, { fields: { 'data.serial': `Given already on ${before.doneOn}` } })
  }
  const [made] = await sql<{ id: string }[]>`
    insert into built_part (serial, part_id)
    select ${serial}, coalesce(m.part_id, s.part_id) from mould m left join mould_set s on s.id = m.set_id where m.id = ${pull.mouldId}
    on conflict (lower(btrim(serial))) do nothing returning id`
  if (!made) return
  await sql`
    insert into audit (by_id, by_name, act, record_kind, record_id, after)
    values (${actor.id}, ${actor.name}, 'made', 'built-part', ${made.id}, ${sql.json({ serial, entryId: pull.id })})`
}
