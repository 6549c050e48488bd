import type { Point } from '#lib/core/geometry/index'
import { type Finding, worst } from '#lib/core/result'
import { type Corner, withoutRepeatedCorners } from './corners'
import { lineName, note, Refused, someOf, stop } from './finding'
import { farthestMm, mostPoints } from './limits'
import type { ChosenUnit, Drawing, DrawnLoop, FileUnit } from './types'
import { coordinateUnits, heldUnit, isFileUnit, mmPerUnit } from './unit'

const cure = 'Give {"unit": "mm", "outer": [[u, v], ...], "holes": []} with numbers.'

const knownKeys = ['unit', 'outer', 'holes']

/** {"unit": "mm", "outer": [[u, v], ...], "holes": [[[u, v], ...], ...]}; unit and holes may be left out. */
export function readJsonOutline(text: string, chosen: ChosenUnit | null): Drawing {
  const value = parsed(text)
  if (typeof value !== 'object' || value === null || Array.isArray(value)) {
    throw refused('The JSON is not an outline.', null)
  }
  const { unit, outer, holes = [] } = value as Readonly<Record<string, unknown>>
  const held = heldUnit(statedUnit(unit), chosen, 'unit')
  const factor = held.unit === null ? 1 : mmPerUnit(held.unit)
  if (!Array.isArray(holes)) throw refused('"holes" is not a list.', 'holes')
  const read = [
    loopOf(outer, 'outer', 'outer', factor),
    ...holes.map((hole: unknown, index) => loopOf(hole, `holes[${index}]`, 'hole', factor)),
  ]
  const findings = [
    ...held.findings,
    ...unknownKeys(Object.keys(value)),
    ...read.flatMap((each) => each.findings),
  ]
  return {
    unit: held.unit,
    loops: worst(findings) === 'stop' ? [] : read.map(({ loop }) => loop),
    dropped: 0,
    findings,
  }
}

function parsed(text: string): unknown {
  try {
    return JSON.parse(text)
  } catch (fault) {
    const at = /position (\d+)/.exec(String(fault))?.[1]
    const line = at === undefined ? null : text.slice(0, Number(at)).split('\n').length
    throw refused('This begins as JSON does, but it is not valid.', line === null ? null : lineName(line))
  }
}

function statedUnit(unit: unknown): FileUnit | null {
  if (unit === undefined || unit === null) return null
  if (typeof unit === 'string' && isFileUnit(unit)) return unit
  throw new Refused(
    stop(
      'unit-not-read',
      `"${String(unit).slice(0, 20)}" is not a unit that is read here.`,
      'unit',
      `Give one of: ${coordinateUnits.join(', ')}.`,
    ),
  )
}

function unknownKeys(keys: readonly string[]): readonly Finding[] {
  const unknown = keys.filter((key) => !knownKeys.includes(key))
  if (unknown.length === 0) return []
  return [note('keys-left-out', `Not read: ${unknown.slice(0, 10).join(', ').slice(0, 200)}.`, null)]
}

function loopOf(
  value: unknown,
  place: string,
  role: 'outer' | 'hole',
  factor: number,
): { readonly loop: DrawnLoop; readonly findings: readonly Finding[] } {
  if (!Array.isArray(value)) throw refused(`"${place}" is not a list of points.`, place)
  if (value.length > mostPoints) {
    throw refused(`"${place}" has ${value.length} points; at most ${mostPoints} can be used.`, place)
  }
  const corners: Corner[] = []
  const faults: Finding[] = []
  for (const [index, each] of (value as readonly unknown[]).entries()) {
    const point = pointOf(each, factor)
    if (point === null) faults.push(notAPoint(`${place}[${index}]`))
    else corners.push({ point, place: `${place}[${index}]` })
  }
  const { points, findings } = withoutRepeatedCorners(corners)
  return { loop: { points, layers: [], asGiven: true, role }, findings: [...someOf(faults), ...findings] }
}

function notAPoint(place: string): Finding {
  return stop(
    'point-not-read',
    `This is not a pair of numbers within ${farthestMm / 1000} m of the origin.`,
    place,
    cure,
  )
}

function pointOf(value: unknown, factor: number): Point | null {
  if (!Array.isArray(value) || value.length !== 2) return null
  const [u, v]: unknown[] = value
  if (typeof u !== 'number' || typeof v !== 'number') return null
  const point: Point = [u * factor + 0, v * factor + 0]
  return Math.abs(point[0]) <= farthestMm && Math.abs(point[1]) <= farthestMm ? point : null
}

function refused(text: string, place: string | null): Refused {
  return new Refused(stop('json-not-read', text, place, cure))
}
