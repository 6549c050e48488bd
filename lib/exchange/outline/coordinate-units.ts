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

/** Each column in its own unit; one that states none goes by the other. A choice is for tables that state none. */
export function columnUnits(header: Header | null, chosen: ChosenUnit | null, line: number): ColumnUnits {
  const [u, v] = [header?.u.unit ?? null, header?.v.unit ?? null]
  const held = heldUnit(u ?? v, chosen, lineName(line))
  if (held.unit === null) return { unit: null, mm: [1, 1], findings: [] }
  const byColumn = u === v ? [] : [unitByColumn(header!, line)]
  return {
    unit: held.unit,
    mm: [mmPerUnit(u ?? held.unit), mmPerUnit(v ?? held.unit)],
    findings: [...held.findings, ...byColumn],
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
