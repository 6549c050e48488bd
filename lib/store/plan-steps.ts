import 'server-only'
import type { Actor } from '#lib/schema/actor'
import { db } from './db'
import { Refusal } from './errors'
import { appendEntry, type EntryToWrite } from './log'
import { type LotUsing, takeLots } from './lot-moves'
import { audit, json } from './once'
import type { StoredPlan } from './patches'

async function stepPlan(
  actor: Actor,
  planId: string,
  sawVersion: number,
  act: string,
  data: object,
): Promise<void> {
  await db().prisma.$transaction(async (tx) => {
    const before = await tx.patchPlan.findUnique({ where: { id: planId } })
    if (!before) throw new Refusal('There is no such plan', { status: 404 })
    const done = await tx.patchPlan.updateMany({
      where: { id: planId, version: sawVersion },
      data: { ...data, version: { increment: 1 } },
    })
    if (done.count === 0) {
      const now = (await tx.patchPlan.findUnique({ where: { id: planId } })) ?? before
      throw planChanged(now.version, now.state)
    }
    await audit(tx, actor, act, 'patch-plan', planId, { state: before.state }, data)
  })
}

/**
 * Whether this actor has just done this very act: the plan is one version past the one that was seen, and the last
 * line of its audit is theirs. A form that is sent twice is answered alike.
 */
export async function didStep(
  actor: Actor,
  plan: StoredPlan,
  sawVersion: number,
  to: 'signed' | 'on the bench' | 'put by',
): Promise<boolean> {
  if (plan.state !== to || plan.version !== sawVersion + 1) return false
  const last = await db().prisma.audit.findFirst({
    where: { recordKind: 'patch-plan', recordId: plan.id, act: stepActs[to] },
    orderBy: { id: 'desc' },
  })
  return last !== null && last.byId === actor.id && last.byName === actor.name
}

const stepActs = { signed: 'signed', 'on the bench': 'put on the bench', 'put by': 'put by' } as const

function planChanged(version: number, state: string): Refusal {
  return new Refusal(
    `Somebody else changed this plan meanwhile; it is now ${state}. Look at it, then decide.`,
    {
      status: 409,
      current: { version, values: { state } },
    },
  )
}

export async function signPlan(
  actor: Actor,
  planId: string,
  sawVersion: number,
  becauses: Readonly<Record<string, string>>,
  selfChecked: boolean,
): Promise<void> {
  await stepPlan(actor, planId, sawVersion, stepActs.signed, {
    state: 'signed',
    becauses: json(becauses),
    signedById: actor.id,
    signedByName: actor.name,
    signedAt: new Date(),
    selfChecked,
  })
}

export async function benchPlan(actor: Actor, planId: string, sawVersion: number): Promise<void> {
  await stepPlan(actor, planId, sawVersion, stepActs['on the bench'], {
    state: 'on the bench',
    benchAt: new Date(),
  })
}

export async function putByPlan(
  actor: Actor,
  planId: string,
  sawVersion: number,
  reason: string,
): Promise<void> {
  await stepPlan(actor, planId, sawVersion, stepActs['put by'], {
    state: 'put by',
    putByAt: new Date(),
    putByReason: reason,
  })
}

/** Ticks a line with name and time, or takes the tick back. Ticking what is ticked changes nothing. */
export async function tickLine(
  actor: Actor,
  planId: string,
  position: number,
  ticked: boolean,
  note: string,
): Promise<void> {
  await db().prisma.$transaction(async (tx) => {
    const before = await tx.jobLine.findUnique({ where: { planId_position: { planId, position } } })
    if (!before) throw new Refusal('There is no such line', { status: 404 })
    if ((before.tickedAt !== null) === ticked) return
    const data = ticked
      ? { tickedById: actor.id, tickedByName: actor.name, tickedAt: new Date(), tickNote: note }
      : { tickedById: null, tickedByName: null, tickedAt: null, tickNote: note }
    // Of two people who tick at once, the first stands.
    const open = ticked ? { tickedAt: null } : { tickedAt: { not: null } }
    const { count } = await tx.jobLine.updateMany({ where: { planId, position, ...open }, data })
    if (count === 0) return
    await audit(
      tx,
      actor,
      ticked ? 'ticked' : 'took a tick back',
      'patch-plan',
      planId,
      { line: before.title },
      { line: before.title, note },
    )
  })
}

/** A step of a plan that also writes the log: both or neither, through one client. */
export async function stepPlanWithEntry(
  actor: Actor,
  planId: string,
  sawVersion: number,
  to: 'laid' | 'proved',
  write: EntryToWrite,
  /** What it takes from lots of the stores; written with the entry. */
  uses: readonly LotUsing[] = [],
): Promise<void> {
  await db().sql.begin(async (sql) => {
    const plan = (
      await sql`select version, state, laid_entry_id, proved_entry_id from patch_plan where id = ${planId} for update`
    )[0]
    if (!plan) throw new Refusal('There is no such plan', { status: 404 })
    const column = to === 'laid' ? 'laid_entry_id' : 'proved_entry_id'
    if (plan[column] === write.entry.id) {
      // Sent again: the same answer, or refused when it says something else now.
      await appendEntry(sql, actor, write)
      return
    }
    if (plan.version !== sawVersion) throw planChanged(plan.version as number, plan.state as string)
    await appendEntry(sql, actor, write)
    await takeLots(sql, actor, uses, {
      entryId: write.entry.id,
      planId,
      doneOn: write.entry.doneOn,
      because: '',
    })
    await sql`
      update patch_plan set state = ${to}, ${sql(column)} = ${write.entry.id}, version = version + 1 where id = ${planId}`
    await sql`
      insert into audit (by_id, by_name, act, record_kind, record_id, before, after)
      values (${actor.id}, ${actor.name}, ${to}, 'patch-plan', ${planId}, ${sql.json({ state: plan.state })},
        ${sql.json({ state: to, entryId: write.entry.id })})`
  })
}
