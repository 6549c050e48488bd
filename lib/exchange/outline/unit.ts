import type { Finding } from '#lib/core/result'
import { toInside } from '#lib/core/units'
import { note } from './finding'
import type { ChosenUnit, FileUnit, PageUnit } from './types'

export const unitNames: Readonly<Record<FileUnit, string>> = {
  mm: 'millimetres',
  cm: 'centimetres',
  dm: 'decimetres',
  m: 'metres',
  um: 'micrometres',
  in: 'inches',
  ft: 'feet',
  mil: 'mils',
  thou: 'thousandths of an inch',
  px: 'pixels of 1/96 inch',
  pt: 'points of 1/72 inch',
  pc: 'picas of 1/6 inch',
}

/** Fixed parts of an inch (CSS Values and Units 3, section 6.2), mm. */
const pageUnits: Readonly<Record<PageUnit, number>> = { px: 25.4 / 96, pt: 25.4 / 72, pc: 25.4 / 6 }

/** The decimetre is written in drawings only and pixels on pages, so the table of units does without them. */
export function mmPerUnit(unit: FileUnit): number {
  if (isPageUnit(unit)) return pageUnits[unit]
  return unit === 'dm' ? 100 : toInside(1, 'length', unit)
}

function isPageUnit(symbol: string): symbol is PageUnit {
  return Object.hasOwn(pageUnits, symbol)
}

/** Units that a table of coordinates or an outline in JSON may state. */
export const coordinateUnits = Object.keys(unitNames).filter((symbol) => !isPageUnit(symbol))

export function isFileUnit(symbol: string): symbol is FileUnit {
  return coordinateUnits.includes(symbol)
}

/**
 * The unit that holds. What the file says goes before a choice, which is for files that don't say: a choice left
 * standing from the file before must not make an inch drawing 25 times too small.
 */
export function heldUnit(
  stated: FileUnit | null,
  chosen: ChosenUnit | null,
  where: string,
): { readonly unit: FileUnit | null; readonly findings: readonly Finding[] } {
  if (chosen === null || stated === null || chosen === stated) {
    return { unit: stated ?? chosen, findings: [] }
  }
  const text =
    `The file gives its unit as ${unitNames[stated]} and is read so; the choice of ${unitNames[chosen]} is for ` +
    'files that do not say. If the file is wrong, paste its coordinates and choose their unit.'
  return { unit: stated, findings: [note('unit-of-file', text, where)] }
}

export function overridden(stated: string, chosen: ChosenUnit, where: string): Finding {
  return note(
    'unit-overridden',
    `The file gives its unit as ${stated}; it is read in ${unitNames[chosen]}, as chosen.`,
    where,
  )
}
