import 'server-only'
import { type Loop, middleOfLoop, placeWords } from '#lib/core/geometry/index'
import type { PlanState } from '#lib/core/repair/index'
import type { PatchInput, PatchPlan, Side } from '#lib/core/repair/types'
import type { Result } from '#lib/core/result'
import type { Actor } from '#lib/schema/actor'
import type { OpeningSource } from '#lib/schema/patch'
import { db } from './db'
import { Refusal } from './errors'
import { areaPlaces } from './face-places'
import type { JobLineModel, PatchPlanModel } from './generated/models'
import { createOnce, json } from './once'

export interface StoredLine {
  readonly position: number
  readonly code: string
  readonly title: string
  readonly detail: string
  readonly cautions: readonly string[]
  readonly secondPerson: boolean
  readonly tickedById: string | null
  readonly tickedByName: string | null
  readonly tickedAt: string | null
  readonly tickNote: string
}

/** A plan as it was saved: what it was given, what came out, who did what to it. */
export interface StoredPlan {
  readonly id: string
  readonly patchId: string
  readonly versionNo: number
  readonly state: PlanState
  readonly opening: OpeningSource
  readonly input: PatchInput
  readonly result: Result<PatchPlan>
  readonly calculationVersion: string
  readonly becauses: Readonly<Record<string, string>>
  readonly note: string
  readonly createdById: string | null
  readonly createdByName: string
  readonly createdAt: string
  readonly signedByName: string | null
  readonly signedAt: string | null
  readonly selfChecked: boolean
  readonly benchAt: string | null
  readonly laidEntryId: string | null
  readonly provedEntryId: string | null
  readonly putByAt: string | null
  readonly putByReason: string | null
  readonly version: number
  readonly lines: readonly StoredLine[]
}

export interface StoredPatch {
  readonly id: string
  readonly mouldId: string
  readonly mouldCode: string
  readonly mouldName: string
  readonly areaId: string
  readonly areaName: string
  readonly number: number
  readonly title: string
  readonly reason: string
  readonly createdAt: string
}

const moment = (at: Date | null): string | null => at?.toISOString() ?? null

function toLine({ planId: _plan, tickedAt, ...line }: JobLineModel): StoredLine {
  return { ...line, tickedAt: moment(tickedAt) }
}

function toPlan(row: PatchPlanModel & { lines: JobLineModel[] }): StoredPlan {
  const { signedById: _signedBy, lines, ...rest } = row
  return {
    ...rest,
    state: row.state as PlanState,
    opening: row.opening as unknown as OpeningSource,
    input: row.input as unknown as PatchInput,
    result: row.result as unknown as Result<PatchPlan>,
    becauses: row.becauses as Record<string, string>,
    createdAt: row.createdAt.toISOString(),
    signedAt: moment(row.signedAt),
    benchAt: moment(row.benchAt),
    putByAt: moment(row.putByAt),
    lines: lines.map(toLine),
  }
}

const withLines = { lines: { orderBy: { position: 'asc' } } } as const
const withOwner = { mould: { select: { code: true, name: true } }, area: { select: { name: true } } } as const

function toPatch(row: {
  id: string
  mouldId: string
  areaId: string
  number: number
  title: string
  reason: string
  createdAt: Date
  mould: { code: string; name: string }
  area: { name: string }
}): StoredPatch {
  return {
    id: row.id,
    mouldId: row.mouldId,
    mouldCode: row.mould.code,
    mouldName: row.mould.name,
    areaId: row.areaId,
    areaName: row.area.name,
    number: row.number,
    title: row.title,
    reason: row.reason,
    createdAt: row.createdAt.toISOString(),
  }
}

export interface PatchSummary extends StoredPatch {
  readonly planId: string
  readonly versionNo: number
  readonly state: PlanState
  /** The middle of its opening: "floor B5, 40 mm from D03". */
  readonly place: string
  readonly side: Side
  readonly lengthMm: number
  readonly plies: number
  readonly stops: number
  readonly createdByName: string
  readonly ticked: number
  readonly lines: number
}

export interface PatchQuery {
  readonly mouldId: string | null
  /** None: any. */
  readonly states: readonly PlanState[]
  /** From 1. */
  readonly page: number
  readonly size: number
}

/**
 * Patches of the shop or of one mould, each with its newest version that is not put by (or the last of all), a page at
 * a time, and how many there are in all.
 */
export async function listPatches(
  query: PatchQuery,
): Promise<{ readonly rows: readonly PatchSummary[]; readonly matching: number }> {
  const { sql } = db()
  const fits = sql`
    from patch p
    join mould m on m.id = p.mould_id
    join face_area a on a.id = p.area_id
    join lateral (select x.id, x.version_no, x.state, x.created_by_name, x.place, x.side, x.length_mm, x.ply_count, x.stop_count
      from patch_plan x where x.patch_id = p.id
      order by (x.state in ('on the bench', 'laid', 'proved')) desc, (x.state <> 'put by') desc, x.version_no desc limit 1) pl on true
    where ${query.mouldId === null ? sql`true` : sql`p.mould_id = ${query.mouldId}`}
      and ${query.states.length === 0 ? sql`true` : sql`pl.state = any(${[...query.states]}::text[])`}`
  const [rows, [count]] = await Promise.all([
    sql`
    select p.id, p.mould_id as "mouldId", m.code as "mouldCode", m.name as "mouldName", p.area_id as "areaId", a.name as "areaName",
      p.number, p.title, p.reason, to_json(p.created_at) #>> '{}' as "createdAt",
      pl.id as "planId", pl.version_no as "versionNo", pl.state, pl.created_by_name as "createdByName",
      pl.place, pl.side, pl.length_mm as "lengthMm", pl.ply_count as plies, pl.stop_count as stops,
      (select x.input -> 'opening' -> 'outer' from patch_plan x where x.id = pl.id) as opening,
      (select count(*)::int from job_line l where l.plan_id = pl.id and l.ticked_at is not null) as ticked,
      (select count(*)::int from job_line l where l.plan_id = pl.id) as lines
    ${fits} order by m.code, p.number desc limit ${query.size} offset ${(query.page - 1) * query.size}`,
    sql<{ matching: number }[]>`select count(*)::int as matching ${fits}`,
  ])
  return { rows: await placed(rows as unknown as OpenedSummary[]), matching: count?.matching ?? 0 }
}

type OpenedSummary = PatchSummary & { readonly opening: Loop }

async function placed(rows: readonly OpenedSummary[]): Promise<PatchSummary[]> {
  const known = await areaPlaces(rows.map(({ mouldId }) => mouldId))
  return rows.map(({ opening, ...row }) => {
    const at = known.get(row.mouldId)?.find(({ id }) => id === row.areaId)
    return at ? { ...row, place: placeWords(middleOfLoop(opening), at.area, at.dowels) } : row
  })
}

export async function readPatch(
  id: string,
): Promise<(StoredPatch & { readonly plans: readonly StoredPlan[] }) | null> {
  const row = await db().prisma.patch.findUnique({
    where: { id },
    include: { ...withOwner, plans: { orderBy: { versionNo: 'desc' }, include: withLines } },
  })
  return row && { ...toPatch(row), plans: row.plans.map(toPlan) }
}

export async function readPlan(id: string): Promise<(StoredPlan & { readonly patch: StoredPatch }) | null> {
  const row = await db().prisma.patchPlan.findUnique({
    where: { id },
    include: { ...withLines, patch: { include: withOwner } },
  })
  return row && { ...toPlan(row), patch: toPatch(row.patch) }
}

/** Outlines of the patches that are on a mould now, laid or proved, for drawing and for distance checks. */
export async function patchesOnMould(mouldId: string): Promise<{ patch: StoredPatch; plan: StoredPlan }[]> {
  const rows = await db().prisma.patchPlan.findMany({
    where: { patch: { mouldId }, state: { in: ['sketched', 'signed', 'on the bench', 'laid', 'proved'] } },
    orderBy: [{ patch: { number: 'asc' } }, { versionNo: 'asc' }],
    include: { ...withLines, patch: { include: withOwner } },
  })
  return rows.map((row) => ({ patch: toPatch(row.patch), plan: toPlan(row) }))
}

export interface PlanToWrite {
  readonly id: string
  readonly patchId: string
  readonly mouldId: string
  readonly areaId: string
  readonly title: string
  readonly reason: string
  readonly opening: OpeningSource
  readonly input: PatchInput
  readonly result: Result<PatchPlan>
  readonly calculationVersion: string
  readonly note: string
}

/**
 * Writes a plan version: the first one makes the patch and gives it the mould's next number. What is compared when
 * the same id comes again is `sent`, which does not hold what the calculation made of it.
 */
export async function addPlan(actor: Actor, sent: unknown, plan: PlanToWrite): Promise<boolean> {
  return createOnce(actor, 'patch-plan', plan.id, sent, async (tx) => {
    await tx.$executeRaw`select 1 from mould where id = ${plan.mouldId}::uuid for update`
    const patch = await tx.patch.findUnique({ where: { id: plan.patchId }, include: { plans: true } })
    if (patch && (patch.mouldId !== plan.mouldId || patch.areaId !== plan.areaId)) {
      throw new Refusal(
        'A new version of a patch stays on its mould and area; make a new patch for another place',
      )
    }
    if (!patch) {
      const last = await tx.patch.aggregate({ where: { mouldId: plan.mouldId }, _max: { number: true } })
      await tx.patch.create({
        data: {
          id: plan.patchId,
          mouldId: plan.mouldId,
          areaId: plan.areaId,
          number: (last._max.number ?? 0) + 1,
          title: plan.title,
          reason: plan.reason,
        },
      })
    }
    const blocking = patch?.plans.find((other) => ['on the bench', 'laid', 'proved'].includes(other.state))
    if (blocking) {
      throw new Refusal(`Version ${blocking.versionNo} is ${blocking.state}; a change now is a new patch`, {
        status: 409,
      })
    }
    const versionNo = 1 + Math.max(0, ...(patch?.plans.map((other) => other.versionNo) ?? []))
    await tx.patchPlan.create({
      data: {
        id: plan.id,
        patchId: plan.patchId,
        versionNo,
        opening: json(plan.opening),
        input: json(plan.input),
        result: json(plan.result),
        calculationVersion: plan.calculationVersion,
        note: plan.note,
        createdById: actor.id,
        createdByName: actor.name,
      },
    })
    await tx.jobLine.createMany({
      data: plan.result.value.jobLines.map((line, index) => ({
        planId: plan.id,
        position: index + 1,
        code: line.code,
        title: line.title,
        detail: line.detail,
        cautions: [...line.cautions],
        secondPerson: line.secondPerson,
      })),
    })
  })
}
