import * as z from 'zod'
import { stockUnits } from '#lib/core/stores/amount'
import { productUses } from '#lib/core/stores/words'
import { choice, count, durationMin, freeText, stockAmount, temperatureC, text, uuid } from './fields'

/** The card of an agent, a resin, a consumable: how it is used and how long it keeps. Blank: the sheet doesn't say. */
export const ProductInput = z.object({
  id: uuid(),
  name: text('the name, as it stands on the tin', 80),
  use: choice(productUses),
  unit: choice(stockUnits),
  coats: count({ min: 0, max: 30 }).nullable(),
  intervalMin: durationMin({ min: 0, max: 20_000 }).nullable(),
  flashMin: durationMin({ min: 0, max: 20_000 }).nullable(),
  cureMin: durationMin({ min: 0, max: 50_000 }).nullable(),
  cureC: temperatureC({ min: 0, max: 400 }).nullable(),
  potLifeMin: durationMin({ min: 1, max: 20_000 }).nullable(),
  shelfLifeDays: count({ min: 1, max: 20_000 }).nullable(),
  openLifeDays: count({ min: 1, max: 20_000 }).nullable(),
  storeAt: freeText(200),
  heatLimitC: temperatureC({ min: 0, max: 600 }).nullable(),
  lowBelow: stockAmount('unit').nullable(),
  cautions: freeText(1000),
  note: freeText(2000),
  sourceNote: freeText(500),
  /** No longer bought: not offered for new lots. */
  retired: z.boolean().prefault(false),
})
export type ProductInput = z.output<typeof ProductInput>
