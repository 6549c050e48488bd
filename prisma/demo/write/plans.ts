import type { IsoDate } from '#lib/core/dates'
import { becauseKey, mayMove, type PlanState } from '#lib/core/repair/plan-state'
import { PatchSketch } from '#lib/schema/patch'
import { sketchPatch } from '#lib/services/patches'
import { db } from '#lib/store/db'
import { readPlan, type StoredPlan } from '#lib/store/patches'
import { momentOf } from '../base/calendar'
import { drawer, idOf } from '../base/ids'
import { areaId } from '../data/face'
import { personOf, type Who } from '../data/people'
import { laidKey, type PlanStory, patchIdOf, patchKey, planIdOf, provedKey } from '../data/plan-story'
import { entryId } from './log'

/**
 * Writes a plan and takes it through its states on the days of the story. The sketch goes through the service, so
 * the plan is really computed from the mould; the later steps are judged by the same rules of the core as on screen
 * and written here, since the services stamp the present moment.
 */
export async function writePlan(story: PlanStory): Promise<StoredPlan> {
  const { mould, number, version, sketched } = story
  const planId = planIdOf(mould, number, version)
  const sketcher = personOf(sketched.by)
  const sketch = PatchSketch.parse({
    id: planId,
    patchId: patchIdOf(mould, number),
    mouldId: idOf(`mould/${mould}`),
    areaId: areaId(mould, story.area),
    title: story.title,
    reason: story.reason,
    measuredThicknessMm: [],
    nextPartCureC: null,
    note: story.note,
    ...story.sketch,
  })
  await sketchPatch({ id: sketcher.id, name: sketcher.name, role: sketcher.role }, sketch)
  const { sql } = db()
  const made = momentOf(sketched.on, 15 * 60 + 20)
  await sql`update patch_plan set created_at = ${made} where id = ${planId}`
  if (version === 1) await sql`update patch set created_at = ${made} where id = ${sketch.patchId}`
  await takeSteps(story, planId)
  return storedPlan(planId)
}

async function storedPlan(planId: string): Promise<StoredPlan> {
  const plan = await readPlan(planId)
  if (!plan) throw new Error(`Plan ${planId} was not written`)
  return plan
}

async function takeSteps(story: PlanStory, planId: string): Promise<void> {
  const { mould, number, putBy, signed, bench, ticked, laid, proved } = story
  if (putBy) {
    const at = momentOf(putBy.on, 9 * 60 + 40)
    await step(
      story,
      planId,
      'put by',
      putBy.by,
      at,
      { put_by_at: at, put_by_reason: putBy.reason },
      putBy.reason,
    )
  }
  if (signed) {
    const at = momentOf(signed.on, 11 * 60 + 5)
    const signer = personOf(signed.by)
    await step(story, planId, 'signed', signed.by, at, {
      becauses: becausesOf(story, await storedPlan(planId)),
      signed_by_id: signer.id,
      signed_by_name: signer.name,
      signed_at: at,
      self_checked: signed.by === story.sketched.by,
    })
  }
  if (bench) {
    const at = momentOf(bench.on, 8 * 60 + 15)
    await step(story, planId, 'on the bench', bench.by, at, { bench_at: at })
  }
  if (ticked) await tickLines(story, planId)
  if (laid) {
    const at = momentOf(laid.on, 16 * 60 + 50)
    await step(story, planId, 'laid', laid.by, at, { laid_entry_id: entryId(laidKey(mould, number)) })
  }
  if (proved) {
    const at = momentOf(proved.on, 16 * 60 + 10)
    await step(story, planId, 'proved', proved.by, at, { proved_entry_id: entryId(provedKey(mould, number)) })
  }
}

/** What the story says of each look, filed under its code and place; every look needs its because. */
function becausesOf(story: PlanStory, plan: StoredPlan): Record<string, string> {
  const given = story.signed?.becauses ?? {}
  const looks = plan.result.findings.filter(({ severity }) => severity === 'look')
  return Object.fromEntries(looks.map((look) => [becauseKey(look), given[look.code] ?? '']))
}

const nameOf = ({ mould, number, version }: PlanStory) => `${patchKey(mould, number)}, version ${version}`

async function step(
  story: PlanStory,
  planId: string,
  to: PlanState,
  by: Who,
  at: string,
  columns: Readonly<Record<string, unknown>>,
  reason: string | null = null,
): Promise<void> {
  const plan = await storedPlan(planId)
  const becauses = (columns.becauses ?? plan.becauses) as Record<string, string>
  const ticked = plan.lines.filter((line) => line.tickedAt !== null).map((line) => line.code)
  const allowed = mayMove(plan.state, to, {
    findings: plan.result.findings,
    becauses,
    jobLines: plan.lines,
    ticked,
    reason,
  })
  if (!allowed.ok) throw new Error(`${nameOf(story)}: ${allowed.reason}`)
  const { sql } = db()
  const person = personOf(by)
  const act = to === 'on the bench' ? 'put on the bench' : to
  await sql.begin(async (tx) => {
    await tx`update patch_plan set ${tx({ ...columns, state: to, version: plan.version + 1 } as never)} where id = ${planId}`
    await tx`
      insert into audit (at, by_id, by_name, act, record_kind, record_id, before, after)
      values (${at}, ${person.id}, ${person.name}, ${act}, 'patch-plan', ${planId}, ${tx.json({ state: plan.state })},
        ${tx.json({ state: to, ...columns } as never)})`
  })
}

/** Ticks the lines stretch by stretch. */
async function tickLines(story: PlanStory, planId: string): Promise<void> {
  const { ticked } = story
  if (!ticked) return
  const { lines } = await storedPlan(planId)
  const draw = drawer(`ticks/${planId}`)
  const by = personOf(ticked.by)
  const rows: { position: number; at: string; note: string; title: string }[] = []
  for (const { through, days } of ticked.stretches) {
    const last = through === null ? lines.length - 1 : lines.findIndex(({ code }) => code === through)
    if (last < rows.length)
      throw new Error(`${nameOf(story)} has no job line ${through} after line ${rows.length}`)
    const done = lines.slice(rows.length, last + 1)
    const times = tickTimes(days, done.length, draw)
    for (const [index, { position, title, secondPerson }] of done.entries()) {
      const note = secondPerson ? `Looked at by ${personOf(ticked.second).name}` : ''
      rows.push({ position, title, note, at: times[index] ?? '' })
    }
  }
  const { sql } = db()
  await sql.begin(async (tx) => {
    await tx`
      update job_line l set ticked_by_id = ${by.id}, ticked_by_name = ${by.name}, ticked_at = r.at, tick_note = r.note
      from jsonb_to_recordset(${tx.json(rows)}) as r(position int, at timestamptz, note text)
      where l.plan_id = ${planId} and l.position = r.position`
    await tx`
      insert into audit (at, by_id, by_name, act, record_kind, record_id, before, after)
      select r.at, ${by.id}::uuid, ${by.name}, 'ticked', 'patch-plan', ${planId}::uuid,
        jsonb_build_object('line', r.title), jsonb_build_object('line', r.title, 'note', r.note)
      from jsonb_to_recordset(${tx.json(rows)}) as r(title text, at timestamptz, note text)`
  })
}

/** Moments of so many ticks, spread over days; a day may be named twice. */
function tickTimes(
  days: readonly IsoDate[],
  count: number,
  draw: (low: number, high: number) => number,
): string[] {
  const perDay = Math.ceil(count / days.length)
  let today: IsoDate | undefined
  let minute = 0
  return Array.from({ length: count }, (_, index) => {
    const day = days[Math.floor(index / perDay)] ?? days[days.length - 1] ?? ''
    minute = day === today ? minute + draw(14, 46) : 8 * 60 + draw(30, 55)
    today = day
    return momentOf(day, minute)
  })
}
