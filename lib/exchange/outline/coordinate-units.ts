import type { Finding } from '#lib/core/result'
import type { Header } from './coordinate-header'
import { lineName, note } from './finding'
import type { ChosenUnit, FileUnit } from './types'
import { heldUnit, mmPerUnit, unitNames } from './unit'

export interface ColumnUnits {
  /** Of the first column that states one. */
  readonly unit: FileUnit | null
  /** mm for one unit of u and of v; 1 while nothing tells the unit. */
  readonly mm: readonly [number, number]
  readonly findings: readonly Finding[]
}

/** Each column in its own unit; one that states none goes by the other. A choice holds for both. */
export function columnUnits(header: Header | null, chosen: ChosenUnit | null, line: number): ColumnUnits {
  const [u, v] = [header?.u.unit ?? null, header?.v.unit ?? null]
  if (chosen !== null) {
    const other = [u, v].find((unit) => unit !== null && unit !== chosen) ?? null
    const { findings } = heldUnit(other, chosen, lineName(line))
    return { unit: chosen, mm: [mmPerUnit(chosen), mmPerUnit(chosen)], findings }
  }
  const stated = u ?? v
  if (stated === null) return { unit: null, mm: [1, 1], findings: [] }
  return {
    unit: stated,
    mm: [mmPerUnit(u ?? stated), mmPerUnit(v ?? stated)],
    findings: u === v ? [] : [unitByColumn(header!, line)],
  }
}

function unitByColumn({ u, v }: Header, line: number): Finding {
  const one = u.unit === null ? v : u
  const says =
    u.unit === null || v.unit === null
      ? `Only column ${one.name} states a unit, ${unitNames[one.unit!]}; it is taken for both.`
      : `Column ${u.name} is read in ${unitNames[u.unit]}, column ${v.name} in ${unitNames[v.unit]}.`
  return note('unit-by-column', says, lineName(line))
}
