import * as z from 'zod'
import { beforeLayUp, type LogEntry, mouldStanding } from '#lib/core/log/index'
import { asked } from '#lib/schema/fields'
import {
  FaceAreaInput,
  LocatingIssueInput,
  MouldInput,
  StrikeReading,
  ThicknessInput,
} from '#lib/schema/mould'
import { type StripMarks, stripMarks } from '#lib/store/counts'
import { Refusal } from '#lib/store/errors'
import {
  currentPoints,
  addArea as insertArea,
  addPointIssue as insertPointIssue,
  addReadings as insertReadings,
  listAreas,
  type PointIssue,
  readArea,
  type StoredArea,
  strikeReading as strikeStored,
  changeArea as updateArea,
} from '#lib/store/face'
import { listEntries } from '#lib/store/history'
import {
  addMould as insertMould,
  readMould,
  readMouldByCode,
  changeMould as updateMould,
} from '#lib/store/moulds'
import {
  listPatches,
  type PatchSummary,
  patchesOnMould,
  type StoredPatch,
  type StoredPlan,
} from '#lib/store/patches'
import { initialsByName } from '#lib/store/people'
import { readStack, type StoredStack } from '#lib/store/stores'
import { countsSince } from '#lib/store/tally'
import { checkedArea } from './face-check'
import type { RackRow } from './rack'
import { codeTaken, type ShopContext, shopContext, told } from './shop'
import { asking, everyone, hands, leads, verb } from './verb'

const noMarks: StripMarks = { pulls: [], coats: [], patches: [] }

/** Everything that a mould's page shows. */
export interface MouldPage extends RackRow {
  readonly context: ShopContext
  readonly areas: readonly StoredArea[]
  readonly points: PointIssue | null
  readonly stack: StoredStack | null
  /** What was done to its dowels, newest first, as the face shows it. */
  readonly entries: readonly LogEntry[]
  readonly plans: readonly { readonly patch: StoredPatch; readonly plan: StoredPlan }[]
  readonly patches: readonly PatchSummary[]
  readonly initials: ReadonlyMap<string, string>
}

export const readMouldPage = asking(
  'moulds.read',
  everyone,
  z.object({ code: asked() }),
  async (_actor, { code }): Promise<MouldPage> => {
    const mould = await readMouldByCode(code)
    if (!mould) throw new Refusal(`There is no mould ${code}`, { status: 404 })
    const context = await shopContext()
    const [counts, strips, areas, points, stack, entries, plans, patches, initials] = await Promise.all([
      countsSince([mould.id], context.season?.startsOn ?? null),
      stripMarks([mould.id]),
      listAreas(mould.id),
      currentPoints(mould.id),
      mould.stackId ? readStack(mould.stackId) : null,
      listEntries({ mouldId: mould.id }, { kinds: ['dowel-changed'] }),
      patchesOnMould(mould.id),
      listPatches({ mouldId: mould.id, states: [], page: 1, size: 500 }),
      initialsByName(),
    ])
    const counted = counts.get(mould.id)
    if (!counted) throw new Refusal(`There is no mould ${code}`, { status: 404 })
    return {
      mould,
      context,
      counts: counted,
      standing: mouldStanding(counted),
      matters: beforeLayUp(counted, context.shop.rules.upkeep, context.today, context.now),
      strip: strips.get(mould.id) ?? noMarks,
      areas,
      points,
      stack,
      entries,
      plans,
      patches: patches.rows,
      initials,
    }
  },
)

export const readMouldById = asking(
  'moulds.by-id',
  everyone,
  z.object({ id: z.uuid() }),
  async (_actor, { id }) => {
    const mould = await readMould(id)
    if (!mould) throw new Refusal('There is no such mould', { status: 404 })
    return mould
  },
)

const mouldRules = {
  mould_code_key: codeTaken('mould'),
  mould_set_piece_key: { field: 'pieceNo', says: 'Another piece of this split mould has this number' },
}
const areaRules = { face_area_name_key: { field: 'name', says: 'Another area of this mould has this name' } }

export const addMould = verb('moulds.add', leads, MouldInput, (actor, input) =>
  told(insertMould(actor, input), mouldRules),
)
export const changeMould = verb(
  'moulds.change',
  leads,
  MouldInput.safeExtend({ version: z.int() }),
  (actor, { version, ...input }) => told(updateMould(actor, version, input), mouldRules),
)

export const readFaceArea = asking(
  'areas.read',
  everyone,
  z.object({ id: z.uuid() }),
  async (_actor, { id }) => {
    const area = await readArea(id)
    if (!area) throw new Refusal('There is no such area', { status: 404 })
    return area
  },
)
export const addArea = verb('areas.add', leads, FaceAreaInput, (actor, input) =>
  told(insertArea(actor, checkedArea(input)), areaRules),
)
export const changeArea = verb(
  'areas.change',
  leads,
  FaceAreaInput.safeExtend({ version: z.int() }),
  (actor, { version, ...input }) => told(updateArea(actor, version, checkedArea(input)), areaRules),
)
export const addReadings = verb(
  'areas.measure',
  ['lead', 'laminator'],
  ThicknessInput,
  async (actor, input) => {
    const { today } = await shopContext()
    if (input.measuredOn > today) {
      throw new Refusal(`${input.measuredOn} is in the future: today is ${today} in the shop`, {
        fields: { measuredOn: `In the future; today is ${today}` },
      })
    }
    await told(insertReadings(actor, input), {
      thickness_reading_pkey: {
        field: 'readings',
        says: 'A reading was sent before; give each new one an id of its own',
      },
    })
  },
)
/** A reading that was wrong is struck out with its reason; it stays readable and counts nowhere. */
export const strikeReading = verb('areas.strike-reading', hands, StrikeReading, (actor, input) =>
  strikeStored(actor, input),
)
export const addPointIssue = verb('points.issue', leads, LocatingIssueInput, (actor, input) =>
  told(insertPointIssue(actor, input), {}),
)
