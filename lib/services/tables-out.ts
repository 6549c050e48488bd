import * as z from 'zod'
import { beforeLayUp, mouldStanding } from '#lib/core/log/index'
import type { Batches, Row } from '#lib/exchange/tables/index'
import {
  findingRows,
  logRow,
  materialRow,
  patchRow,
  pricedRow,
  releaseRows,
  type ShopTable,
  shopTables,
  stackPlyRow,
  standingCells,
  type TableName,
  tableGroups,
} from '#lib/exchange/tables/shop/index'
import type { Actor } from '#lib/schema/actor'
import { asked } from '#lib/schema/fields'
import { CureCycleSchema } from '#lib/schema/material'
import { mouldCounts } from '#lib/store/counts'
import { Refusal } from '#lib/store/errors'
import { readMouldByCode } from '#lib/store/moulds'
import * as rows from '#lib/store/tables-out'
import { type ShopContext, shopContext } from './shop'
import { everyone, leads, verb } from './verb'

/** A table opened for taking out: its head, and its rows as they are read. */
export interface OpenTable {
  readonly table: ShopTable<TableName>
  readonly batches: Batches
  /** What the file is called after the shop: "log", "LH-P". */
  readonly named: readonly string[]
  readonly shop: { readonly name: string; readonly timeZone: string }
  readonly today: string
}

type Read = (
  ask: rows.TableAsk,
  context: ShopContext,
) => Promise<readonly Row[]> | AsyncIterable<readonly Row[]>

/** Moulds at a time, entries at a time: what is in memory while a long table goes out. */
const mouldsAtATime = 200
const entriesAtATime = 500

/** Where the rows of every table come from. */
const readers: Readonly<Record<TableName, Read>> = {
  moulds: (ask, context) =>
    byMoulds(ask, async (moulds) => {
      const ids = moulds.map(({ id }) => id)
      const [stored, counts] = await Promise.all([
        rows.mouldRows(ids),
        mouldCounts(ids, context.season?.startsOn ?? null),
      ])
      return stored.flatMap((row): Row[] => {
        const counted = counts.get(String(row.id))
        if (!counted) return []
        const matters = beforeLayUp(counted, context.shop.rules.upkeep, context.today, context.now)
        return [{ ...row, ...standingCells(counted, mouldStanding(counted), matters) }]
      })
    }),
  log: (ask) => logBatches(ask),
  pulls: (ask) => byMoulds(ask, (moulds) => rows.pullRows(moulds.map(({ id }) => id))),
  release: (ask) =>
    byMoulds(ask, async (moulds) => {
      const counts = await mouldCounts(
        moulds.map(({ id }) => id),
        null,
      )
      return moulds.flatMap(({ id, code }) => releaseRows(code, counts.get(id)?.release ?? []))
    }),
  'open-matters': rows.matterRows,
  'face-areas': rows.areaRows,
  'face-outlines': rows.outlineRows,
  'thickness-readings': rows.readingRows,
  'locating-points': rows.pointRows,
  patches: async (ask) => (await rows.patchRows(ask)).map(patchRow),
  'patch-plies': rows.planPlyRows,
  'take-off': rows.takeOffRows,
  'job-lines': rows.jobLineRows,
  findings: async (ask) =>
    (await rows.planFindings(ask)).flatMap(({ findings, becauses, ...plan }) =>
      findingRows(plan, findings, becauses),
    ),
  parts: rows.partRows,
  'built-parts': rows.builtPartRows,
  'built-part-lots': rows.builtPartLotRows,
  patterns: rows.patternRows,
  'split-moulds': rows.setRows,
  hardware: rows.hardwareRows,
  seasons: rows.seasonRows,
  pictures: rows.pictureRows,
  materials: (_ask, { today }) => materials(today),
  stacks: async (_ask, { today }) => {
    const byId = new Map((await materials(today)).map((row) => [row.id, row]))
    return (await rows.stackPlyRows()).map(({ materialId, ...ply }) =>
      stackPlyRow(ply, byId.get(materialId ?? '') ?? {}),
    )
  },
  products: async (_ask, { today }) => (await rows.productRows(today)).map(pricedRow),
  'stock-lots': rows.lotRows,
  'stock-moves': rows.lotMoveRows,
  prices: async () => (await rows.priceRows()).map(pricedRow),
  rates: async () => (await rows.rateRows()).map(pricedRow),
  people: rows.personRows,
  tokens: rows.tokenRows,
  audit: () => auditBatches(),
}

const tableRequest = (forLead: boolean) =>
  z.object({
    name: z.enum(shopTables.filter((table) => table.forLead === forLead).map(({ name }) => name)),
    /** Code of a mould, compared without case. */
    mould: asked().nullable(),
    patch: z.uuid({ error: () => 'The id of a patch' }).nullable(),
    version: z
      .int({ error: () => 'The number of a version' })
      .min(1)
      .nullable(),
    issue: z
      .union([z.literal('current'), z.int().min(1)], { error: () => 'A number, or "current"' })
      .nullable(),
  })
type TableRequest = z.output<ReturnType<typeof tableRequest>>

/** The tables that somebody may take out, in their groups. */
export const listTables = verb('tables.list', everyone, z.object({}), async (actor) =>
  tableGroups
    .map(({ title, tables }) => ({
      title,
      tables: (tables as readonly ShopTable<TableName>[]).filter(
        (table) => !table.forLead || openLeadTable.roles.includes(actor.role),
      ),
    }))
    .filter(({ tables }) => tables.length > 0),
)

export const openTable = verb('tables.open', everyone, tableRequest(false), open)
/** People, tokens, audit. */
export const openLeadTable = verb('tables.open-lead', leads, tableRequest(true), open)

async function open(_actor: Actor, request: TableRequest): Promise<OpenTable> {
  const table = shopTables.find(({ name }) => name === request.name)
  if (!table) throw new Refusal(`There is no table ${request.name}`, { status: 404 })
  const mould = request.mould === null ? null : await readMouldByCode(request.mould)
  if (request.mould !== null && !mould) {
    throw new Refusal(`There is no mould ${request.mould}`, { status: 404 })
  }
  for (const by of ['mould', 'patch', 'issue'] as const) {
    if (request[by] !== null && !table.narrowedBy.includes(by)) {
      const says = `The table ${table.name} can't be narrowed to one ${by}; leave ?${by}= out`
      throw new Refusal(says, { fields: { [by]: says } })
    }
  }
  const context = await shopContext()
  const ask = {
    mouldId: mould?.id ?? null,
    patchId: request.patch,
    versionNo: request.version,
    issue: request.issue,
  }
  const read = readers[table.name](ask, context)
  return {
    table,
    batches: Symbol.asyncIterator in read ? read : [await read],
    named: [table.name, mould?.code ?? '', request.version === null ? '' : `v${request.version}`],
    shop: context.shop,
    today: context.today,
  }
}

type Asked = Awaited<ReturnType<typeof rows.mouldsAsked>>

async function* byMoulds(
  ask: rows.TableAsk,
  read: (moulds: Asked[number][]) => Promise<readonly Row[]>,
): AsyncGenerator<readonly Row[]> {
  const moulds = await rows.mouldsAsked(ask)
  for (let from = 0; from < moulds.length; from += mouldsAtATime) {
    yield await read(moulds.slice(from, from + mouldsAtATime))
  }
}

async function* logBatches(ask: rows.TableAsk): AsyncGenerator<readonly Row[]> {
  yield* logsOf('mould', await rows.mouldsAsked(ask))
  if (ask.mouldId === null) yield* logsOf('pattern', await rows.patternsWithLog())
}

/** Short logs several together, a long one in pages. */
async function* logsOf(
  of: 'mould' | 'pattern',
  subjects: readonly Asked[number][],
): AsyncGenerator<readonly Row[]> {
  let together: string[] = []
  let entries = 0
  for (const subject of subjects) {
    if (subject.entries === 0) continue
    if (entries + subject.entries > entriesAtATime && together.length > 0) {
      yield (await rows.takenEntries(of, together, null)).map(logRow)
      together = []
      entries = 0
    }
    if (subject.entries > entriesAtATime) yield* longLog(of, subject.id)
    else {
      together.push(subject.id)
      entries += subject.entries
    }
  }
  if (together.length > 0) yield (await rows.takenEntries(of, together, null)).map(logRow)
}

async function* longLog(of: 'mould' | 'pattern', id: string): AsyncGenerator<readonly Row[]> {
  let after: string | null = null
  do {
    const page: rows.TakenEntry[] = await rows.takenEntries(of, [id], { after, limit: entriesAtATime })
    yield page.map(logRow)
    after = page.length === entriesAtATime ? (page.at(-1)?.standsAt ?? null) : null
  } while (after !== null)
}

async function* auditBatches(): AsyncGenerator<readonly Row[]> {
  let after = 0
  for (;;) {
    const page = await rows.auditRows(after, entriesAtATime)
    yield page
    if (page.length < entriesAtATime) return
    after = Number(page.at(-1)?.no)
  }
}

async function materials(today: string): Promise<Row[]> {
  const cycle = (value: unknown) => (value === null ? null : CureCycleSchema.parse(value))
  return (await rows.materialRows(today)).map(({ cure, postCure, ...stored }) =>
    materialRow(pricedRow(stored), cycle(cure), cycle(postCure)),
  )
}
