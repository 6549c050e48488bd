import 'server-only'
import type postgres from 'postgres'
import type { IsoDate } from '#lib/core/dates'
import { amountText, type StockUnit, unitWords } from '#lib/core/stores/amount'
import { takingFindings } from '#lib/core/stores/cover'
import type { Closing, MoveKind } from '#lib/core/stores/words'
import type { Actor } from '#lib/schema/actor'
import { db, type Sql } from './db'
import { Refusal, violatedConstraint } from './errors'
import { holdLots, readLot, type StoredLot } from './lots'

export interface StoredMove {
  readonly id: string
  readonly kind: MoveKind
  readonly amount: number
  readonly doneOn: IsoDate
  readonly writtenAt: string
  readonly byName: string
  readonly note: string
  readonly correctsId: string | null
  /** False for what was struck out, and for what belongs to an entry that was put right. */
  readonly counts: boolean
  /** The entry that took it, and the mould or pattern of that entry. */
  readonly entryId: string | null
  readonly entryKind: string | null
  readonly mouldCode: string | null
  readonly patternCode: string | null
  /** The patch whose plan took it. */
  readonly patchId: string | null
  readonly patchNumber: number | null
}

/** Everything that was done with a lot, newest first. */
export async function listMoves(lotId: string): Promise<StoredMove[]> {
  const rows = await db().sql`
    select v.id, v.kind, v.amount, v.done_on as "doneOn", to_json(v.written_at) #>> '{}' as "writtenAt", v.by_name as "byName", v.note,
      v.corrects_id as "correctsId", v.entry_id as "entryId", e.kind as "entryKind", m.code as "mouldCode", t.code as "patternCode",
      a.id as "patchId", a.number as "patchNumber",
      not exists (select 1 from lot_move c where c.corrects_id = v.id)
        and not exists (select 1 from log_entry c where c.corrects_id = v.entry_id) as counts
    from lot_move v
    left join log_entry e on e.id = v.entry_id
    left join mould m on m.id = e.mould_id
    left join pattern t on t.id = e.pattern_id
    left join patch_plan n on n.id = v.plan_id
    left join patch a on a.id = n.patch_id
    where v.lot_id = ${lotId}
    order by v.done_on desc, v.written_at desc, v.id desc`
  return rows as unknown as StoredMove[]
}

/** Parts that name a lot. */
export async function partsOfLot(lotId: string): Promise<{ readonly id: string; readonly serial: string }[]> {
  const rows = await db().sql`
    select distinct b.id, b.serial from built_part_lot l join built_part b on b.id = l.built_part_id
    where l.lot_id = ${lotId} order by b.serial`
  return rows as unknown as { id: string; serial: string }[]
}

export interface MoveToWrite {
  readonly id: string
  readonly lotId: string
  readonly kind: MoveKind
  readonly amount: number
  /** In which the amount was given; it must be the lot's own. Null: hours, or a correction. */
  readonly unit: StockUnit | null
  readonly doneOn: IsoDate
  readonly note: string
  readonly correctsId?: string
  /** What was said about a lot that is out of life. */
  readonly because?: string
}

/**
 * Writes one move under the lot's lock; false when it was there already with the same content. Of two people who take
 * from a lot at once the second is judged by what the first has left.
 */
export async function writeMove(actor: Actor, move: MoveToWrite): Promise<boolean> {
  return db().sql.begin(async (sql) => {
    const [lot] = await holdLots(sql, [move.lotId])
    if (!lot) return false
    const because = move.because?.trim() ?? ''
    const note = [because === '' ? '' : `Because: ${because}.`, move.note].filter(Boolean).join(' ')
    if (await sentBefore(sql, { ...move, note })) return false
    checkUnit(lot, move.unit)
    if (lot.closedOn !== null && move.kind !== 'correction' && move.kind !== 'used') {
      throw new Refusal(`Lot ${lot.lot} is closed: ${lot.closedWhy ?? ''}. Open it again first.`)
    }
    try {
      await insertMove(sql, actor, { ...move, note })
    } catch (error) {
      if (violatedConstraint(error) !== 'lot_move_corrects_id_key') throw error
      throw new Refusal('Somebody has struck this out already', { status: 409 })
    }
    if (move.kind === 'used') {
      await judgeTaking(sql, lot, move.amount, because, move.doneOn)
      await open(sql, lot, move.doneOn)
    }
    return true
  })
}

/** Whether a move of this id stands already; refused when it says something else. */
async function sentBefore(sql: postgres.TransactionSql, move: MoveToWrite): Promise<boolean> {
  const [stored] = await sql`
    select lot_id, kind, amount, done_on, note, corrects_id from lot_move where id = ${move.id}`
  if (!stored) return false
  const same =
    stored.lot_id === move.lotId &&
    stored.kind === move.kind &&
    stored.amount === move.amount &&
    stored.done_on === move.doneOn &&
    stored.note === move.note &&
    stored.corrects_id === (move.correctsId ?? null)
  if (same) return true
  throw new Refusal('This was already sent with other figures. Load the page again and look at the moves.', {
    status: 409,
    stored: { ...stored },
  })
}

/** What of a lot an entry or a plan uses. */
export interface LotUsing {
  readonly lotId: string
  readonly amount: number
  readonly because?: string
  /** Names of the form's fields for its amount and its because. */
  readonly fields?: { readonly amount: string; readonly because: string }
}

/**
 * Takes from lots within the transaction that writes an entry, after the entry: all or none. A lot out of life needs
 * a because (of the use, else of the whole act); what a lot doesn't hold is refused.
 */
export async function takeLots(
  sql: postgres.TransactionSql,
  actor: Actor,
  uses: readonly LotUsing[],
  about: {
    readonly entryId: string
    readonly planId: string | null
    readonly doneOn: IsoDate
    /** Stands for a because where a use has none: the note of the entry. */
    readonly because: string
  },
): Promise<void> {
  if (uses.length === 0) return
  const lots = await holdLots(sql, [...new Set(uses.map((use) => use.lotId))])
  const givenBack = await lotsGivenBack(sql, about.entryId)
  for (const lot of lots) {
    const own = uses.filter((use) => use.lotId === lot.id)
    const amount = own.reduce((sum, use) => sum + use.amount, 0)
    const because = own.map((use) => use.because?.trim() ?? '').find(Boolean) ?? ''
    await insertMove(sql, actor, {
      id: null,
      lotId: lot.id,
      kind: 'used',
      amount,
      doneOn: about.doneOn,
      note: because === '' ? '' : `Because: ${because}`,
      entryId: about.entryId,
      planId: about.planId,
    })
    // A lot that was closed since needs not be opened to put the words of an entry right.
    const judged = givenBack.has(lot.id) ? { ...lot, closedOn: null } : lot
    await judgeTaking(sql, judged, amount, because || about.because.trim(), about.doneOn, own[0]?.fields)
    await open(sql, lot, about.doneOn)
  }
}

/** Lots that the entry which this one puts right had taken from. */
async function lotsGivenBack(sql: Sql, entryId: string): Promise<ReadonlySet<string>> {
  const rows = await sql<{ id: string }[]>`
    select distinct m.lot_id as id from log_entry e join lot_move m on m.entry_id = e.corrects_id where e.id = ${entryId}`
  return new Set(rows.map(({ id }) => id))
}

/**
 * Judges what was just taken, by the day on which it was done: a lot that was fit then was fit. What was taken before the
 * last count leaves as much as was counted, so it can't be too much.
 */
async function judgeTaking(
  sql: Sql,
  lot: StoredLot,
  amount: number,
  because: string,
  doneOn: IsoDate,
  fields = { amount: 'amount', because: 'because' },
): Promise<void> {
  const left = (await readLot(lot.id, sql))?.remaining ?? 0
  const findings = takingFindings(
    [{ subjectName: lot.subjectCode ?? lot.subjectName, lot, amount }],
    doneOn,
  ).filter(({ code }) => code !== 'lot-short' || left < lot.remaining)
  const stop = findings.find((finding) => finding.severity === 'stop')
  if (stop) throw new Refusal(`${stop.text}. ${stop.cure ?? ''}`, { fields: { [fields.amount]: stop.text } })
  const look = findings.find((finding) => finding.severity === 'look')
  if (look && because === '') {
    throw new Refusal(`${look.text}. Take a fit lot, or say why this one was taken.`, {
      fields: { [fields.because]: 'Give a because' },
    })
  }
}

function checkUnit(lot: StoredLot, unit: StockUnit | null): void {
  if (unit === null || unit === lot.unit) return
  throw new Refusal(`Lot ${lot.lot} is kept in ${unitWords[lot.unit]}`, {
    fields: { amount: `Give it in ${unitWords[lot.unit]}` },
  })
}

async function insertMove(
  sql: postgres.TransactionSql,
  actor: Actor,
  move: {
    readonly id: string | null
    readonly lotId: string
    readonly kind: MoveKind
    readonly amount: number
    readonly doneOn: IsoDate
    readonly note: string
    readonly correctsId?: string
    readonly entryId?: string
    readonly planId?: string | null
  },
): Promise<void> {
  // Written-at rises with every move of a lot, also where two are written within the same millisecond.
  const [row] = await sql`
    insert into lot_move (id, lot_id, kind, amount, done_on, written_at, entry_id, plan_id, corrects_id, by_id, by_name, note)
    values (coalesce(${move.id}::uuid, gen_random_uuid()), ${move.lotId}, ${move.kind}, ${move.amount}, ${move.doneOn},
      greatest(clock_timestamp(), (select max(written_at) from lot_move where lot_id = ${move.lotId}) + interval '1 millisecond'),
      ${move.entryId ?? null}, ${move.planId ?? null}, ${move.correctsId ?? null}, ${actor.id}, ${actor.name}, ${move.note})
    returning id`
  await sql`
    insert into audit (by_id, by_name, act, record_kind, record_id, after)
    values (${actor.id}, ${actor.name}, 'made', 'lot-move', ${row?.id as string}, ${sql.json({ ...move, id: row?.id } as never)})`
}

/** A tin that is taken from is open. */
async function open(sql: postgres.TransactionSql, lot: StoredLot, on: IsoDate): Promise<void> {
  if (lot.openedOn !== null || lot.subjectKind !== 'product' || on < lot.receivedOn) return
  await sql`update stock_lot set opened_on = ${on}, version = version + 1 where id = ${lot.id} and opened_on is null`
}

/**
 * A tin that was opened by an entry which no longer counts is as if it had not been: open since another taking, or shut.
 * `also` names the lots that are taken from next, so that all are held in one order.
 */
export async function shutAgain(
  sql: postgres.TransactionSql,
  entryId: string,
  also: readonly string[],
): Promise<void> {
  const taken = await sql<{ lotId: string }[]>`
    select distinct lot_id as "lotId" from lot_move where entry_id = ${entryId} and kind = 'used'`
  if (taken.length === 0) return
  const lots = taken.map(({ lotId }) => lotId)
  await holdLots(sql, [...new Set([...lots, ...also])])
  await sql`
    with left_over as (select l.id, (select min(e.done_on) from effective_move e where e.lot_id = l.id and e.kind = 'used') as opened_on
      from stock_lot l where l.id = any(${lots}::uuid[])
        and l.opened_on = (select min(m.done_on) from lot_move m where m.entry_id = ${entryId} and m.lot_id = l.id and m.kind = 'used'))
    update stock_lot l set opened_on = o.opened_on, version = version + 1 from left_over o
    where l.id = o.id and l.opened_on is distinct from o.opened_on`
}

/** The move that is to be struck out. */
export async function readMove(
  id: string,
): Promise<{ readonly kind: MoveKind; readonly lotId: string; readonly entryId: string | null } | null> {
  const [row] = await db().sql`
    select kind, lot_id as "lotId", entry_id as "entryId" from lot_move where id = ${id}`
  return (row as { kind: MoveKind; lotId: string; entryId: string | null } | undefined) ?? null
}

/** Closes a lot, or opens it again with null. Sent twice, done once. */
export async function closeLot(
  actor: Actor,
  lotId: string,
  sawVersion: number,
  closing: { readonly on: IsoDate; readonly why: Closing } | null,
): Promise<void> {
  await db().sql.begin(async (sql) => {
    const [lot] = await holdLots(sql, [lotId])
    if (!lot) return
    const done =
      closing === null ? lot.closedOn === null : lot.closedOn === closing.on && lot.closedWhy === closing.why
    if (done) return
    if (lot.version !== sawVersion) {
      throw new Refusal(
        `Somebody else changed lot ${lot.lot} meanwhile: ${amountText(lot.remaining, lot.unit)} are left. Look at it, then decide.`,
        {
          status: 409,
          current: {
            version: lot.version,
            values: { closedWhy: lot.closedWhy ?? '', closedOn: lot.closedOn ?? '' },
          },
        },
      )
    }
    if (closing !== null && closing.on < lot.receivedOn) {
      throw new Refusal('Closed before it came', { fields: { closedOn: `It came on ${lot.receivedOn}` } })
    }
    await sql`
      update stock_lot set closed_on = ${closing?.on ?? null}, closed_why = ${closing?.why ?? null}, version = version + 1
      where id = ${lotId}`
    await sql`
      insert into audit (by_id, by_name, act, record_kind, record_id, before, after)
      values (${actor.id}, ${actor.name}, ${closing === null ? 'opened again' : 'closed'}, 'stock-lot', ${lotId},
        ${sql.json({ closedOn: lot.closedOn, closedWhy: lot.closedWhy })}, ${sql.json({ closedOn: closing?.on ?? null, closedWhy: closing?.why ?? null })})`
  })
}
