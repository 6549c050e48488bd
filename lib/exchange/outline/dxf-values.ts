import type { Point } from '#lib/core/geometry/index'
import type { DxfEntity } from './dxf-sections'
import type { Tag } from './dxf-tags'
import { lineName, Refused, stop } from './finding'
import { farthestMm } from './limits'

/** Layer that an entity lies on; drawings call the default one 0. */
export function layerOf(entity: DxfEntity): string {
  return nameOr(entity, 8, '0')
}

/** A name as it is shown. Letters may be written as \U+00E9. */
export function nameOr({ tags }: DxfEntity, code: number, otherwise: string): string {
  const name = tags.find((each) => each.code === code)?.value ?? otherwise
  return name.replace(/\\U\+([0-9a-f]{4})/gi, (_, digits: string) =>
    String.fromCharCode(Number.parseInt(digits, 16)),
  )
}

/** Number of a group, or `otherwise` where the entity does not have it. Throws Refused when it is no number. */
export function realOr(entity: DxfEntity, code: number, otherwise: number): number {
  const tag = entity.tags.find((each) => each.code === code)
  return tag === undefined ? otherwise : realOf(tag, entity.type)
}

/** Number of a group. Throws Refused when the entity does not have it. */
export function real(entity: DxfEntity, code: number): number {
  const tag = entity.tags.find((each) => each.code === code)
  if (tag !== undefined) return realOf(tag, entity.type)
  throw new Refused(
    stop(
      'dxf-value-missing',
      `${entity.type} has no value for group ${code}.`,
      lineName(entity.line),
      'The file is damaged: save it again as DXF in text form.',
      { line: entity.line, code },
    ),
  )
}

/** A place in the plane: x under the code, y ten further. */
export function pointOf(entity: DxfEntity, code: number): Point {
  return [real(entity, code), real(entity, code + 10)]
}

/** An entity cut into parts, each of which begins with a group of that code: the vertices of one polyline. */
export function partsFrom(entity: DxfEntity, code: number): readonly DxfEntity[] {
  const starts = entity.tags.flatMap((tag, index) => (tag.code === code ? [index] : []))
  return starts.map((start, index) => {
    const tags = entity.tags.slice(start, starts[index + 1])
    return { type: entity.type, line: tags[0]!.line, tags }
  })
}

/** All numbers of groups of that code, in their order. */
export function reals({ type, tags }: DxfEntity, code: number): readonly number[] {
  return tags.flatMap((tag) => (tag.code === code ? [realOf(tag, type)] : []))
}

/** Flags of group 70, 0 when there are none. */
export function flagsOf(entity: DxfEntity): number {
  const value = realOr(entity, 70, 0)
  return Number.isInteger(value) && value >= 0 && value <= 0xffff ? value : 0
}

/** A finite number in the plain notation of a DXF; never a NaN or an infinity. */
export function realOf({ value, line }: Tag, entity: string): number {
  const plain = /^[-+]?(\d+\.?\d*|\.\d+)([eEdD][-+]?\d+)?$/.test(value)
  const number = plain ? Number(value.replace(/[dD]/, 'e')) : Number.NaN
  if (Number.isFinite(number)) return number === 0 ? 0 : number
  throw new Refused(
    stop(
      'dxf-number',
      `"${value.slice(0, 40)}" in a ${entity} is not a number that can be used.`,
      lineName(line),
      'Save the drawing again as DXF in text form, with decimal points.',
      { line },
    ),
  )
}

/** A coordinate or half axis in mm, as it is. Throws Refused when it lies beyond what a face can have. */
export function withinReach(mm: number, { entity, line }: { entity: string; line: number }): number {
  if (Math.abs(mm) <= farthestMm) return mm
  throw new Refused(
    stop(
      'too-far',
      `A ${entity} reaches to ${mm.toPrecision(4)} mm; at most ${farthestMm / 1000} m from the origin can be used.`,
      lineName(line),
      'Check the unit, or move the outline near the origin of the drawing.',
      { line, mm },
    ),
  )
}
