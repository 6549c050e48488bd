import type { ChosenUnit, OutlineReading } from '#lib/exchange/outline/index'
import { readOutline } from '#lib/exchange/outline/index'

export type Pair = readonly [code: number, value: string | number]
export type XY = readonly [number, number]

/** Tables and blocks of a DXF, each as its records. */
export interface Beside {
  readonly tables?: readonly (readonly Pair[])[]
  readonly blocks?: readonly (readonly Pair[])[]
}

/** Text of a small DXF in mm (or the unit of that code; null: none stated) with the entities given. */
export function dxf(
  entities: readonly (readonly Pair[])[],
  unitCode: number | string | null = 4,
  { tables = [], blocks = [] }: Beside = {},
): string {
  const header: readonly Pair[] =
    unitCode === null
      ? []
      : [
          [0, 'SECTION'],
          [2, 'HEADER'],
          [9, '$INSUNITS'],
          [70, unitCode],
          [0, 'ENDSEC'],
        ]
  const section = (name: string, records: readonly (readonly Pair[])[]): readonly Pair[] =>
    records.length === 0 ? [] : [[0, 'SECTION'], [2, name], ...records.flat(), [0, 'ENDSEC']]
  const pairs: readonly Pair[] = [
    ...header,
    ...section('TABLES', tables),
    ...section('BLOCKS', blocks),
    [0, 'SECTION'],
    [2, 'ENTITIES'],
    ...entities.flat(),
    [0, 'ENDSEC'],
    [0, 'EOF'],
  ]
  return pairs.map(([code, value]) => `${code}\n${value}\n`).join('')
}

export function line([x1, y1]: XY, [x2, y2]: XY, layer = 'CUT'): readonly Pair[] {
  return [
    [0, 'LINE'],
    [8, layer],
    [10, x1],
    [20, y1],
    [30, 0],
    [11, x2],
    [21, y2],
    [31, 0],
  ]
}

export function arc(
  [x, y]: XY,
  radius: number,
  startDeg: number,
  endDeg: number,
  layer = 'CUT',
): readonly Pair[] {
  return [
    [0, 'ARC'],
    [8, layer],
    [10, x],
    [20, y],
    [40, radius],
    [50, startDeg],
    [51, endDeg],
  ]
}

export function circle([x, y]: XY, radius: number, layer = 'CUT'): readonly Pair[] {
  return [
    [0, 'CIRCLE'],
    [8, layer],
    [10, x],
    [20, y],
    [40, radius],
  ]
}

export function polyline(
  points: readonly (readonly [number, number, number?])[],
  closed = true,
  more: readonly Pair[] = [],
): readonly Pair[] {
  return [
    [0, 'LWPOLYLINE'],
    [8, 'CUT'],
    [90, points.length],
    [70, closed ? 1 : 0],
    ...points.flatMap(([x, y, bulge]): Pair[] => [
      [10, x],
      [20, y],
      ...(bulge === undefined ? [] : [[42, bulge] as const]),
    ]),
    ...more,
  ]
}

export function entity(type: string, more: readonly Pair[] = []): readonly Pair[] {
  return [[0, type], [8, 'CUT'], [10, 1], [20, 1], ...more]
}

export function square(side: number, [x, y]: XY = [0, 0]): readonly XY[] {
  return [
    [x, y],
    [x + side, y],
    [x + side, y + side],
    [x, y + side],
  ]
}

export function read(text: string, unit: ChosenUnit | null = null, name = 'opening.dxf'): OutlineReading {
  return readOutline({ name, text, unit })
}

export function codes({ findings }: OutlineReading): readonly string[] {
  return findings.map(({ code }) => code)
}
