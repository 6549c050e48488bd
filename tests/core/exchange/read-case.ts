import { readdirSync, readFileSync } from 'node:fs'
import { join } from 'node:path'
import { type ChosenUnit, type OutlineReading, readLoops } from '#lib/exchange/outline/index'

const casesFolder = join(import.meta.dirname, '../../cases')

/** The right answers that lie beside the file of a case. */
export interface Expected {
  readonly action: string
  readonly loops?: number
  readonly area_mm2?: number
  readonly area_tolerance?: number
  readonly perimeter_mm?: number
  readonly bbox_mm?: readonly number[]
  readonly [more: string]: unknown
}

/** A case by its number ("T20"): its drawing read, and what is right. */
export function readCase(
  id: string,
  unit: ChosenUnit | null = null,
  file?: string,
): { readonly reading: OutlineReading; readonly expected: Expected; readonly bytes: Uint8Array } {
  const folder = readdirSync(casesFolder).find((name) => name.startsWith(`${id}a-`))
  if (folder === undefined) throw new RangeError(`no case ${id}`)
  const files = readdirSync(join(casesFolder, folder))
  const name = file ?? files.find((each) => /\.(dxf|svg)$/.test(each))!
  const bytes = readFileSync(join(casesFolder, folder, name))
  const expected = JSON.parse(readFileSync(join(casesFolder, folder, 'expected.json'), 'utf8')) as Expected
  return { reading: readLoops({ name, bytes, unit }), expected, bytes }
}
