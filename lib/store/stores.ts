import 'server-only'
import type { Ply, PlyMaterial } from '#lib/core/laminate/types'
import type { Actor } from '#lib/schema/actor'
import { CureCycleSchema, type MaterialInput, type StackInput } from '#lib/schema/material'
import { db, type Transaction } from './db'
import { Prisma as prismaNull } from './generated/client'
import type { MaterialModel } from './generated/models'
import { changeSeen, createOnce, json } from './once'

export interface StoredMaterial extends MaterialInput {
  readonly version: number
}

export interface StoredStack {
  readonly id: string
  readonly code: string
  readonly name: string
  readonly note: string
  readonly version: number
  readonly plies: readonly { readonly material: StoredMaterial; readonly directionDeg: number }[]
}

function readCycle(value: unknown) {
  return value === null || value === undefined ? null : CureCycleSchema.parse(value)
}

function toMaterial(row: MaterialModel): StoredMaterial {
  const { fibreVolumeFraction, resinMassFraction, resinDensityGcm3 } = row
  return {
    id: row.id,
    code: row.code,
    name: row.name,
    role: row.role as PlyMaterial['role'],
    fibreArealWeightGsm: row.fibreArealWeightGsm,
    fibreDensityGcm3: row.fibreDensityGcm3,
    fibreContent:
      fibreVolumeFraction === null
        ? {
            kind: 'resin-mass',
            resinMassFraction: resinMassFraction ?? 0,
            resinDensityGcm3: resinDensityGcm3 ?? 0,
          }
        : { kind: 'fibre-volume', fibreVolumeFraction },
    rollWidthMm: row.rollWidthMm,
    thickestCureMm: row.thickestCureMm,
    cure: readCycle(row.cure),
    postCure: readCycle(row.postCure),
    lowBelowM2: row.lowBelowM2,
    outLifeH: row.outLifeH,
    sourceNote: row.sourceNote,
    retired: row.retiredAt !== null,
    version: row.version,
  }
}

function materialColumns(input: MaterialInput) {
  const { id: _id, fibreContent, cure, postCure, retired, ...rest } = input
  const { DbNull } = prismaNull
  return {
    ...rest,
    retiredAt: retired ? new Date() : null,
    fibreVolumeFraction: fibreContent.kind === 'fibre-volume' ? fibreContent.fibreVolumeFraction : null,
    resinMassFraction: fibreContent.kind === 'resin-mass' ? fibreContent.resinMassFraction : null,
    resinDensityGcm3: fibreContent.kind === 'resin-mass' ? fibreContent.resinDensityGcm3 : null,
    cure: cure === null ? DbNull : json(cure),
    postCure: postCure === null ? DbNull : json(postCure),
  }
}

export async function listMaterials(): Promise<StoredMaterial[]> {
  const rows = await db().prisma.material.findMany({ orderBy: [{ role: 'desc' }, { code: 'asc' }] })
  return rows.map(toMaterial)
}

export async function readMaterial(id: string): Promise<StoredMaterial | null> {
  const row = await db().prisma.material.findUnique({ where: { id } })
  return row && toMaterial(row)
}

export const addMaterial = (actor: Actor, input: MaterialInput) =>
  createOnce(actor, 'material', input.id, input, (tx) =>
    tx.material.create({ data: { id: input.id, ...materialColumns(input) } }),
  )

export const changeMaterial = (actor: Actor, sawVersion: number, input: MaterialInput) =>
  changeSeen(
    actor,
    'material',
    input.id,
    async (tx) => {
      const row = await tx.material.findUnique({ where: { id: input.id } })
      return row && toMaterial(row)
    },
    (tx) =>
      tx.material.updateMany({
        where: { id: input.id, version: sawVersion },
        data: { ...materialColumns(input), version: { increment: 1 } },
      }),
  )

const withPlies = { plies: { orderBy: { position: 'asc' }, include: { material: true } } } as const

function toStack(row: {
  id: string
  code: string
  name: string
  note: string
  version: number
  plies: { directionDeg: number; material: MaterialModel }[]
}): StoredStack {
  return {
    id: row.id,
    code: row.code,
    name: row.name,
    note: row.note,
    version: row.version,
    plies: row.plies.map((ply) => ({ directionDeg: ply.directionDeg, material: toMaterial(ply.material) })),
  }
}

export async function listStacks(): Promise<StoredStack[]> {
  const rows = await db().prisma.stack.findMany({ orderBy: { code: 'asc' }, include: withPlies })
  return rows.map(toStack)
}

export async function readStack(id: string): Promise<StoredStack | null> {
  const row = await db().prisma.stack.findUnique({ where: { id }, include: withPlies })
  return row && toStack(row)
}

function plyRows(input: StackInput) {
  return input.plies.map((ply, index) => ({ stackId: input.id, position: index + 1, ...ply }))
}

export const addStack = (actor: Actor, input: StackInput) =>
  createOnce(actor, 'stack', input.id, input, async (tx) => {
    const { plies: _plies, ...columns } = input
    await tx.stack.create({ data: columns })
    await tx.stackPly.createMany({ data: plyRows(input) })
  })

export const changeStack = (actor: Actor, sawVersion: number, input: StackInput) => {
  const { plies: _plies, id, ...columns } = input
  return changeSeen(
    actor,
    'stack',
    id,
    async (tx) => {
      const row = await tx.stack.findUnique({ where: { id }, include: withPlies })
      return row && stackInputOf(toStack(row))
    },
    (tx) =>
      tx.stack.updateMany({
        where: { id, version: sawVersion },
        data: { ...columns, version: { increment: 1 } },
      }),
    async (tx: Transaction) => {
      await tx.stackPly.deleteMany({ where: { stackId: id } })
      await tx.stackPly.createMany({ data: plyRows(input) })
    },
  )
}

/** A stored stack in the shape that its form sends. */
export function stackInputOf(stack: StoredStack): StackInput & { version: number } {
  return {
    id: stack.id,
    code: stack.code,
    name: stack.name,
    note: stack.note,
    version: stack.version,
    plies: stack.plies.map((ply) => ({ materialId: ply.material.id, directionDeg: ply.directionDeg })),
  }
}

/** The figures of a material that the calculations use. */
export function plyMaterial(material: StoredMaterial): PlyMaterial {
  const { name, role, fibreArealWeightGsm, fibreDensityGcm3, fibreContent, rollWidthMm, thickestCureMm } =
    material
  return { name, role, fibreArealWeightGsm, fibreDensityGcm3, fibreContent, rollWidthMm, thickestCureMm }
}

export function stackPlies(stack: StoredStack): Ply[] {
  return stack.plies.map((ply) => ({ material: plyMaterial(ply.material), directionDeg: ply.directionDeg }))
}
