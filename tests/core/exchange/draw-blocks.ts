import type { Pair, XY } from './draw-dxf'

interface InsertOptions {
  readonly scale?: XY
  readonly turnDeg?: number
  readonly columns?: number
  readonly rows?: number
  readonly spacing?: XY
  readonly mirrored?: boolean
  readonly layer?: string
}

export function insert(
  name: string,
  [x, y]: XY,
  { scale = [1, 1], turnDeg = 0, columns, rows, spacing = [0, 0], mirrored, layer = '0' }: InsertOptions = {},
): readonly Pair[] {
  return [
    [0, 'INSERT'],
    [8, layer],
    [2, name],
    [10, x],
    [20, y],
    [30, 0],
    [41, scale[0]],
    [42, scale[1]],
    [43, 1],
    [50, turnDeg],
    ...(columns === undefined ? [] : [[70, columns] as const, [44, spacing[0]] as const]),
    ...(rows === undefined ? [] : [[71, rows] as const, [45, spacing[1]] as const]),
    ...(mirrored === true ? [[210, 0] as const, [220, 0] as const, [230, -1] as const] : []),
  ]
}

/** The records of one block. */
export function block(
  name: string,
  entities: readonly (readonly Pair[])[],
  [x, y]: XY = [0, 0],
  flags = 0,
): readonly (readonly Pair[])[] {
  const begin: readonly Pair[] = [
    [0, 'BLOCK'],
    [8, '0'],
    [2, name],
    [70, flags],
    [10, x],
    [20, y],
    [30, 0],
  ]
  return [begin, ...entities, [[0, 'ENDBLK']]]
}

/** A table of layers; flags 1 is frozen, a negative colour is off. */
export function layerTable(
  layers: Readonly<Record<string, { readonly flags: number; readonly colour: number }>>,
): readonly (readonly Pair[])[] {
  const records = Object.entries(layers).map(([name, { flags, colour }]): readonly Pair[] => [
    [0, 'LAYER'],
    [2, name],
    [70, flags],
    [62, colour],
  ])
  const begin: readonly Pair[] = [
    [0, 'TABLE'],
    [2, 'LAYER'],
  ]
  return [begin, ...records, [[0, 'ENDTAB']]]
}
