import 'server-only'
import type postgres from 'postgres'
import { entryWords, type LogEntry, type LogKind } from '#lib/core/log/index'
import type { Actor } from '#lib/schema/actor'
import type { NewLogEntry, NewPatternEntry } from '#lib/schema/log'
import { db, type Sql } from './db'
import { Refusal, violatedConstraint } from './errors'
import { readEntry } from './history'
import { shutAgain, takeLots } from './lot-moves'
import { holdLots } from './lots'
import { contentHash } from './once'
import { keepSerial } from './part-serial'

/** Whether a pull of this mould stands in the log later than a place in a day's order. */
export async function pullAfter(
  mouldId: string,
  doneOn: string,
  dayOrder: number,
  sql: Sql = db().sql,
): Promise<boolean> {
  const rows = await sql`
    select 1 from effective_entry where mould_id = ${mouldId} and kind = 'pull' and (done_on, day_order) > (${doneOn}, ${dayOrder}::int)
    limit 1`
  return rows.length > 0
}

/** What stands under one group, and on which mould; corrections left out. */
export async function entriesOfGroup(groupId: string): Promise<{ id: string; mouldId: string }[]> {
  return db().sql<{ id: string; mouldId: string }[]>`
    select id, mould_id as "mouldId" from log_entry where group_id = ${groupId} and corrects_id is null order by mould_id`
}

/** An entry with its order within its day. */
export interface EntryToWrite {
  readonly entry: NewLogEntry | NewPatternEntry
  readonly dayOrder: number
  /**
   * Judges the entry under the mould's lock, on the connection that holds it, and answers the data to be stored;
   * throws what must not be written.
   */
  readonly judge?: (sql: Sql) => Promise<LogEntry['data']>
}

/**
 * Appends entries, all or none, and answers how many were written now. An id that is there with the same content is
 * answered as written; with other content it is refused. Entries that move the mould or set its state name the
 * version they saw. Moulds, patterns and lots are locked in one fixed order, so that writers never block each other.
 */
export async function appendEntries(actor: Actor, entries: readonly EntryToWrite[]): Promise<number> {
  return db().sql.begin(async (sql) => {
    if (entries.length > 1) await lockAll(sql, entries)
    let written = 0
    for (const each of entries) if (await appendEntry(sql, actor, each)) written += 1
    return written
  })
}

async function lockAll(sql: postgres.TransactionSql, entries: readonly EntryToWrite[]): Promise<void> {
  const moulds = entries.flatMap(({ entry }) => ('mouldId' in entry ? [entry.mouldId] : []))
  const patterns = entries.flatMap(({ entry }) => ('patternId' in entry ? [entry.patternId] : []))
  if (moulds.length > 0) {
    await sql`select id from mould where id = any(${moulds}::uuid[]) order by id for update`
    // Whoever changes the name of a part or a split mould raises the tallies of all its moulds, in the same order.
    await sql`select 1 from mould_tally where mould_id = any(${moulds}::uuid[]) order by mould_id for update`
  }
  if (patterns.length > 0)
    await sql`select id from pattern where id = any(${patterns}::uuid[]) order by id for update`
  const lots = entries.flatMap(({ entry }) => (entry.uses ?? []).map((use) => use.lotId))
  if (lots.length > 0) await holdLots(sql, [...new Set(lots)])
}

/** The mould or pattern of an entry, held until the end: state is judged and changed by one writer at a time. */
async function lockSubject(sql: Sql, entry: NewLogEntry | NewPatternEntry) {
  const [found] =
    'mouldId' in entry
      ? await sql<{ version: number; code: string }[]>`
          select version, code from mould where id = ${entry.mouldId} for update`
      : await sql<{ version: number; code: string }[]>`
          select version, code from pattern where id = ${entry.patternId} for update`
  if (!found) {
    throw new Refusal(`There is no such ${'mouldId' in entry ? 'mould' : 'pattern'}`, { status: 404 })
  }
  return found
}

/** Appends one entry within a transaction; false when it was there already. */
export async function appendEntry(
  sql: postgres.TransactionSql,
  actor: Actor,
  { entry, dayOrder, judge }: EntryToWrite,
): Promise<boolean> {
  const hash = entryHash(entry)
  const subject = await lockSubject(sql, entry)
  const of =
    'mouldId' in entry
      ? { mouldId: entry.mouldId, patternId: null }
      : { mouldId: null, patternId: entry.patternId }
  const stored = (await sql`select content_hash from log_entry where id = ${entry.id}`)[0]
  if (stored) {
    if (stored.content_hash === hash) return false
    throw alreadySent(await readEntry(entry.id, sql))
  }
  if (entry.sawVersion !== null && entry.sawVersion !== subject.version) {
    throw await changedMeanwhile(sql, of, subject)
  }
  const wrong = entry.correctsId === null ? null : await placeOfWrong(sql, entry.correctsId)
  if (entry.kind === 'settled') await checkSettled(sql, of, entry.data, entry.correctsId)
  const data = judge ? await judge(sql) : entry.data
  const sameDay = wrong !== null && wrong.doneOn === entry.doneOn
  // What puts an entry right stands where that one stood, unless it says another day or time.
  const order = sameDay && entry.doneAt === null ? wrong.dayOrder : dayOrder
  const standsAt = sameDay && order === wrong.dayOrder ? wrong.standsAt : null
  const spot = 'mouldId' in entry ? entry : { areaId: null, patchId: null, groupId: null }
  // A piece's pull that is put right is still of the part that all pieces gave.
  const groupId = spot.groupId ?? (wrong?.kind === entry.kind ? wrong.groupId : null)
  try {
    // Written-at rises with every entry of a mould, also where two are written within the same millisecond.
    await sql`
      insert into log_entry (id, mould_id, pattern_id, kind, done_on, done_at, precision, day_order, written_at, stands_at, by_id, by_name,
        area_id, patch_id, corrects_id, group_id, data, note, content_hash)
      values (${entry.id}, ${of.mouldId}, ${of.patternId}, ${entry.kind}, ${entry.doneOn}, ${entry.doneAt}, ${entry.precision}, ${order},
        greatest(clock_timestamp(), (select max(written_at) from log_entry
          where ${of.mouldId === null ? sql`pattern_id = ${of.patternId}` : sql`mould_id = ${of.mouldId}`}) + interval '1 millisecond'),
        ${standsAt}, ${actor.id}, ${actor.name}, ${spot.areaId}, ${spot.patchId}, ${entry.correctsId}, ${groupId},
        ${sql.json(data as never)}, ${entry.note}, ${hash})`
  } catch (error) {
    throw refusalOf(error, of.mouldId === null ? 'pattern' : 'mould') ?? error
  }
  if (entry.kind === 'pull') await keepSerial(sql, actor, entry, subject.code)
  if (entry.correctsId !== null)
    await shutAgain(
      sql,
      entry.correctsId,
      (entry.uses ?? []).map((use) => use.lotId),
    )
  // After the entry: what an entry that is put right has taken is back in its lots by then.
  await takeLots(
    sql,
    actor,
    (entry.uses ?? []).map((use, index) => ({
      ...use,
      fields: { amount: `uses.${index}.amount`, because: 'note' },
    })),
    { entryId: entry.id, planId: null, doneOn: entry.doneOn, because: entry.note },
  )
  const moves = (kind: LogKind | undefined) => kind === 'moved' || kind === 'state'
  if (moves(entry.kind) || moves(wrong?.kind)) {
    if (of.mouldId === null) await sql`update pattern set version = version + 1 where id = ${of.patternId}`
    else await sql`update mould set version = version + 1 where id = ${of.mouldId}`
  }
  await sql`
    insert into audit (by_id, by_name, act, record_kind, record_id, after)
    values (${actor.id}, ${actor.name}, 'made', 'log-entry', ${entry.id}, ${sql.json({ ...entry, hash } as never)})`
  return true
}

/**
 * Fingerprint of an entry. What may be left out and is left out does not count, so that an entry that was first sent
 * before a field was known is still the same when it is sent again.
 */
export function entryHash(entry: NewLogEntry | NewPatternEntry): string {
  const { uses, ...told } = entry
  const { groupId, ...rest } = { groupId: null, ...told }
  const data =
    entry.kind === 'state' ? { ...entry.data, untilOn: entry.data.untilOn ?? undefined } : entry.data
  return contentHash({
    ...rest,
    data,
    ...(uses && uses.length > 0 ? { uses } : {}),
    ...(groupId === null ? {} : { groupId }),
  })
}

interface Of {
  readonly mouldId: string | null
  readonly patternId: string | null
}

const ofIt = (sql: Sql, { mouldId, patternId }: Of) =>
  mouldId === null ? sql`pattern_id = ${patternId}` : sql`mould_id = ${mouldId}`

async function changedMeanwhile(
  sql: Sql,
  of: Of,
  { code, version }: { readonly code: string; readonly version: number },
): Promise<Refusal> {
  const [at] = of.mouldId
    ? await sql`select place from mould_place where mould_id = ${of.mouldId}`
    : await sql`select place from pattern_place where pattern_id = ${of.patternId}`
  const flags = of.mouldId
    ? await sql`select state, reason from mould_flag where mould_id = ${of.mouldId} and is_on`
    : []
  const states = flags.map((flag) => `${flag.state}: ${flag.reason}`).join('; ')
  return new Refusal(`Somebody else changed ${code} meanwhile. Look at it as it is now, then decide.`, {
    status: 409,
    current: { version, values: { place: at?.place ?? '', states } },
  })
}

/** Where an entry that is to be put right stands among the others. */
async function placeOfWrong(sql: Sql, id: string) {
  const [wrong] = await sql<
    { kind: LogKind; doneOn: string; dayOrder: number; standsAt: string; groupId: string | null }[]
  >`
    select kind, done_on as "doneOn", day_order as "dayOrder", coalesce(stands_at, written_at)::text as "standsAt", group_id as "groupId"
    from log_entry where id = ${id}`
  return wrong ?? null
}

/**
 * The last word is on a matter of the same mould or pattern that is still open, unless it puts an earlier word right.
 * It may name the matter as it was worded before it was put right.
 */
async function checkSettled(
  sql: Sql,
  of: Of,
  { entryId }: { readonly entryId: string },
  correctsId: string | null,
): Promise<void> {
  const [matter] = await sql`
    with recursive wording as (
      select id from log_entry where id = ${entryId}
      union all
      select c.id from log_entry c join wording w on c.corrects_id = w.id)
    select exists (select 1 from open_matter o where o.entry_id = e.id) as open
    from effective_entry e where e.id in (select id from wording) and ${ofIt(sql, of)}
      and (e.kind = 'matter' or (e.kind = 'damage' and e.data ->> 'weight' = 'open matter')
        or (e.kind = 'repair' and (e.data ->> 'interim')::boolean))`
  if (!matter) {
    throw new Refusal('There is no such open matter here; look at the list as it is now', { status: 404 })
  }
  if (!matter.open && correctsId === null) {
    throw new Refusal(
      'This matter is closed already. Put the entry that closed it right, or open a new one.',
      {
        status: 409,
      },
    )
  }
}

function alreadySent(entry: LogEntry | null): Refusal {
  const words = entry ? entryWords(entry) : null
  const stored =
    words && entry
      ? `: ${words.what}${words.detail ? `, ${words.detail}` : ''}, on ${entry.doneOn} by ${entry.byName}`
      : ''
  return new Refusal(
    `This entry was already sent with other content. Stored is what came first${stored}. Correct it there.`,
    {
      status: 409,
      ...(entry ? { stored: { ...entry } } : {}),
    },
  )
}

function refusalOf(error: unknown, subject: 'mould' | 'pattern'): Refusal | null {
  switch (violatedConstraint(error)) {
    case 'log_entry_pkey':
      return new Refusal('This id was just used for an entry of another mould or pattern; make a new id', {
        status: 409,
      })
    case 'log_entry_corrects_id_key':
      return new Refusal('Somebody has already put this entry right; correct the newer one', { status: 409 })
    case 'log_entry_area_of_mould':
      return new Refusal('That area belongs to another mould', {
        fields: { areaId: 'Choose an area of this mould' },
      })
    case 'log_entry_patch_of_mould':
      return new Refusal('That patch belongs to another mould', {
        fields: { patchId: 'Choose a patch of this mould' },
      })
    case 'log_entry_correction_of_mould':
      return new Refusal(`The entry to be put right belongs to another ${subject}`, {
        fields: { correctsId: `Not of this ${subject}` },
      })
    default:
      return null
  }
}
