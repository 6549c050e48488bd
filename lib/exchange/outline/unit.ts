import type { Finding } from '#lib/core/result'
import { toInside } from '#lib/core/units'
import { note } from './finding'
import type { ChosenUnit, FileUnit } from './types'

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
}

/** The decimetre is written in drawings only, so the table of units does without it. */
export function mmPerUnit(unit: FileUnit): number {
  return unit === 'dm' ? 100 : toInside(1, 'length', unit)
}

export function isFileUnit(symbol: string): symbol is FileUnit {
  return Object.hasOwn(unitNames, symbol)
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
