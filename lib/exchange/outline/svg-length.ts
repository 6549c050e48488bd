import { lineName, Refused, stop } from './finding'
import { property } from './svg-style'
import type { SvgElement } from './svg-xml'
import type { FileUnit } from './types'
import { mmPerUnit } from './unit'

/** `unit` as written: '' for a bare number, '%', 'mm' ... */
export interface SvgLength {
  readonly value: number
  readonly unit: string
}

const units: Readonly<Record<string, FileUnit>> = {
  px: 'px',
  pt: 'pt',
  pc: 'pc',
  mm: 'mm',
  cm: 'cm',
  in: 'in',
}

/** The unit of a length where it has a fixed size; a bare number counts as pixels. */
export function fixedUnit({ unit }: SvgLength): FileUnit | null {
  return unit === '' ? 'px' : (units[unit] ?? null)
}

/** A length of an element, by its style or its attribute; null where it has none. Throws Refused on other words. */
export function lengthOf(element: SvgElement, name: string): SvgLength | null {
  const text = property(element, name)?.trim()
  if (text === undefined || text === '' || text === 'auto') return null
  const found = /^([-+]?(?:\d+\.?\d*|\.\d+)(?:e[-+]?\d+)?)\s*(%|[a-z]*)$/i.exec(text)
  const value = found === null ? Number.NaN : Number(found[1])
  if (found === null || !Number.isFinite(value)) throw notALength(element, name, text)
  return { value, unit: found[2]!.toLowerCase() }
}

/** A length of a shape in the units that its numbers are in; `otherwise` where it has none. */
export function shapeLength(element: SvgElement, name: string, otherwise: number): number {
  const length = lengthOf(element, name)
  if (length === null) return otherwise
  const unit = fixedUnit(length)
  if (unit === null) throw relative(element, name, length)
  return length.unit === '' ? length.value : (length.value * mmPerUnit(unit)) / mmPerUnit('px')
}

function notALength(element: SvgElement, name: string, text: string): Refused {
  return new Refused(
    stop(
      'svg-number',
      `${name} of this ${element.name} is "${text.slice(0, 40)}", which is not a length that can be used.`,
      lineName(element.line),
      'Save the drawing again as plain SVG, with numbers.',
      { line: element.line },
    ),
  )
}

function relative(element: SvgElement, name: string, { value, unit }: SvgLength): Refused {
  return new Refused(
    stop(
      'svg-relative-length',
      `${name} of this ${element.name} is ${value}${unit}, which depends on something outside the outline.`,
      lineName(element.line),
      'Give it a fixed size in the drawing program (convert it to a path), and save the SVG again.',
      { line: element.line },
    ),
  )
}
