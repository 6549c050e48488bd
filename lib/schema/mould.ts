import * as z from 'zod'
import type { FaceLine, KeepOut } from '#lib/core/repair/types'
import {
  choice,
  code,
  freeText,
  isoDate,
  lengthMm,
  loop,
  plainNumber,
  point,
  temperatureC,
  text,
  uuid,
} from './fields'

/** What it weighs, and its outer size as it stands. */
export const massAndSize = () => ({
  massKg: plainNumber({ min: 0.01, max: 100_000 }).meta({ quantity: 'mass' }).nullable(),
  lengthMm: lengthMm({ min: 1, max: 100_000 }).nullable(),
  widthMm: lengthMm({ min: 1, max: 100_000 }).nullable(),
  heightMm: lengthMm({ min: 1, max: 100_000 }).nullable(),
})

export const PartInput = z.object({
  id: uuid(),
  code: code('a code, for example LH'),
  name: text('the name of the part'),
  note: freeText(),
})
export type PartInput = z.output<typeof PartInput>

export const PatternInput = z.object({
  id: uuid(),
  code: code('a code, for example LH-P'),
  name: text('the name of the pattern'),
  madeOf: freeText(500),
  condition: freeText(1000),
  place: freeText(200),
  owner: freeText(120),
  ...massAndSize(),
  available: z.boolean(),
  canBeMadeAgain: z.boolean(),
  note: freeText(),
})
export type PatternInput = z.output<typeof PatternInput>

const limitC = () => temperatureC({ min: 20, max: 400 }).nullable()

export const MouldInput = z
  .object({
    id: uuid(),
    code: code(),
    name: text('the name of the mould'),
    partId: uuid().nullable(),
    patternId: uuid().nullable(),
    setId: uuid().nullable(),
    pieceNo: z.int().min(1).max(99).nullable(),
    stackId: uuid().nullable(),
    hand: choice(['none', 'port', 'starboard']),
    madeWhen: freeText(60),
    patternState: freeText(500),
    owner: freeText(120),
    ...massAndSize(),
    liftingPoints: freeText(1000),
    backing: freeText(1000),
    heatInUseC: limitC(),
    heatFreeC: limitC(),
    heatBondedC: limitC(),
    tgDryC: limitC(),
    tgWetC: limitC(),
    tgNote: freeText(500),
    partCureC: temperatureC({ min: 10, max: 400 }).nullable(),
    canBeMadeAgain: z.boolean(),
    demoulding: freeText(),
    doNots: freeText(),
    note: freeText(),
  })
  .refine((mould) => (mould.setId === null) === (mould.pieceNo === null), {
    path: ['pieceNo'],
    error: () => 'A piece of a split mould has a number; a mould of its own has none',
  })
export type MouldInput = z.output<typeof MouldInput>

export const FaceLineSchema = z.object({
  name: text('a name for the line', 60),
  kind: choice(['trim', 'scribe']),
  points: z
    .array(point())
    .min(2, { error: () => 'A line has at least two points' })
    .max(5000),
  closed: z.boolean(),
}) satisfies z.ZodType<FaceLine, unknown>

export const KeepOutSchema = z.object({
  name: text('a name for the ground to keep off', 60),
  kind: choice(['flange', 'seal-land', 'backing', 'other']),
  outline: loop(),
}) satisfies z.ZodType<KeepOut, unknown>

const axis = () => z.tuple([plainNumber(), plainNumber(), plainNumber()])

export const FaceAreaInput = z.object({
  id: uuid(),
  mouldId: uuid(),
  name: text('the name of the area, for example floor', 60),
  originMm: z.tuple([lengthMm(), lengthMm(), lengthMm()]),
  uAxis: axis(),
  vAxis: axis(),
  boundary: loop(),
  lines: z.array(FaceLineSchema).max(50),
  keepOuts: z.array(KeepOutSchema).max(50),
  gridOriginMm: point(),
  gridCellMm: lengthMm({ min: 5, max: 1000 }),
  stackId: uuid().nullable(),
})
export type FaceAreaInput = z.output<typeof FaceAreaInput>

export const ThicknessInput = z.object({
  areaId: uuid(),
  measuredOn: isoDate(),
  readings: z
    .array(
      z.object({
        id: uuid(),
        uMm: lengthMm({ min: -1e5, max: 1e5 }),
        vMm: lengthMm({ min: -1e5, max: 1e5 }),
        thicknessMm: lengthMm({ min: 0.05, max: 100 }),
      }),
    )
    .min(1, { error: () => 'Give at least one reading' })
    .max(200),
})
export type ThicknessInput = z.output<typeof ThicknessInput>

/** A reading that was wrong: it stays readable and no longer counts. */
export const StrikeReading = z.object({ id: uuid(), because: text('why it is struck out', 300) })
export type StrikeReading = z.output<typeof StrikeReading>

export const pointKinds = ['dowel', 'bush', 'insert', 'scribe', 'trim'] as const

export const LocatingPointInput = z
  .object({
    tag: text('a tag, for example D01', 40),
    areaName: freeText(60),
    kind: choice(pointKinds),
    uMm: lengthMm({ min: -1e5, max: 1e5 }),
    vMm: lengthMm({ min: -1e5, max: 1e5 }),
    diameterMm: lengthMm({ min: 0.1, max: 500 }),
    bushDiameterMm: lengthMm({ min: 0.1, max: 500 }).nullable(),
    through: z.boolean(),
    isDatum: z.boolean(),
    toleranceMm: lengthMm({ min: 0.001, max: 100 }).nullable(),
    notYetFixed: z.boolean(),
  })
  .refine((row) => row.bushDiameterMm === null || row.bushDiameterMm >= row.diameterMm, {
    path: ['bushDiameterMm'],
    error: () => 'A bush is at least as wide as its hole',
  })
export type LocatingPointInput = z.output<typeof LocatingPointInput>

/** A new issue of a mould's locating points: the whole set, as rows. */
export const LocatingIssueInput = z
  .object({
    id: uuid(),
    mouldId: uuid(),
    name: text('a name for the issue'),
    issuedOn: isoDate(),
    note: freeText(),
    points: z
      .array(LocatingPointInput)
      .min(1, { error: () => 'Give at least one point' })
      .max(2000),
  })
  .superRefine((issue, context) => {
    const seen = new Map<string, number>()
    for (const [index, row] of issue.points.entries()) {
      const key = row.tag.trim().toLowerCase()
      const first = seen.get(key)
      if (first !== undefined) {
        context.addIssue({
          code: 'custom',
          path: ['points', index, 'tag'],
          message: `${row.tag} stands in row ${first + 1} as well; give each point one row`,
        })
      }
      seen.set(key, first ?? index)
    }
  })
export type LocatingIssueInput = z.output<typeof LocatingIssueInput>
