import * as z from 'zod'
import { loopBounds } from '#lib/core/geometry/index'
import type { Region } from '#lib/core/geometry/types'
import type { Ply } from '#lib/core/laminate/types'
import { openingRegion } from '#lib/core/repair/opening'
import {
  defaultRepairRules,
  edges,
  type PatchArea,
  type PatchInput,
  type RepairRules,
  sides,
  type Taper,
} from '#lib/core/repair/types'
import { angleDeg, choice, lengthMm, loop, point, quantity, temperatureC, text } from './fields'
import { CureCycleSchema, PlyMaterialSchema } from './material'
import { FaceLineSchema, KeepOutSchema } from './mould'
import { circleOpening, roundedRectangleOpening } from './opening'
import { RepairRulesSchema } from './shop'

const placement = z
  .object({
    shiftMm: point().prefault([0, 0]),
    turnDeg: angleDeg().prefault(0),
    mirrored: z.boolean().prefault(false),
  })
  .prefault({})

/** A region, the bare points of its outline, or a round or rectangular shape with where it lies. */
const opening = z.preprocess(
  (raw) => {
    if (Array.isArray(raw)) return { kind: 'region', outer: raw }
    const bare = typeof raw === 'object' && raw !== null && !('kind' in raw)
    return bare ? { kind: 'region', ...raw } : raw
  },
  z.discriminatedUnion(
    'kind',
    [
      z.object({
        kind: z.literal('region').prefault('region'),
        outer: loop(),
        holes: z.array(loop()).max(100).prefault([]),
      }),
      circleOpening(placement),
      roundedRectangleOpening(placement),
    ],
    {
      error: () =>
        'Give the outline as {outer, holes}, as a list of points, or as a circle or rounded-rectangle',
    },
  ),
)

const taper = z
  .object(
    {
      ratio: quantity('ratio', { min: 1, max: 500 }).optional(),
      mmPerPly: lengthMm({ min: 0.1, max: 500 }).optional(),
      use: choice(['ratio', 'mm-per-ply', 'longer']).optional(),
    },
    { error: () => 'Give a ratio, millimetres a ply, or both' },
  )
  .refine(({ ratio, mmPerPly }) => ratio !== undefined || mmPerPly !== undefined, {
    error: () => 'Give a ratio, millimetres a ply, or both',
  })
  .meta({
    description:
      'A ratio, millimetres a ply, or both. Where `use` is left out, the rule that is given governs, and of two the longer. The other one is worked out at 20:1 or 12.7 mm a ply.',
  })

const { name, role, rollWidthMm, thickestCureMm, ...figures } = PlyMaterialSchema.shape

const ply = z.object({
  material: z.object({
    name: name.optional(),
    role: role.prefault('bulk'),
    ...figures,
    rollWidthMm: rollWidthMm.prefault(1250).meta({ description: 'Take-off only' }),
    thickestCureMm: thickestCureMm.prefault(null),
  }),
  directionDeg: angleDeg(),
})

const cycle = z.object({
  ...CureCycleSchema.shape,
  name: CureCycleSchema.shape.name.prefault('as sent'),
  tgAfterC: CureCycleSchema.shape.tgAfterC.prefault(null),
})

const heatLimit = () => temperatureC({ min: 20, max: 400 }).nullable().prefault(null)

const area = z.object(
  {
    name: text('the name of the area', 60).prefault('area'),
    boundary: loop(),
    lines: z
      .array(z.object({ ...FaceLineSchema.shape, closed: z.boolean().prefault(false) }))
      .max(50)
      .prefault([]),
    keepOuts: z.array(KeepOutSchema).max(50).prefault([]),
    dowels: z
      .array(
        z.object({
          tag: text('a tag', 40),
          at: point(),
          diameterMm: lengthMm({ min: 0.1, max: 500 }),
          bushDiameterMm: lengthMm({ min: 0.1, max: 500 }).nullable().prefault(null),
          through: z.boolean().prefault(false),
          isDatum: z.boolean().prefault(false),
        }),
      )
      .max(2000)
      .prefault([]),
    oldPatches: z
      .array(z.object({ name: text('a name', 120), face: loop(), footprint: loop() }))
      .max(500)
      .prefault([]),
    grid: z
      .object({ originMm: point(), cellMm: lengthMm({ min: 5, max: 1000 }).prefault(50) })
      .nullable()
      .prefault(null)
      .meta({ description: 'null: cells of 50 mm from the top left of the boundary' }),
  },
  { error: () => 'Give the area with its boundary' },
)

/**
 * What `compute/patch` takes: everything the plan depends on, nothing from the database. Side, edge, opening, stack,
 * taper and boundary are asked for and never guessed. What else is left out is not known (heat limits, cures), not
 * there (lines, dowels, cover plies), or the default of a shop (rules).
 */
export const PatchInputSchema = z
  .object({
    side: choice(sides),
    edge: choice(edges),
    opening,
    stack: z
      .array(ply, { error: () => 'Give the plies of the stack, the surface ply first' })
      .min(1, { error: () => 'A stack has at least one ply' })
      .max(60),
    removedPlies: z
      .array(z.int().min(1))
      .min(1, { error: () => 'Say which plies are taken out' })
      .nullable()
      .prefault(null)
      .meta({ description: 'Counted from 1, the surface ply; null: all of them' }),
    measuredThicknessMm: z
      .array(lengthMm({ min: 0.05, max: 100 }))
      .max(200)
      .prefault([]),
    taper,
    coverPlies: z.array(ply).max(10).prefault([]),
    area,
    rules: RepairRulesSchema.partial()
      .prefault({})
      .meta({ description: `What is left out: ${JSON.stringify(defaultRepairRules)}` }),
    heat: z.object({ inUseC: heatLimit(), freeStandingC: heatLimit(), bondedC: heatLimit() }).prefault({}),
    cure: cycle.nullable().prefault(null),
    postCure: cycle.nullable().prefault(null),
    nextPartCureC: temperatureC({ min: 10, max: 400 }).nullable().prefault(null),
    patternAvailable: z
      .boolean()
      .prefault(true)
      .meta({ description: 'false: no pattern to lay against, so a splash comes first' }),
  })
  .transform(
    (request): PatchInput => ({
      ...request,
      opening: regionOf(request.opening),
      stack: request.stack.map(plyOf),
      removedPlies: request.removedPlies ?? request.stack.map((_ply, index) => index + 1),
      taper: taperOf(request.taper),
      coverPlies: request.coverPlies.map(plyOf),
      area: areaOf(request.area),
      rules: rulesOf(request.rules),
    }),
  )

function regionOf(sent: z.output<typeof opening>): Region {
  return sent.kind === 'region' ? { outer: sent.outer, holes: sent.holes } : openingRegion(sent)
}

function plyOf({ material, directionDeg }: z.output<typeof ply>): Ply {
  return {
    material: { ...material, name: material.name ?? `${material.fibreArealWeightGsm} g/m² ply` },
    directionDeg,
  }
}

function taperOf({ ratio, mmPerPly, use }: z.output<typeof taper>): Taper {
  const given = ratio === undefined ? 'mm-per-ply' : mmPerPly === undefined ? 'ratio' : 'longer'
  return { ratio: ratio ?? 20, mmPerPly: mmPerPly ?? 12.7, use: use ?? given }
}

function areaOf({ grid, ...sent }: z.output<typeof area>): PatchArea {
  const [left, , , top] = loopBounds(sent.boundary)
  return { ...sent, grid: grid ?? { originMm: [left, top], cellMm: 50 } }
}

function rulesOf(sent: z.output<ReturnType<typeof RepairRulesSchema.partial>>): RepairRules {
  const given = Object.entries(sent).filter(([, value]) => value !== undefined)
  return { ...defaultRepairRules, ...Object.fromEntries(given) }
}
