import { type CureCycle, curedPly, type PlyMaterial } from '#lib/core/laminate/index'
import type { Row } from '../types'
import { day, figure, moment, shopTable, text, yesNo } from './define'

export const materialsTable = shopTable('materials', {
  title: 'Materials',
  about: 'One row per prepreg: its weights, the ply it cures to, its cures, what it costs today.',
  columns: [
    text('code', 'Code'),
    text('name', 'Name'),
    text('role', 'Role'),
    figure('fibreArealWeightGsm', 'Fibre areal weight (g/m²)', 0),
    figure('fibreDensityGcm3', 'Fibre density (g/cm³)', 2),
    figure('fibreVolumeFraction', 'Fibre volume fraction', 3),
    figure('resinMassFraction', 'Resin mass fraction', 3),
    figure('resinDensityGcm3', 'Resin density (g/cm³)', 2),
    figure('plyThicknessMm', 'Cured ply (mm)', 3),
    figure('plyFibreVolume', 'Fibre volume of the cured ply', 3),
    figure('prepregGsm', 'Prepreg (g/m²)', 0),
    figure('rollWidthMm', 'Roll width (mm)', 0),
    figure('thickestCureMm', 'Thickest cure (mm)', 1),
    text('cure', 'First cure'),
    text('postCure', 'Post-cure'),
    figure('price', 'Price per m²', 2),
    text('currency', 'Currency'),
    day('priceFromOn', 'Price since'),
    figure('lowBelowM2', 'Low below (m²)', 1),
    figure('outLifeH', 'Out life (h)', 0),
    text('sourceNote', 'Figures from'),
    moment('retiredAt', 'No longer used since'),
    text('id', 'Id'),
  ],
})

/**
 * A material's row: its stored figures, with the ply that it cures to and its cycles in words. RangeError on figures
 * that no ply can have.
 */
export function materialRow(stored: Row, cure: CureCycle | null, postCure: CureCycle | null): Row {
  const cured = curedPly(plyMaterial(stored))
  return {
    ...stored,
    cure: cure && cycleWords(cure),
    postCure: postCure && cycleWords(postCure),
    plyThicknessMm: cured.thicknessMm,
    plyFibreVolume: cured.fibreVolumeFraction,
    prepregGsm: cured.prepregGsm,
  }
}

function plyMaterial(stored: Row): PlyMaterial {
  const figureOf = (key: string) => Number(stored[key] ?? 0)
  return {
    name: String(stored.name),
    role: stored.role === 'surface' ? 'surface' : 'bulk',
    fibreArealWeightGsm: figureOf('fibreArealWeightGsm'),
    fibreDensityGcm3: figureOf('fibreDensityGcm3'),
    fibreContent:
      typeof stored.fibreVolumeFraction === 'number'
        ? { kind: 'fibre-volume', fibreVolumeFraction: stored.fibreVolumeFraction }
        : {
            kind: 'resin-mass',
            resinMassFraction: figureOf('resinMassFraction'),
            resinDensityGcm3: figureOf('resinDensityGcm3'),
          },
    rollWidthMm: figureOf('rollWidthMm'),
    thickestCureMm: null,
  }
}

/** "first cure: 0.5 °C/min to 60 °C, 600 min; Tg after 75 °C" */
function cycleWords({ name, segments, tgAfterC }: CureCycle): string {
  const ramps = segments.map(
    ({ rampCPerMin, toC, holdMin }) => `${rampCPerMin} °C/min to ${toC} °C, ${holdMin} min`,
  )
  return `${name}: ${ramps.join('; ')}${tgAfterC === null ? '' : `; Tg after ${tgAfterC} °C`}`
}

export const stacksTable = shopTable('stacks', {
  title: 'Stacks',
  about: 'One row per ply of a stack; ply 1 is the surface ply.',
  columns: [
    text('stack', 'Stack'),
    text('stackName', 'Name'),
    figure('ply', 'Ply'),
    text('material', 'Material'),
    text('materialName', 'Material name'),
    figure('directionDeg', 'Direction (°)', 1),
    figure('plyThicknessMm', 'Cured ply (mm)', 3),
    text('note', 'Note on the stack'),
    text('stackId', 'Stack id'),
  ],
})

/** A ply of a stack with its cured thickness; `material` holds the figures that it follows from. */
export function stackPlyRow(ply: Row, material: Row): Row {
  return { ...ply, plyThicknessMm: curedPly(plyMaterial(material)).thicknessMm }
}

export const productsTable = shopTable('products', {
  title: 'Products',
  about: 'One row per product: how a sealer, release agent, cleaner or resin is used and how long it keeps.',
  columns: [
    text('name', 'Name'),
    text('use', 'Used as'),
    figure('coats', 'Coats as new'),
    figure('intervalMin', 'Between coats (min)', 0),
    figure('flashMin', 'Flash off (min)', 0),
    figure('cureMin', 'Cure (min)', 0),
    figure('cureC', 'Cure (°C)', 0),
    figure('potLifeMin', 'Pot life (min)', 0),
    figure('shelfLifeDays', 'Shelf life (days)'),
    figure('openLifeDays', 'Open life (days)'),
    text('storeAt', 'Stored at'),
    figure('heatLimitC', 'Hottest use (°C)', 0),
    text('unit', 'Unit'),
    figure('lowBelow', 'Low below (unit)', 2),
    figure('price', 'Price per unit', 2),
    text('currency', 'Currency'),
    day('priceFromOn', 'Price since'),
    text('cautions', 'Cautions'),
    text('note', 'Note'),
    text('sourceNote', 'Figures from'),
    moment('retiredAt', 'No longer used since'),
    text('id', 'Id'),
  ],
})

export const lotsTable = shopTable('stock-lots', {
  title: 'Stock lots',
  about:
    'One row per roll or tin: what was bought, what is left, when it expires, its hours out of the freezer.',
  columns: [
    text('of', 'Material or product'),
    text('lot', 'Lot'),
    text('container', 'Container'),
    figure('quantity', 'At the start', 2),
    figure('remaining', 'Left', 2),
    text('unit', 'Unit'),
    day('countedOn', 'Counted on'),
    figure('outHours', 'Out of the freezer (h)', 1),
    figure('outLifeH', 'Out life (h)', 0),
    day('receivedOn', 'Received'),
    day('expiresOn', 'Expires'),
    day('openedOn', 'Opened'),
    text('place', 'Place'),
    day('closedOn', 'Closed'),
    text('closedWhy', 'Closed because'),
    text('note', 'Note'),
    text('id', 'Id'),
  ],
})

export const lotMovesTable = shopTable('stock-moves', {
  title: 'Stock moves',
  about: 'One row per move of a lot, corrected ones included: used, counted, out of the freezer.',
  columns: [
    text('of', 'Material or product'),
    text('lot', 'Lot'),
    text('kind', 'Kind'),
    figure('amount', 'Amount', 3),
    text('unit', 'Unit'),
    day('doneOn', 'Done on'),
    text('mould', 'For mould'),
    text('byName', 'By'),
    moment('writtenAt', 'Written'),
    text('standing', 'Counts'),
    text('note', 'Note'),
    text('entryId', 'Log entry id'),
    text('planId', 'Plan id'),
    text('correctsId', 'Puts right'),
    text('id', 'Id'),
  ],
})

export const pricesTable = shopTable('prices', {
  title: 'Prices',
  about: 'One row per price of a material or product, each from a day on.',
  columns: [
    text('of', 'Material or product'),
    figure('price', 'Price', 2),
    text('currency', 'Currency'),
    text('unit', 'for one'),
    day('fromOn', 'From'),
    yesNo('putRight', 'Put right since'),
    text('sourceNote', 'From whom'),
    text('byName', 'By'),
    moment('writtenAt', 'Written'),
    text('id', 'Id'),
  ],
})

export const ratesTable = shopTable('rates', {
  title: 'Rates',
  about: 'One row per rate: what an operation takes and costs from a day on.',
  columns: [
    text('operation', 'Operation'),
    text('basis', 'for one'),
    figure('hours', 'Hours', 3),
    figure('price', 'Money', 2),
    text('currency', 'Currency'),
    day('fromOn', 'From'),
    yesNo('putRight', 'Put right since'),
    text('sourceNote', 'From whom'),
    text('byName', 'By'),
    moment('writtenAt', 'Written'),
    text('id', 'Id'),
  ],
})

/** `priceMinor` turned into `price` in whole units of its currency, and taken out of the row. */
export function pricedRow({ priceMinor, ...row }: Row): Row {
  if (typeof priceMinor !== 'number' || typeof row.currency !== 'string') return { ...row, price: null }
  const { maximumFractionDigits = 2 } = new Intl.NumberFormat('en', {
    style: 'currency',
    currency: row.currency,
  }).resolvedOptions()
  return { ...row, price: priceMinor / 10 ** maximumFractionDigits }
}
