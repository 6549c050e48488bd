import 'server-only'
import type postgres from 'postgres'
import type { Actor } from '#lib/schema/actor'
import type { NewLogEntry } from '#lib/schema/log'
import { Refusal } from './errors'

/** What a mould makes: its own part, or that of its split mould. */
const makes = (sql: postgres.TransactionSql, where: postgres.PendingQuery<postgres.Row[]>) => sql`
  select m.id, m.code, m.set_id, coalesce(m.part_id, s.part_id) as part_id from mould m left join mould_set s on s.id = m.set_id ${where}`

/**
 * The part that a pull names by its serial is in the book from then on; a piece of a split mould names the part of the
 * set. The same mould gives a serial once; the pieces of a split mould share it; a mould of another part doesn't have it.
 * Runs under the mould's lock.
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
  const [other] = await sql<{ code: string; part: string; doneOn: string }[]>`
    select o.code, p.code as part, e.done_on as "doneOn"
    from part_pull e join (${makes(sql, sql``)}) o on o.id = e.mould_id join part p on p.id = o.part_id
      join (${makes(sql, sql`where m.id = ${pull.mouldId}`)}) own on own.part_id <> o.part_id and (own.set_id is null or own.set_id is distinct from o.set_id)
    where e.serial_key = lower(btrim(${serial})) limit 1`
  if (other) {
    const says = `${serial} is a part ${other.part}: ${other.code} gave it on ${other.doneOn}, and ${mouldCode} makes another part. Give another serial, or put that pull right.`
    throw new Refusal(says, { fields: { 'data.serial': `A part ${other.part} off ${other.code}` } })
  }
  // A serial that no other pull names any more, typed on the wrong mould before, is a part of this one.
  const [kept] = await sql<{ id: string; made: boolean }[]>`
    insert into built_part as b (serial, part_id)
    select ${serial}, own.part_id from (${makes(sql, sql`where m.id = ${pull.mouldId}`)}) own
    on conflict (lower(btrim(serial))) do update set part_id = excluded.part_id, version = b.version + 1
      where excluded.part_id is distinct from b.part_id and excluded.part_id is not null
        and not exists (select 1 from part_pull p where p.serial_key = lower(btrim(${serial})) and p.id <> ${pull.id})
    returning id, (xmax = 0) as made`
  if (!kept) return
  await sql`
    insert into audit (by_id, by_name, act, record_kind, record_id, after)
    values (${actor.id}, ${actor.name}, ${kept.made ? 'made' : 'changed'}, 'built-part', ${kept.id}, ${sql.json({ serial, entryId: pull.id })})`
}
