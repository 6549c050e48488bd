import 'server-only'
import { cellOf } from '#lib/core/geometry/index'
import type { Asked, GridCell } from '#lib/core/search/index'
import type { Sql } from '../db'
import { asFound, type Found, hasWords, likeText, nothing, type Piece } from './match'
import { inScope, type Scope, scopeOf } from './scope'

/** What lies on the faces of moulds: patches, damage and repairs, locating points; by number, by tag, by the location grid. */

const patchState = (sql: Sql) => sql`
  left join lateral (select state, place from patch_plan l where l.patch_id = p.id
    order by (l.state = 'put by'), l.version_no desc limit 1) l on true`

export async function findPatches(sql: Sql, asked: Asked, limit: number): Promise<Found> {
  const chosen = await patchesAsked(sql, asked)
  if (chosen === null) return nothing
  const rows = await sql`
    with found as (select p.* from patch p where ${chosen.where})
    select p.id, 'Patch ' || p.number as title, p.title as name, coalesce(l.state, '') as state, coalesce(l.place, '') as place, p.reason as detail,
      2 as fit, 'mould' as "ofKind", m.code as "ofCode"
    from (select p.*, m.code as mould_code from found p join mould m on m.id = p.mould_id order by m.code, p.number limit ${limit + 1}) p
      join mould m on m.id = p.mould_id ${patchState(sql)}
    order by m.code, p.number`
  return asFound('patch', rows, limit)
}

/** Which patches are meant; null when what was typed can't be one. (A bare piece of SQL would be run by the await.) */
async function patchesAsked(sql: Sql, asked: Asked): Promise<{ readonly where: Piece } | null> {
  if (asked.patch) {
    const { number, words } = asked.patch
    const scope = await scopeOf(sql, words)
    if (number !== null || scope.mouldIds !== null) {
      const numbered = number === null ? sql`true` : sql`p.number = ${number}`
      const also = hasWords(sql, sql`plain_words(' ' || p.title || ' ' || p.reason)`, scope.words)
      return { where: sql`${numbered} and ${inScope(sql, sql`p.mould_id`, scope)} and (${also})` }
    }
  }
  const inCell = await areasAsked(sql, asked)
  if (inCell) {
    const { scope } = inCell
    const cell = asked.words[asked.words.length - 1] ?? ''
    const place = scope.words.length > 0 ? likeText([...scope.words, cell].join(' ')) : `% ${likeText(cell)}`
    const where = sql`${inScope(sql, sql`p.mould_id`, scope)} and p.id in (select l.patch_id from patch_plan l
      where l.state <> 'put by' and (plain_words(l.place) like ${place}
        or plain_words(l.place) like ${`${place},%`}))`
    return { where }
  }
  const scope = await scopeOf(sql, asked.words)
  if (scope.words.length === 0) return null
  const text = sql`plain_words(' ' || p.title || ' ' || p.reason)`
  return { where: sql`(${hasWords(sql, text, scope.words)}) and ${inScope(sql, sql`p.mould_id`, scope)}` }
}

/** A spot in a cell of its area's grid; the same rule as cellOf: upper and left side belong to the cell. */
function inCell(sql: Sql, u: Piece, v: Piece, { row, column }: GridCell): Piece {
  return sql`
    ${u} >= a.grid_origin_mm[1] + ${column}::float8 * a.grid_cell_mm and ${u} < a.grid_origin_mm[1] + ${column + 1}::float8 * a.grid_cell_mm
    and ${v} <= a.grid_origin_mm[2] - ${row}::float8 * a.grid_cell_mm and ${v} > a.grid_origin_mm[2] - ${row + 1}::float8 * a.grid_cell_mm`
}

interface Spot {
  readonly area: string
  readonly originMm: readonly [number, number]
  readonly cellMm: number
  readonly u: number
  readonly v: number
}

const spotColumns = (sql: Sql, u: Piece, v: Piece) =>
  sql`a.name as area, a.grid_origin_mm as "originMm", a.grid_cell_mm as "cellMm", ${u} as u, ${v} as v`

function placed<Row extends Spot>({ area, originMm, cellMm, u, v, ...row }: Row) {
  return { ...row, place: `${area} ${cellOf({ originMm, cellMm }, [u, v])}` }
}

/** The areas that the words before a cell name; null when they name none: a cell alone is everywhere. */
async function areasAsked(
  sql: Sql,
  asked: Asked,
): Promise<{ readonly scope: Scope; readonly areas: Piece; readonly cell: GridCell } | null> {
  if (!asked.cell || asked.cell.words.length === 0) return null
  const scope = await scopeOf(sql, asked.cell.words)
  const begins = `${likeText(scope.words.join(' '))}%`
  const areas = sql`plain_words(a.name) like ${begins} and ${inScope(sql, sql`a.mould_id`, scope)}`
  return { scope, areas, cell: asked.cell.cell }
}

export async function findDamage(sql: Sql, asked: Asked, limit: number): Promise<Found> {
  const where = await areasAsked(sql, asked)
  if (where === null) return nothing
  const [u, v] = [sql`(e.data ->> 'uMm')::float8`, sql`(e.data ->> 'vMm')::float8`]
  const rows = await sql`
    select e.id, case when e.kind = 'damage' then 'Damage' else 'Repair' end as title, e.data ->> 'what' as name,
      coalesce(e.data ->> 'weight', e.data ->> 'method') as state, e.by_name as detail, e.done_on as "on", 2 as fit,
      'mould' as "ofKind", m.code as "ofCode", ${spotColumns(sql, u, v)}
    from log_entry e join face_area a on a.id = e.area_id join mould m on m.id = e.mould_id
    where e.kind in ('damage', 'repair') and e.data ->> 'uMm' is not null and e.data ->> 'vMm' is not null
      and ${where.areas} and ${inCell(sql, u, v, where.cell)}
      and not exists (select 1 from log_entry c where c.corrects_id = e.id)
    order by e.done_on desc, e.id limit ${limit + 1}`
  return asFound(
    'damage',
    rows.map((row) => placed(row as unknown as Spot)),
    limit,
  )
}

/** Points of the issue in force, by tag ("D03", "LH-P D03") or by the cell that they lie in. */
export async function findPoints(sql: Sql, asked: Asked, limit: number): Promise<Found> {
  const byCell = await areasAsked(sql, asked)
  const byTag = await scopeOf(sql, asked.words)
  const tag = byTag.words.length === 1 ? (byTag.words[0] ?? null) : null
  if (!byCell && tag === null) return nothing
  const tagged = sql`(plain_words(p.tag) like ${`${likeText(tag ?? '')}%`} and ${inScope(sql, sql`p.mould_id`, byTag)})`
  const there = byCell
    ? sql`(${inScope(sql, sql`p.mould_id`, byCell.scope)} and ${byCell.areas} and ${inCell(sql, sql`p.u_mm`, sql`p.v_mm`, byCell.cell)})`
    : sql`false`
  const chosen = tag === null ? there : byCell ? sql`(${tagged} or ${there})` : tagged
  const rows = await sql`
    select p.id, p.tag as title, m.name, case when p.not_yet_fixed then 'not yet fixed' else '' end as state,
      p.kind || ' ⌀ ' || p.diameter_mm || ' mm, issue ' || t.number as detail, (case when plain_words(p.tag) = ${tag ?? ''} then 0 else 2 end) as fit,
      'mould' as "ofKind", m.code as "ofCode", ${spotColumns(sql, sql`p.u_mm`, sql`p.v_mm`)}
    from locating_point p join locating_table t on t.id = p.table_id join mould m on m.id = p.mould_id left join face_area a on a.id = p.area_id
    where ${chosen}
      and not exists (select 1 from locating_point later join locating_table lt on lt.id = later.table_id where later.mould_id = p.mould_id and lt.number > t.number)
    order by fit, m.code, p.position limit ${limit + 1}`
  return asFound(
    'point',
    rows.map((row) => (row.area === null ? { ...row, place: '' } : placed(row as unknown as Spot))),
    limit,
  )
}
