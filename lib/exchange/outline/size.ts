import type { Bounds } from '#lib/core/geometry/index'
import type { Finding } from '#lib/core/result'
import { figure } from '#lib/core/units'
import { look } from './finding'
import { largestMm, smallestMm } from './limits'
import type { ChosenUnit, FileUnit } from './types'
import { mmPerUnit, unitNames } from './unit'

const choices = ['mm', 'cm', 'in', 'm'] as const satisfies readonly ChosenUnit[]

const figureNames = {
  mm: 'sizeMmIfMm',
  cm: 'sizeMmIfCm',
  in: 'sizeMmIfIn',
  m: 'sizeMmIfM',
} as const satisfies Record<ChosenUnit, string>

/** "254 x 102 mm" */
export function sizeWords([uMin, vMin, uMax, vMax]: Bounds, factor = 1): string {
  return `${lengthWords((uMax - uMin) * factor)} x ${lengthWords((vMax - vMin) * factor)} mm`
}

/** "30 x 30 mm at u 55 to 85, v 35 to 65 mm" */
export function boundsWords(boundsMm: Bounds): string {
  const [uMin, vMin, uMax, vMax] = boundsMm.map(lengthWords)
  return `${sizeWords(boundsMm)} at u ${uMin} to ${uMax}, v ${vMin} to ${vMax} mm`
}

/** As many digits as tell one size from another at a glance. */
export function lengthWords(mm: number): string {
  const size = Math.abs(mm)
  return figure(mm, size >= 100 ? 0 : size >= 1 ? 1 : 3)
}

/** Asks for the unit with the size that each would give. `boundsMm` are as if the file were in mm. */
export function unitUnknown(boundsMm: Bounds): Finding {
  const sizes = choices.map((unit) => `${sizeWords(boundsMm, mmPerUnit(unit))} if ${unitNames[unit]}`)
  return look(
    'unit-unknown',
    `Nothing tells the unit. The outline is ${sizes.join(', ')}.`,
    null,
    'Choose the unit, or write it into the file: $INSUNITS in a DXF, width and height such as "300mm" in an SVG, the header of a table such as "u [mm],v [mm]".',
    Object.fromEntries(choices.map((unit) => [figureNames[unit], sizeOf(boundsMm, mmPerUnit(unit))])),
  )
}

/** Asks about an outline of an unlikely size; null when its size is as openings and moulds go. */
export function sizeUnlikely(boundsMm: Bounds, unit: FileUnit): Finding | null {
  const longer = Math.max(...sizeOf(boundsMm))
  if (longer >= smallestMm && longer <= largestMm) return null
  const others = choices.filter((choice) => choice !== unit)
  const sizes = others.map((choice) => {
    return `${sizeWords(boundsMm, mmPerUnit(choice) / mmPerUnit(unit))} if ${unitNames[choice]}`
  })
  return look(
    'size-unlikely',
    `In ${unitNames[unit]} the outline is ${sizeWords(boundsMm)}, which is very ${longer < smallestMm ? 'small' : 'large'}. It would be ${sizes.join(', ')}.`,
    null,
    'Choose the right unit, or confirm the size.',
    {
      sizeMm: sizeOf(boundsMm),
      ...Object.fromEntries(
        others.map((choice) => [figureNames[choice], sizeOf(boundsMm, mmPerUnit(choice) / mmPerUnit(unit))]),
      ),
    },
  )
}

function sizeOf([uMin, vMin, uMax, vMax]: Bounds, factor = 1): readonly [number, number] {
  return [(uMax - uMin) * factor, (vMax - vMin) * factor]
}
