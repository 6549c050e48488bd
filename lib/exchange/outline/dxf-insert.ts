import type { Point } from '#lib/core/geometry/index'
import type { DxfBlock } from './dxf-blocks'
import { facing } from './dxf-extrusion'
import { fromBehind, type Placing, placedIn } from './dxf-placing'
import type { DxfEntity } from './dxf-sections'
import { nameOr, pointOf, realOr } from './dxf-values'
import { lineName, Refused, stop } from './finding'
import { composed, rotation, scaling, translation } from './matrix'

/** Most columns or rows that a DXF can hold: a whole number of 16 bits. */
const mostOfARow = 32_767

/** A block placed once, or in columns and rows. */
export interface DxfInsert {
  readonly block: string
  readonly line: number
  readonly columns: number
  readonly rows: number
  readonly at: Point
  readonly z: number
  readonly scale: readonly [number, number, number]
  readonly turnDeg: number
  /** From one column to the next and from one row to the next, along the turned axes; not scaled. */
  readonly spacing: readonly [number, number]
  readonly mirrored: boolean
}

/** Throws Refused where a number can't be used. */
export function insertOf(entity: DxfEntity): DxfInsert {
  const scale = [realOr(entity, 41, 1), realOr(entity, 42, 1), realOr(entity, 43, 1)] as const
  if (scale[0] === 0 || scale[1] === 0) throw withoutSize(entity, scale)
  return {
    block: nameOr(entity, 2, ''),
    line: entity.line,
    columns: countOf(entity, 70),
    rows: countOf(entity, 71),
    at: pointOf(entity, 10),
    z: realOr(entity, 30, 0),
    scale,
    turnDeg: realOr(entity, 50, 0),
    spacing: [realOr(entity, 44, 0), realOr(entity, 45, 0)],
    mirrored: facing(entity) === 'mirrored',
  }
}

/** Where the copies of a block lie, row by row. */
export function* copiesOf(insert: DxfInsert, { base, baseZ }: DxfBlock): Generator<Placing> {
  const { at, z, scale, turnDeg, spacing, mirrored } = insert
  const turned = composed(translation(at[0], at[1]), rotation(turnDeg))
  const sized = composed(scaling(scale[0], scale[1]), translation(-base[0], -base[1]))
  for (let row = 0; row < insert.rows; row++) {
    for (let column = 0; column < insert.columns; column++) {
      const stepped = composed(turned, translation(column * spacing[0], row * spacing[1]))
      const placing = { plane: composed(stepped, sized), zScale: scale[2], zShift: z - scale[2] * baseZ }
      yield mirrored ? placedIn(fromBehind, placing) : placing
    }
  }
}

/** 0, as some programs write for "no array", is one. */
function countOf(entity: DxfEntity, code: number): number {
  const count = realOr(entity, code, 1)
  if (Number.isInteger(count) && count >= 0 && count <= mostOfARow) return Math.max(1, count)
  throw new Refused(
    stop(
      'insert-array',
      `This INSERT has ${count} ${code === 70 ? 'columns' : 'rows'}; it must be a whole number up to ${mostOfARow}.`,
      lineName(entity.line),
      'Explode the array in the drawing program, and save the DXF again.',
      { line: entity.line },
    ),
  )
}

function withoutSize(entity: DxfEntity, [x, y]: readonly [number, number, number]): Refused {
  return new Refused(
    stop(
      'insert-scale',
      `This INSERT is scaled by ${x} along x and ${y} along y; neither can be 0.`,
      lineName(entity.line),
      'Insert the block anew in the drawing program, and save the DXF again.',
      { line: entity.line },
    ),
  )
}
