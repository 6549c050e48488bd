import type { ProductInput } from '#lib/schema/product'
import { idOf } from '../base/ids'

const from = 'Invented product; figures are usual ones of the trade, from memory. Not a data sheet.'

type Card = Pick<ProductInput, 'name' | 'use' | 'unit'> & Partial<ProductInput>

function card(changes: Card): ProductInput {
  return {
    id: idOf(`product/${changes.name}`),
    coats: null,
    intervalMin: null,
    flashMin: null,
    cureMin: null,
    cureC: null,
    potLifeMin: null,
    shelfLifeDays: null,
    openLifeDays: null,
    storeAt: '',
    heatLimitC: null,
    lowBelow: null,
    cautions: '',
    note: '',
    sourceNote: from,
    retired: false,
    ...changes,
  }
}

const solvent = 'Solvent: extraction, gloves, no flame.'
const cupboard = 'solvent cupboard, 5 to 25 °C'

/** The agents of the diaries by the same names, and what else stands on the shelf. */
export const products: readonly ProductInput[] = [
  card({
    name: 'Strip paste P',
    use: 'stripper',
    unit: 'kg',
    shelfLifeDays: 730,
    openLifeDays: 365,
    lowBelow: 0.5,
    cautions: 'Gloves and goggles. Never near open prepreg or a scarf.',
  }),
  card({
    name: 'Mould cleaner C',
    use: 'cleaner',
    unit: 'l',
    flashMin: 10,
    shelfLifeDays: 1095,
    openLifeDays: 365,
    storeAt: cupboard,
    lowBelow: 2,
    cautions: solvent,
  }),
  card({
    name: 'Base sealer S',
    use: 'sealer',
    unit: 'l',
    coats: 2,
    intervalMin: 30,
    flashMin: 5,
    cureMin: 60,
    cureC: 20,
    shelfLifeDays: 730,
    openLifeDays: 270,
    storeAt: cupboard,
    heatLimitC: 220,
    lowBelow: 0.5,
    cautions: `${solvent} Takes up moisture: close the tin at once.`,
  }),
  card({
    name: 'Semi-permanent agent A',
    use: 'release',
    unit: 'l',
    coats: 5,
    intervalMin: 15,
    flashMin: 5,
    cureMin: 60,
    cureC: 20,
    shelfLifeDays: 730,
    openLifeDays: 180,
    storeAt: cupboard,
    heatLimitC: 230,
    lowBelow: 1.5,
    cautions: `${solvent} Takes up moisture: close the tin at once.`,
    note: 'Thin coats, a new white cloth for each.',
  }),
  card({
    name: 'Tooling resin T',
    use: 'resin',
    unit: 'kg',
    potLifeMin: 40,
    cureMin: 1440,
    cureC: 25,
    shelfLifeDays: 365,
    storeAt: 'resin shelf, 15 to 25 °C',
    heatLimitC: 140,
    lowBelow: 2,
    cautions: 'Sensitises the skin: nitrile gloves, sleeves down. Large mixes run hot.',
  }),
  card({
    name: 'Surface filler F',
    use: 'filler',
    unit: 'kg',
    potLifeMin: 15,
    cureMin: 240,
    cureC: 25,
    openLifeDays: 365,
    heatLimitC: 130,
    cautions: 'Sensitises the skin. Its dust is fine: extraction and respirator.',
  }),
  card({
    name: 'Bush adhesive B',
    use: 'adhesive',
    unit: 'kg',
    potLifeMin: 30,
    cureMin: 960,
    cureC: 25,
    shelfLifeDays: 540,
    heatLimitC: 150,
    cautions: 'Sensitises the skin: nitrile gloves.',
  }),
  card({ name: 'Bagging film G', use: 'consumable', unit: 'm2', lowBelow: 40 }),
  card({ name: 'Breather cloth W', use: 'consumable', unit: 'm2', lowBelow: 20 }),
]
