import type { Bounds } from '#lib/core/geometry/types'

/** A group of a DXF: its code and its value. */
export type Pair = readonly [code: number, value: string | number]

/** Gives the next free handle, in hexadecimal. */
export type Handles = () => string

export function handles(): Handles {
  let last = 0x0f
  return () => {
    last += 1
    return last.toString(16).toUpperCase()
  }
}

/**
 * All that a file of release AC1015 must have around its entities: header, tables, the two blocks of model and paper,
 * and the dictionary of objects. `entities` gets the handle of the model that owns them.
 */
export function dxfTables(
  next: Handles,
  layers: readonly string[],
  [xMin, yMin, xMax, yMax]: Bounds,
  entities: (owner: string) => readonly Pair[],
): readonly Pair[] {
  const [model, sheet] = [next(), next()]
  const tables = [
    table(next, 'VPORT', [viewport([xMin, yMin, xMax, yMax])]),
    table(next, 'LTYPE', ['ByBlock', 'ByLayer', 'Continuous'].map(lineType)),
    table(next, 'LAYER', ['0', ...layers].map(layer)),
    table(next, 'STYLE', [textStyle]),
    table(next, 'VIEW', []),
    table(next, 'UCS', []),
    table(next, 'APPID', [application]),
    table(next, 'DIMSTYLE', []),
    blockRecords(next, model, sheet),
  ].flat()
  const blocks = [block(next, '*Model_Space', model, 0), block(next, '*Paper_Space', sheet, 1)].flat()
  const drawn = entities(model)
  const objects = dictionaries(next)
  return [
    ...header(next(), [xMin, yMin, xMax, yMax]),
    ...section('TABLES', tables),
    ...section('BLOCKS', blocks),
    ...section('ENTITIES', drawn),
    ...section('OBJECTS', objects),
    [0, 'EOF'],
  ]
}

function section(name: string, pairs: readonly Pair[]): readonly Pair[] {
  return [[0, 'SECTION'], [2, name], ...pairs, [0, 'ENDSEC']]
}

/** $INSUNITS 4 and $MEASUREMENT 1: millimetres. */
function header(seed: string, [xMin, yMin, xMax, yMax]: Bounds): readonly Pair[] {
  return section('HEADER', [
    [9, '$ACADVER'],
    [1, 'AC1015'],
    [9, '$DWGCODEPAGE'],
    [3, 'ANSI_1252'],
    [9, '$HANDSEED'],
    [5, seed],
    [9, '$INSUNITS'],
    [70, 4],
    [9, '$MEASUREMENT'],
    [70, 1],
    [9, '$EXTMIN'],
    [10, xMin],
    [20, yMin],
    [30, 0],
    [9, '$EXTMAX'],
    [10, xMax],
    [20, yMax],
    [30, 0],
  ])
}

type Record = (handle: string, owner: string) => readonly Pair[]

function table(next: Handles, name: string, records: readonly Record[]): readonly Pair[] {
  const owner = next()
  return [
    [0, 'TABLE'],
    [2, name],
    [5, owner],
    [330, 0],
    [100, 'AcDbSymbolTable'],
    [70, records.length],
    ...(name === 'DIMSTYLE' ? [[100, 'AcDbDimStyleTable'] as const] : []),
    ...records.flatMap((record) => [[0, name] as const, ...record(next(), owner)]),
    [0, 'ENDTAB'],
  ]
}

function named(kind: string, name: string, more: readonly Pair[]): Record {
  return (handle, owner) => [
    [5, handle],
    [330, owner],
    [100, 'AcDbSymbolTableRecord'],
    [100, `AcDb${kind}TableRecord`],
    [2, name],
    [70, 0],
    ...more,
  ]
}

/** The view that a program opens with: all of the outlines. */
function viewport([xMin, yMin, xMax, yMax]: Bounds): Record {
  return named('Viewport', '*Active', [
    [10, 0],
    [20, 0],
    [11, 1],
    [21, 1],
    [12, (xMin + xMax) / 2],
    [22, (yMin + yMax) / 2],
    [16, 0],
    [26, 0],
    [36, 1],
    [40, 1.5 * Math.max(yMax - yMin, xMax - xMin)],
    [41, 1.5],
    [42, 50],
  ])
}

function lineType(name: string): Record {
  return named('Linetype', name, [
    [3, ''],
    [72, 65],
    [73, 0],
    [40, 0],
  ])
}

/** Colours tell neighbours apart: black for what is no ply, the numbered ones by turns. */
function layer(name: string, index: number): Record {
  const colour = name.startsWith('PLY-') ? 1 + (index % 6) : 7
  return named('Layer', name, [
    [62, colour],
    [6, 'Continuous'],
  ])
}

const textStyle = named('TextStyle', 'Standard', [
  [40, 0],
  [41, 1],
  [50, 0],
  [71, 0],
  [42, 2.5],
  [3, 'txt'],
  [4, ''],
])

const application = named('RegApp', 'ACAD', [])

function blockRecords(next: Handles, model: string, sheet: string): readonly Pair[] {
  const owner = next()
  const record = (handle: string, name: string): readonly Pair[] => [
    [0, 'BLOCK_RECORD'],
    [5, handle],
    [330, owner],
    [100, 'AcDbSymbolTableRecord'],
    [100, 'AcDbBlockTableRecord'],
    [2, name],
  ]
  return [
    [0, 'TABLE'],
    [2, 'BLOCK_RECORD'],
    [5, owner],
    [330, 0],
    [100, 'AcDbSymbolTable'],
    [70, 2],
    ...record(model, '*Model_Space'),
    ...record(sheet, '*Paper_Space'),
    [0, 'ENDTAB'],
  ]
}

function block(next: Handles, name: string, owner: string, onPaper: 0 | 1): readonly Pair[] {
  const common = (handle: string): readonly Pair[] => [
    [5, handle],
    [330, owner],
    [100, 'AcDbEntity'],
    ...(onPaper === 1 ? [[67, 1] as const] : []),
    [8, '0'],
  ]
  return [
    [0, 'BLOCK'],
    ...common(next()),
    [100, 'AcDbBlockBegin'],
    [2, name],
    [70, 0],
    [10, 0],
    [20, 0],
    [30, 0],
    [3, name],
    [1, ''],
    [0, 'ENDBLK'],
    ...common(next()),
    [100, 'AcDbBlockEnd'],
  ]
}

function dictionaries(next: Handles): readonly Pair[] {
  const [root, group] = [next(), next()]
  return [
    [0, 'DICTIONARY'],
    [5, root],
    [330, 0],
    [100, 'AcDbDictionary'],
    [281, 1],
    [3, 'ACAD_GROUP'],
    [350, group],
    [0, 'DICTIONARY'],
    [5, group],
    [330, root],
    [100, 'AcDbDictionary'],
    [281, 1],
  ]
}
