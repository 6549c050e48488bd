import type { Finding } from '#lib/core/result'
import type { DxfContents } from './dxf-sections'
import { lineName, stop } from './finding'
import type { ChosenUnit, FileUnit } from './types'
import { heldUnit, overridden } from './unit'

/** $INSUNITS by its code, as the DXF reference lists them. */
const units: Readonly<Record<string, FileUnit>> = {
  '1': 'in',
  '2': 'ft',
  '4': 'mm',
  '5': 'cm',
  '6': 'm',
  '13': 'um',
  '14': 'dm',
}

/** Codes that no outline of a mould is drawn in. */
const unusual: Readonly<Record<string, string>> = {
  '3': 'miles',
  '7': 'kilometres',
  '8': 'microinches',
  '9': 'mils',
  '10': 'yards',
  '11': 'angstroms',
  '12': 'nanometres',
  '15': 'decametres',
  '16': 'hectometres',
  '17': 'gigametres',
  '18': 'astronomical units',
  '19': 'light years',
  '20': 'parsecs',
  '21': 'US survey feet',
  '22': 'US survey inches',
  '23': 'US survey yards',
  '24': 'US survey miles',
}

export function dxfUnit(
  header: DxfContents['header'],
  chosen: ChosenUnit | null,
): { readonly unit: FileUnit | null; readonly findings: readonly Finding[] } {
  const tag = header.get('$INSUNITS')
  if (tag === undefined || tag.value === '0') return { unit: chosen, findings: [] }
  const where = lineName(tag.line)
  const stated = units[tag.value]
  if (stated !== undefined) return heldUnit(stated, chosen, where)
  const says = unusual[tag.value] ?? `"${tag.value.slice(0, 20)}", which is no code of a unit`
  if (chosen !== null) return { unit: chosen, findings: [overridden(says, chosen, where)] }
  return {
    unit: null,
    findings: [
      stop(
        'unit-not-read',
        `The drawing's unit ($INSUNITS) is ${says}; outlines are not read in it.`,
        where,
        'Choose the unit in which the numbers are meant, or set the drawing to millimetres and save it again.',
      ),
    ],
  }
}
