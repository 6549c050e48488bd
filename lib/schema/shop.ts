import * as z from 'zod'
import { defaultUpkeepRules, type UpkeepRules } from '#lib/core/log/index'
import { defaultRepairRules, type RepairRules } from '#lib/core/repair/types'
import { choice, count, durationMin, freeText, lengthMm, plainNumber, quantity, text } from './fields'

export const roles = ['lead', 'laminator', 'viewer'] as const
export type Role = (typeof roles)[number]

export const RepairRulesSchema = z.object({
  edgeMarginMm: lengthMm({ min: 0, max: 1000 }),
  patchSpacingMm: lengthMm({ min: 0, max: 1000 }),
  footprintToDowelRimMm: lengthMm({ min: 0, max: 1000 }),
  insideRadiusMm: lengthMm({ min: 0, max: 500 }),
  coverLapMm: lengthMm({ min: 0, max: 500 }),
  leastSurfaceStepMm: lengthMm({ min: 0, max: 500 }),
  thicknessTolerance: quantity('fraction', { min: 0, max: 1 }),
  plyAlignmentDeg: quantity('angle', { min: 0, max: 45 }),
  pliesPerDebulk: count({ min: 1, max: 50 }),
  heatMarginC: plainNumber({ min: 0, max: 100 }),
  cuttingAllowanceMm: lengthMm({ min: 0, max: 200 }),
}) satisfies z.ZodType<RepairRules>

export const UpkeepRulesSchema = z.object({
  coatsAfterStrip: count({ min: 0, max: 20 }),
  sealNeeded: z.boolean(),
  firstPulls: count({ min: 0, max: 20 }),
  pullsPerTouchUp: count({ min: 1, max: 1000 }),
  pullsPerStrip: count({ min: 1, max: 10_000 }),
  coatDryMin: durationMin({ min: 0, max: 2880 }),
  leakLimitMbar: quantity('pressure', { min: 0, max: 1000 }),
  leakLimitMin: durationMin({ min: 1, max: 1440 }),
  leakEveryDays: count({ min: 1, max: 3650 }),
}) satisfies z.ZodType<UpkeepRules>

export const ShopRules = z.object({ repair: RepairRulesSchema, upkeep: UpkeepRulesSchema })
export type ShopRules = z.output<typeof ShopRules>
export const defaultShopRules: ShopRules = { repair: defaultRepairRules, upkeep: defaultUpkeepRules }

export const timeZone = () =>
  text('a time zone').refine(
    (name) => {
      try {
        new Intl.DateTimeFormat('en', { timeZone: name })
        return true
      } catch {
        return false
      }
    },
    { error: () => 'Not a time zone; give one such as Europe/Berlin' },
  )

export const currency = () =>
  text('a currency', 3).regex(/^[A-Z]{3}$/, { error: () => 'Three capital letters, as EUR' })

export const ShopSettings = z.object({
  name: text('the name of the shop'),
  timeZone: timeZone(),
  currency: currency(),
  address: freeText(500),
  rules: ShopRules,
})
export type ShopSettings = z.output<typeof ShopSettings>

export const RoleSchema = choice(roles)
