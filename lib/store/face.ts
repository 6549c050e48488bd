import 'server-only'
import type { FaceLine, KeepOut } from '#lib/core/repair/types'
import type { Actor } from '#lib/schema/actor'
import type {
  FaceAreaInput,
  LocatingIssueInput,
  LocatingPointInput,
  StrikeReading,
  ThicknessInput,
} from '#lib/schema/mould'
import { db } from './db'
import { Refusal } from './errors'
import type { FaceAreaModel, ThicknessReadingModel } from './generated/models'
import { audit, changeSeen, createOnce, dateColumn, dayOf, json } from './once'

export interface StoredReading {
  readonly id: string
  readonly uMm: number
  readonly vMm: number
  readonly thicknessMm: number
  readonly measuredOn: string
  readonly byName: string
}

export interface StruckReading extends StoredReading {
  readonly struckByName: string
  readonly struckBecause: string
}

export interface StoredArea extends FaceAreaInput {
  readonly position: number
  readonly version: number
  /** What the planner works with. */
  readonly readings: readonly StoredReading[]
  /** Readings that were struck out: readable, and counted nowhere. */
  readonly struckReadings: readonly StruckReading[]
}

const inOrder = { readings: { orderBy: [{ measuredOn: 'asc' as const }, { id: 'asc' as const }] } }

function toReading({ id, uMm, vMm, thicknessMm, measuredOn, byName }: ThicknessReadingModel): StoredReading {
  return { id, uMm, vMm, thicknessMm, measuredOn: dayOf(measuredOn), byName }
}

function toStruck(row: ThicknessReadingModel): StruckReading {
  return {
    ...toReading(row),
    struckByName: row.struckByName ?? '',
    struckBecause: row.struckBecause ?? '',
  }
}

function toArea(row: FaceAreaModel & { readings: ThicknessReadingModel[] }): StoredArea {
  const {
    curvature: _flat,
    boundary,
    lines,
    keepOuts,
    originMm,
    uAxis,
    vAxis,
    gridOriginMm,
    readings,
    ...rest
  } = row
  return {
    ...rest,
    originMm: originMm as [number, number, number],
    uAxis: uAxis as [number, number, number],
    vAxis: vAxis as [number, number, number],
    boundary: boundary as unknown as [number, number][],
    lines: lines as unknown as (FaceLine & { points: [number, number][] })[],
    keepOuts: keepOuts as unknown as (KeepOut & { outline: [number, number][] })[],
    gridOriginMm: gridOriginMm as [number, number],
    readings: readings.filter((reading) => reading.struckAt === null).map(toReading),
    struckReadings: readings.filter((reading) => reading.struckAt !== null).map(toStruck),
  }
}

export async function listAreas(mouldId: string): Promise<StoredArea[]> {
  const rows = await db().prisma.faceArea.findMany({
    where: { mouldId },
    orderBy: { position: 'asc' },
    include: inOrder,
  })
  return rows.map(toArea)
}

export async function readArea(id: string): Promise<StoredArea | null> {
  const row = await db().prisma.faceArea.findUnique({ where: { id }, include: inOrder })
  return row && toArea(row)
}

function areaColumns({
  boundary,
  lines,
  keepOuts,
  originMm,
  uAxis,
  vAxis,
  gridOriginMm,
  ...rest
}: FaceAreaInput) {
  return {
    ...rest,
    originMm: [...originMm],
    uAxis: [...uAxis],
    vAxis: [...vAxis],
    gridOriginMm: [...gridOriginMm],
    boundary: json(boundary),
    lines: json(lines),
    keepOuts: json(keepOuts),
  }
}

export const addArea = (actor: Actor, input: FaceAreaInput) =>
  createOnce(actor, 'face-area', input.id, input, async (tx) => {
    // One writer at a time gives out the mould's next position.
    await tx.$queryRaw`select 1 from mould where id = ${input.mouldId}::uuid for update`
    const last = await tx.faceArea.aggregate({ where: { mouldId: input.mouldId }, _max: { position: true } })
    await tx.faceArea.create({ data: { ...areaColumns(input), position: (last._max.position ?? 0) + 1 } })
  })

export const changeArea = (actor: Actor, sawVersion: number, input: FaceAreaInput) => {
  const { id, mouldId: _stays, ...columns } = areaColumns(input)
  return changeSeen(
    actor,
    'face-area',
    id,
    async (tx) => {
      const row = await tx.faceArea.findUnique({ where: { id }, include: inOrder })
      return row && toArea(row)
    },
    (tx) =>
      tx.faceArea.updateMany({
        where: { id, version: sawVersion },
        data: { ...columns, version: { increment: 1 } },
      }),
  )
}

export async function addReadings(actor: Actor, input: ThicknessInput): Promise<void> {
  const first = input.readings[0]
  if (!first) throw new Refusal('Give at least one reading')
  await createOnce(actor, 'thickness', first.id, input, (tx) =>
    tx.thicknessReading.createMany({
      data: input.readings.map((reading) => ({
        ...reading,
        areaId: input.areaId,
        measuredOn: dateColumn(input.measuredOn),
        byId: actor.id,
        byName: actor.name,
      })),
    }),
  )
}

/** Strikes a reading out. Struck out again for the same reason changes nothing; for another one it is refused. */
export async function strikeReading(actor: Actor, { id, because }: StrikeReading): Promise<void> {
  await db().prisma.$transaction(async (tx) => {
    const struck = await tx.thicknessReading.updateMany({
      where: { id, struckAt: null },
      data: { struckAt: new Date(), struckByName: actor.name, struckBecause: because },
    })
    const now = await tx.thicknessReading.findUnique({ where: { id } })
    if (!now) throw new Refusal('There is no such reading', { status: 404 })
    if (struck.count === 1) {
      await audit(tx, actor, 'struck out', 'thickness', id, { ...now, struckAt: null }, now)
    } else if (now.struckBecause !== because) {
      throw new Refusal(`${now.struckByName} has already struck it out: ${now.struckBecause}`, {
        status: 409,
      })
    }
  })
}

export interface StoredPoint extends Omit<LocatingPointInput, 'areaName'> {
  readonly id: string
  readonly areaId: string | null
}

export interface PointIssue {
  readonly id: string
  readonly number: number
  readonly name: string
  readonly issuedOn: string
  readonly byName: string
  readonly points: readonly StoredPoint[]
}

/** The issue of locating points that is in force for a mould: the latest one that has points of it. */
export function currentPoints(mouldId: string): Promise<PointIssue | null> {
  return latestPoints(mouldId, {})
}

/** The issue that was in force on a day. */
export function pointsOn(mouldId: string, day: string): Promise<PointIssue | null> {
  return latestPoints(mouldId, { issuedOn: { lte: dateColumn(day) } })
}

/** The issue before the one of this number, of those that have points of the mould. */
export function pointsBefore(mouldId: string, number: number): Promise<PointIssue | null> {
  return latestPoints(mouldId, { number: { lt: number } })
}

async function latestPoints(
  mouldId: string,
  which: { readonly number?: { lt: number }; readonly issuedOn?: { lte: Date } },
): Promise<PointIssue | null> {
  const table = await db().prisma.locatingTable.findFirst({
    where: { points: { some: { mouldId } }, ...which },
    orderBy: { number: 'desc' },
    include: { points: { where: { mouldId }, orderBy: { position: 'asc' } } },
  })
  if (!table) return null
  return {
    id: table.id,
    number: table.number,
    name: table.name,
    issuedOn: dayOf(table.issuedOn),
    byName: table.byName,
    points: table.points.map(({ tableId: _table, mouldId: _mould, position: _position, kind, ...row }) => ({
      ...row,
      kind: kind as StoredPoint['kind'],
    })),
  }
}

/** Writes a new numbered issue with the whole set of a mould's points. Earlier issues stay as they are. */
export async function addPointIssue(actor: Actor, input: LocatingIssueInput): Promise<void> {
  await createOnce(actor, 'locating-table', input.id, input, async (tx) => {
    // One writer at a time gives out the next number.
    await tx.$executeRaw`SELECT pg_advisory_xact_lock(hashtext('locating_table'))`
    const areas = await tx.faceArea.findMany({
      where: { mouldId: input.mouldId },
      orderBy: { position: 'asc' },
    })
    const last = await tx.locatingTable.aggregate({ _max: { number: true } })
    const areaOf = (name: string, row: number) => {
      if (name === '' && areas.length <= 1) return areas[0]?.id ?? null
      const found = areas.find((area) => area.name.trim().toLowerCase() === name.trim().toLowerCase())
      if (found) return found.id
      throw new Refusal(`Row ${row}: this mould has no area "${name}"`, {
        fields: {
          [`points.${row - 1}.areaName`]: `No area "${name}"; there is ${areas.map((area) => area.name).join(', ') || 'none yet'}`,
        },
      })
    }
    await tx.locatingTable.create({
      data: {
        id: input.id,
        number: (last._max.number ?? 0) + 1,
        name: input.name,
        issuedOn: dateColumn(input.issuedOn),
        note: input.note,
        byId: actor.id,
        byName: actor.name,
      },
    })
    await tx.locatingPoint.createMany({
      data: input.points.map(({ areaName, ...row }, index) => ({
        ...row,
        tableId: input.id,
        mouldId: input.mouldId,
        areaId: areaOf(areaName, index + 1),
        position: index + 1,
      })),
    })
  })
}
