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

/** The unit that holds, and a notice where a choice overrides what the file says. */
export function heldUnit(
  stated: FileUnit | null,
  chosen: ChosenUnit | null,
  where: string,
): { readonly unit: FileUnit | null; readonly findings: readonly Finding[] } {
  if (chosen === null || stated === null || chosen === stated) {
    return { unit: chosen ?? stated, findings: [] }
  }
  return { unit: chosen, findings: [overridden(unitNames[stated], chosen, where)] }
}

export function overridden(stated: string, chosen: ChosenUnit, where: string): Finding {
  return note(
    'unit-overridden',
    `The file gives its unit as ${stated}; it is read in ${unitNames[chosen]}, as chosen.`,
    where,
  )
}
