import * as z from 'zod'
import {
  beforeLayUp,
  type LogEntry,
  type Matter,
  type MouldCounts,
  type MouldStanding,
  mouldStanding,
} from '#lib/core/log/index'
import {
  FaceAreaInput,
  LocatingIssueInput,
  MouldInput,
  MouldSetInput,
  PartInput,
  PatternInput,
  ThicknessInput,
} from '#lib/schema/mould'
import { mouldCounts, type StripMarks, stripMarks } from '#lib/store/counts'
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
  changeArea as updateArea,
} from '#lib/store/face'
import { listEntries } from '#lib/store/log'
import {
  addMould as insertMould,
  addPart as insertPart,
  addPattern as insertPattern,
  addSet as insertSet,
  listMoulds,
  readMould,
  readMouldByCode,
  listParts as readParts,
  listPatterns as readPatterns,
  listSets as readSets,
  type StoredMould,
  changeMould as updateMould,
  changePart as updatePart,
  changePattern as updatePattern,
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
import { checkedArea } from './face-check'
import { type ShopContext, shopContext, told } from './shop'
import { everyone, leads, verb } from './verb'

/** One mould in the rack: what it is, how it stands, what comes next. */
export interface RackRow {
  readonly mould: StoredMould
  readonly counts: MouldCounts
  readonly standing: MouldStanding
  /** What must be settled before the next lay-up, worst first. */
  readonly matters: readonly Matter[]
  readonly strip: StripMarks
}

const noMarks: StripMarks = { pulls: [], coats: [], patches: [] }

export const listRack = verb(
  'moulds.rack',
  everyone,
  z.object({}),
  async (): Promise<{ rows: RackRow[]; context: ShopContext }> => {
    const context = await shopContext()
    const [moulds, counts, strips] = await Promise.all([
      listMoulds(),
      mouldCounts(null, context.season?.startsOn ?? null),
      stripMarks(null),
    ])
    const rows = moulds.flatMap((mould): RackRow[] => {
      const counted = counts.get(mould.id)
      if (!counted) return []
      return [
        {
          mould,
          counts: counted,
          standing: mouldStanding(counted),
          matters: beforeLayUp(counted, context.shop.rules.upkeep, context.today, context.now),
          strip: strips.get(mould.id) ?? noMarks,
        },
      ]
    })
    return { rows, context }
  },
)

/** Everything that a mould's page shows. */
export interface MouldPage extends RackRow {
  readonly context: ShopContext
  readonly areas: readonly StoredArea[]
  readonly points: PointIssue | null
  readonly stack: StoredStack | null
  readonly entries: readonly LogEntry[]
  readonly plans: readonly { readonly patch: StoredPatch; readonly plan: StoredPlan }[]
  readonly patches: readonly PatchSummary[]
  readonly initials: ReadonlyMap<string, string>
}

export const readMouldPage = verb(
  'moulds.read',
  everyone,
  z.object({ code: z.string() }),
  async (_actor, { code }): Promise<MouldPage> => {
    const mould = await readMouldByCode(code)
    if (!mould) throw new Refusal(`There is no mould ${code}`, { status: 404 })
    const context = await shopContext()
    const [counts, strips, areas, points, stack, entries, plans, patches, initials] = await Promise.all([
      mouldCounts([mould.id], context.season?.startsOn ?? null),
      stripMarks([mould.id]),
      listAreas(mould.id),
      currentPoints(mould.id),
      mould.stackId ? readStack(mould.stackId) : null,
      listEntries(mould.id),
      patchesOnMould(mould.id),
      listPatches(mould.id),
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
      patches,
      initials,
    }
  },
)

export const readMouldById = verb(
  'moulds.by-id',
  everyone,
  z.object({ id: z.uuid() }),
  async (_actor, { id }) => {
    const mould = await readMould(id)
    if (!mould) throw new Refusal('There is no such mould', { status: 404 })
    return mould
  },
)

const codeTaken = (what: string) => ({
  field: 'code',
  says: `Another ${what} has this code; codes are compared without case`,
})
const mouldRules = {
  mould_code_key: codeTaken('mould'),
  mould_set_piece_key: { field: 'pieceNo', says: 'Another piece of this split mould has this number' },
}
const partRules = { part_code_key: codeTaken('part') }
const patternRules = { pattern_code_key: codeTaken('pattern') }
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

export const listParts = verb('parts.list', everyone, z.object({}), () => readParts())
export const addPart = verb('parts.add', leads, PartInput, (actor, input) =>
  told(insertPart(actor, input), partRules),
)
export const changePart = verb(
  'parts.change',
  leads,
  PartInput.safeExtend({ version: z.int() }),
  (actor, { version, ...input }) => told(updatePart(actor, version, input), partRules),
)

export const listPatterns = verb('patterns.list', everyone, z.object({}), () => readPatterns())
export const addPattern = verb('patterns.add', leads, PatternInput, (actor, input) =>
  told(insertPattern(actor, input), patternRules),
)
export const changePattern = verb(
  'patterns.change',
  leads,
  PatternInput.safeExtend({ version: z.int() }),
  (actor, { version, ...input }) => told(updatePattern(actor, version, input), patternRules),
)

export const listSets = verb('sets.list', everyone, z.object({}), () => readSets())
export const addSet = verb('sets.add', leads, MouldSetInput, (actor, input) =>
  told(insertSet(actor, input), { mould_set_code_key: codeTaken('split mould') }),
)

export const readFaceArea = verb(
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
export const addPointIssue = verb('points.issue', leads, LocatingIssueInput, (actor, input) =>
  told(insertPointIssue(actor, input), {}),
)
