/** The columns of a table of locating points, with the names that people give them. */
const columns = {
  tag: ['tag', 'name', 'point', 'id', 'dowel'],
  uMm: ['u', 'x', 'u mm', 'x mm'],
  vMm: ['v', 'y', 'v mm', 'y mm'],
  diameterMm: ['diameter', 'dia', 'd', 'diameter mm', 'dia mm', '⌀'],
  bushDiameterMm: ['bush', 'bush diameter', 'bush mm', 'bush dia'],
  kind: ['kind', 'type'],
  areaName: ['area', 'face'],
  through: ['through'],
  isDatum: ['datum'],
  toleranceMm: ['tolerance', 'tol', 'zone'],
} as const

export type PointColumn = keyof typeof columns
export type PointRow = Record<PointColumn, string>

/** Order of the columns where the table has no head. */
const usualOrder: readonly PointColumn[] = [
  'tag',
  'uMm',
  'vMm',
  'diameterMm',
  'bushDiameterMm',
  'kind',
  'areaName',
]

export type PastedRows =
  | { readonly ok: true; readonly rows: readonly PointRow[]; readonly head: readonly string[] }
  | { readonly ok: false; readonly reason: string }

/**
 * Rows of a pasted table as text; figures are read later, cell by cell. Parted by tabs, semicolons, or commas that
 * are no decimal commas. The first line is a head when one of its cells names a column.
 */
export function pastedRows(text: string): PastedRows {
  const lines = text
    .split(/\r\n|\r|\n/)
    .map((line, index) => ({ line: line.trim(), number: index + 1 }))
    .filter(({ line }) => line !== '')
  const first = lines[0]
  if (!first) return { ok: false, reason: 'Nothing was pasted. Paste rows with tag, u, v and diameter' }
  const mark = ['\t', ';', ','].find((candidate) => lines.every(({ line }) => line.includes(candidate)))
  if (!mark) {
    return {
      ok: false,
      reason: 'The rows are not parted alike. Part the columns by tabs, semicolons or commas',
    }
  }
  const cells = (line: string) => line.split(mark).map((cell) => cell.trim())
  const head = cells(first.line)
  const named = head.map(columnOf)
  const hasHead = named.filter((column) => column !== null).length >= 2
  const order = hasHead ? named : usualOrder
  if (hasHead && !(order.includes('tag') && order.includes('uMm') && order.includes('vMm'))) {
    return {
      ok: false,
      reason: 'The head names no column for tag, u or v. Call them tag, u, v, diameter, bush, kind, area',
    }
  }
  const body = hasHead ? lines.slice(1) : lines
  const short = body.find(({ line }) => cells(line).length < 3)
  if (short)
    return {
      ok: false,
      reason: `Line ${short.number} has fewer than three columns: tag, u and v must be there`,
    }
  return {
    ok: true,
    head: hasHead ? head : [],
    rows: body.map(({ line }) => rowOf(cells(line), order)),
  }
}

function columnOf(name: string): PointColumn | null {
  const plain = name
    .toLowerCase()
    .replace(/[[\]()]/g, ' ')
    .replace(/\s+/g, ' ')
    .trim()
  for (const [column, names] of Object.entries(columns)) {
    if ((names as readonly string[]).includes(plain)) return column as PointColumn
  }
  return null
}

function rowOf(cells: readonly string[], order: readonly (PointColumn | null)[]): PointRow {
  const cellOf = (column: PointColumn) => cells[order.indexOf(column)] ?? ''
  const isYes = (text: string) => (/^(yes|y|true|x|1|on)$/i.test(text) ? 'true' : '')
  return {
    tag: cellOf('tag'),
    uMm: cellOf('uMm'),
    vMm: cellOf('vMm'),
    diameterMm: cellOf('diameterMm'),
    bushDiameterMm: cellOf('bushDiameterMm'),
    kind: cellOf('kind').toLowerCase() || 'dowel',
    areaName: cellOf('areaName'),
    through: isYes(cellOf('through')),
    isDatum: isYes(cellOf('isDatum')),
    toleranceMm: cellOf('toleranceMm'),
  }
}
