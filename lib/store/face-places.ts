import 'server-only'
import { dowelPlaces, type TablePoint } from '#lib/core/drawing/index'
import type { NamedArea, NearDowel } from '#lib/core/geometry/index'
import { entryPlace, type LogEntry } from '#lib/core/log/index'
import { db, type Sql } from './db'

/** What places on an area are named by: its grid, and its locating points where they stand now. */
export interface AreaPlaces {
  readonly id: string
  readonly area: NamedArea
  readonly dowels: readonly NearDowel[]
}

interface AreaRow {
  readonly id: string
  readonly mouldId: string
  readonly name: string
  readonly originMm: readonly [number, number]
  readonly cellMm: number
}

interface PointRow extends TablePoint {
  readonly mouldId: string
  readonly issuedOn: string
}

/** The areas of some moulds with what places on them are named by, by mould. */
export async function areaPlaces(
  mouldIds: readonly string[],
  sql: Sql = db().sql,
): Promise<ReadonlyMap<string, readonly AreaPlaces[]>> {
  if (mouldIds.length === 0) return new Map()
  const ids = [...new Set(mouldIds)]
  const [areas, points, changes] = await Promise.all([
    sql<AreaRow[]>`
      select id, mould_id as "mouldId", name, grid_origin_mm as "originMm", grid_cell_mm as "cellMm" from face_area
      where mould_id = any(${ids}::uuid[]) order by mould_id, position`,
    sql<PointRow[]>`
      with point as (
        select p.*, t.number, t.issued_on, max(t.number) over (partition by p.mould_id) as in_force
        from locating_point p join locating_table t on t.id = p.table_id where p.mould_id = any(${ids}::uuid[]))
      select p.mould_id as "mouldId", p.area_id as "areaId", p.tag, p.u_mm as "uMm", p.v_mm as "vMm", p.diameter_mm as "diameterMm",
        p.is_datum as "isDatum", p.tolerance_mm as "toleranceMm", p.issued_on as "issuedOn"
      from point p where p.number = p.in_force order by p.mould_id, p.position`,
    sql<(LogEntry & { readonly mouldId: string })[]>`
      select e.mould_id as "mouldId", e.kind, e.data, e.done_on as "doneOn", to_json(e.written_at) #>> '{}' as "writtenAt",
        null as "correctedById"
      from effective_entry e where e.mould_id = any(${ids}::uuid[]) and e.kind = 'dowel-changed'`,
  ])
  return new Map(
    ids.map((mouldId) => {
      const issued = points.filter((point) => point.mouldId === mouldId)
      const issue = { issuedOn: issued[0]?.issuedOn ?? '', points: issued }
      const since = changes.filter((entry) => entry.mouldId === mouldId)
      return [
        mouldId,
        areas
          .filter((area) => area.mouldId === mouldId)
          .map(({ id, name, originMm, cellMm }) => ({
            id,
            area: { name, grid: { originMm, cellMm } },
            dowels: dowelPlaces(id, issue, null, since),
          })),
      ]
    }),
  )
}

/** Kinds of entries that may tell of a place on a face. */
const placed: readonly LogEntry['kind'][] = ['damage', 'repair', 'dowel-changed', 'measured']

type Unplaced = Pick<LogEntry, 'kind' | 'data' | 'areaId'>

/** Entries with the words for the place that each tells of; an area is read only for those that may. */
export async function withPlaces<Row extends Unplaced>(
  rows: readonly Row[],
  mouldOf: (row: Row) => string | null,
  sql: Sql = db().sql,
): Promise<(Row & { readonly place: string | null })[]> {
  const onFaces = rows.filter(({ kind }) => placed.includes(kind))
  const known = await areaPlaces(
    onFaces.flatMap((row) => mouldOf(row) ?? []),
    sql,
  )
  return rows.map((row) => {
    const areas = known.get(mouldOf(row) ?? '') ?? []
    const at = areas.find(({ id }) => id === row.areaId) ?? areaOfPoint(row, areas)
    return { ...row, place: at ? entryPlace(row, at.area, at.dowels) : null }
  })
}

/** A changed dowel whose area nobody named lies on the area of the point of its tag, or on the only one. */
function areaOfPoint(row: Unplaced, areas: readonly AreaPlaces[]): AreaPlaces | undefined {
  const entry = row as LogEntry
  if (entry.kind !== 'dowel-changed') return undefined
  const tag = entry.data.tag.trim().toLowerCase()
  return (
    areas.find(({ dowels }) => dowels.some((dowel) => dowel.tag.trim().toLowerCase() === tag)) ??
    (areas.length === 1 ? areas[0] : undefined)
  )
}
