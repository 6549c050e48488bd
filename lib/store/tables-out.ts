import 'server-only'
import type { LogEntry } from '#lib/core/log/index'
import type { Finding } from '#lib/core/result'
import { db, type Sql } from './db'
import { withPlaces } from './face-places'
import type { Piece } from './search/match'

/**
 * Rows of the tables that the shop hands out. Every column is named as the table names it; dates are text, moments
 * ISO 8601 with an offset, counts plain numbers. Reading only, a set at a time.
 */
type Rows = Promise<Record<string, string | number | boolean | null>[]>

/** What a table was narrowed to; null: not narrowed. */
export interface TableAsk {
  readonly mouldId: string | null
  readonly patchId: string | null
  readonly versionNo: number | null
  readonly issue: number | 'current' | null
}

const at = (sql: Sql, column: string) => sql`to_json(${sql(column)}) #>> '{}'`
const ofMould = (sql: Sql, { mouldId }: TableAsk, column = 'm.id') =>
  mouldId === null ? sql`true` : sql`${sql(column)} = ${mouldId}`
const ofPlan = (sql: Sql, ask: TableAsk) => sql`${ofMould(sql, ask)}
  and ${ask.patchId === null ? sql`true` : sql`p.id = ${ask.patchId}`}
  and ${ask.versionNo === null ? sql`true` : sql`pl.version_no = ${ask.versionNo}`}`

/** What a lot or a price is of: a material m or a product d. */
const lotSubject = (sql: Sql) =>
  sql`left join material m on m.id = l.material_id left join product d on d.id = l.product_id`

/** The moulds of a table in the order of their codes, each with how many entries its log has. */
export function mouldsAsked({ mouldId }: TableAsk) {
  return db().sql<{ id: string; code: string; entries: number }[]>`
    select m.id, m.code, (select count(*)::int from log_entry e where e.mould_id = m.id) as entries
    from mould m where ${mouldId === null ? db().sql`true` : db().sql`m.id = ${mouldId}`} order by natural_key(m.code), m.id`
}

export const patternsWithLog = () => db().sql<{ id: string; code: string; entries: number }[]>`
  select p.id, p.code, count(*)::int as entries from pattern p join log_entry e on e.pattern_id = p.id group by p.id order by natural_key(p.code), p.id`

export const mouldRows = (ids: readonly string[]): Rows => db().sql`
  select m.id, m.code, m.name, p.code as part, pt.code as pattern, s.code as set, m.piece_no as "pieceNo", k.code as stack, m.hand,
    m.made_when as "madeWhen", m.owner, m.mass_kg as "massKg", m.length_mm as "lengthMm", m.width_mm as "widthMm",
    m.height_mm as "heightMm", m.lifting_points as "liftingPoints", m.backing, m.heat_in_use_c as "heatInUseC",
    m.heat_free_c as "heatFreeC", m.heat_bonded_c as "heatBondedC", m.tg_dry_c as "tgDryC", m.tg_wet_c as "tgWetC",
    m.tg_note as "tgNote", m.part_cure_c as "partCureC", m.can_be_made_again as "canBeMadeAgain", m.pattern_state as "patternState",
    m.demoulding, m.do_nots as "doNots", m.note
  from mould m left join part p on p.id = m.part_id left join pattern pt on pt.id = m.pattern_id
  left join mould_set s on s.id = m.set_id left join stack k on k.id = m.stack_id
  where m.id = any(${[...ids]}::uuid[]) order by natural_key(m.code), m.id`

const newestFirst = (sql: Sql) =>
  sql`e.done_on desc, e.day_order desc, coalesce(e.stands_at, e.written_at) desc, e.written_at desc, e.id desc`

export type TakenEntry = LogEntry & {
  readonly mould: string | null
  readonly pattern: string | null
  readonly correctedByKind: string | null
  /** Where the entry stands in its log, for the page after it. */
  readonly standsAt: string
}

/**
 * Entries of some moulds or patterns, newest first within each, corrected ones and their corrections included. Of one
 * long log a page at a time: no connection is held while somebody with a slow line takes what was read.
 */
export async function takenEntries(
  of: 'mould' | 'pattern',
  ids: readonly string[],
  page: { readonly after: string | null; readonly limit: number } | null,
): Promise<TakenEntry[]> {
  const { sql } = db()
  const subject = of === 'mould' ? sql`e.mould_id` : sql`e.pattern_id`
  const codes = of === 'mould' ? sql`s.code as mould, null as pattern` : sql`null as mould, s.code as pattern`
  const [on = '', order = '', stands = '', written = '', id = ''] = page?.after?.split('|') ?? []
  const rows = await sql`
    select e.id, e.kind, e.done_on as "doneOn", ${at(sql, 'e.done_at')} as "doneAt", e.precision,
      ${at(sql, 'e.written_at')} as "writtenAt", e.by_name as "byName", e.area_id as "areaId", a.name as "areaName",
      e.patch_id as "patchId", p.number as "patchNumber", e.note, e.data, e.corrects_id as "correctsId", c.id as "correctedById",
      c.kind as "correctedByKind", e.group_id as "groupId", e.mould_id as "mouldId", ${codes}, coalesce((
        select json_agg(json_build_object('lotId', l.id, 'lot', l.lot, 'name', coalesce(m.name, d.name), 'amount', u.amount,
          'unit', coalesce(d.unit, 'm2')) order by l.lot, u.id)
        from lot_move u join stock_lot l on l.id = u.lot_id ${lotSubject(sql)} where u.entry_id = e.id and u.kind = 'used'), '[]') as uses,
      concat_ws('|', e.done_on, e.day_order, coalesce(e.stands_at, e.written_at), e.written_at, e.id) as "standsAt"
    from (
      select * from log_entry e where ${page === null ? sql`${subject} = any(${[...ids]}::uuid[])` : sql`${subject} = ${ids[0] ?? null}`}
        and ${
          on === ''
            ? sql`true`
            : sql`e.done_on <= ${on}::date and (e.done_on, e.day_order, coalesce(e.stands_at, e.written_at), e.written_at, e.id)
                < (${on}::date, ${order}::int, ${stands}::timestamptz, ${written}::timestamptz, ${id}::uuid)`
        }
      ${page === null ? sql`` : sql`order by ${newestFirst(sql)} limit ${page.limit}`}) e
    join ${sql(of)} s on s.id = ${subject}
    left join face_area a on a.id = e.area_id left join patch p on p.id = e.patch_id left join log_entry c on c.corrects_id = e.id
    order by natural_key(s.code), s.id, ${newestFirst(sql)}`
  return withPlaces(rows as unknown as (TakenEntry & { mouldId: string | null })[], ({ mouldId }) => mouldId)
}

export const pullRows = (ids: readonly string[]): Rows => db().sql`
  select m.code as mould, e.pull_no as "pullNo", e.done_on as "doneOn", ${at(db().sql, 'e.done_at')} as "doneAt",
    e.data ->> 'went' as went, e.cleared, e.data ->> 'serial' as serial, e.data ->> 'partFate' as "partFate",
    e.data ->> 'mouldFate' as "mouldFate", (e.data ->> 'cureC')::float8 as "cureC", e.note, e.by_name as "byName", e.id
  from pull_entry e join mould m on m.id = e.mould_id
  where e.mould_id = any(${[...ids]}::uuid[]) order by natural_key(m.code), m.id, e.pull_no`

export const matterRows = (ask: TableAsk): Rows => db().sql`
  select m.code as mould, t.code as pattern, a.name as area, o.kind, o.what, o.who, o.until_on as "untilOn", o.carried,
    o.done_on as "doneOn", o.by_name as "byName", o.entry_id as id
  from open_matter o left join mould m on m.id = o.mould_id left join pattern t on t.id = o.pattern_id
  left join face_area a on a.id = o.area_id where ${ofMould(db().sql, ask)} order by o.until_on, m.code, t.code, o.done_on`

export const areaRows = (ask: TableAsk): Rows => db().sql`
  select m.code as mould, a.name as area, a.origin_mm[1] as "originXMm", a.origin_mm[2] as "originYMm", a.origin_mm[3] as "originZMm",
    a.u_axis[1] as "uX", a.u_axis[2] as "uY", a.u_axis[3] as "uZ", a.v_axis[1] as "vX", a.v_axis[2] as "vY", a.v_axis[3] as "vZ",
    a.grid_origin_mm[1] as "gridUMm", a.grid_origin_mm[2] as "gridVMm", a.grid_cell_mm as "gridCellMm",
    coalesce(k.code, mk.code) as stack, jsonb_array_length(a.boundary) as corners, jsonb_array_length(a.lines) as lines,
    jsonb_array_length(a.keep_outs) as "keepOuts", r.readings, r.mean as "meanThicknessMm", a.id
  from face_area a join mould m on m.id = a.mould_id left join stack k on k.id = a.stack_id left join stack mk on mk.id = m.stack_id
  left join lateral (select count(*)::int as readings, avg(t.thickness_mm) as mean from thickness_reading t
    where t.area_id = a.id and t.struck_at is null) r on true
  where ${ofMould(db().sql, ask)} order by natural_key(m.code), m.id, a.position`

export const outlineRows = (ask: TableAsk): Rows => db().sql`
  select m.code as mould, a.name as area, o.kind, o.name, q.no::int as no, (q.at ->> 0)::float8 as "uMm", (q.at ->> 1)::float8 as "vMm"
  from face_area a join mould m on m.id = a.mould_id
  cross join lateral (
    select 0 as rank, 0::bigint as nth, 'boundary' as kind, '' as name, a.boundary as points
    union all select 1, l.nth, l.line ->> 'kind', l.line ->> 'name', l.line -> 'points'
      from jsonb_array_elements(a.lines) with ordinality l(line, nth)
    union all select 2, g.nth, g.ground ->> 'kind', g.ground ->> 'name', g.ground -> 'outline'
      from jsonb_array_elements(a.keep_outs) with ordinality g(ground, nth)) o
  cross join lateral jsonb_array_elements(o.points) with ordinality q(at, no)
  where ${ofMould(db().sql, ask)} order by natural_key(m.code), m.id, a.position, o.rank, o.nth, q.no`

export const readingRows = (ask: TableAsk): Rows => db().sql`
  select m.code as mould, a.name as area, t.u_mm as "uMm", t.v_mm as "vMm", t.thickness_mm as "thicknessMm",
    t.measured_on as "measuredOn", t.by_name as "byName", t.struck_at is null as counts, ${at(db().sql, 't.struck_at')} as "struckAt",
    t.struck_by_name as "struckByName", t.struck_because as "struckBecause", t.id
  from thickness_reading t join face_area a on a.id = t.area_id join mould m on m.id = a.mould_id
  where ${ofMould(db().sql, ask)} order by natural_key(m.code), m.id, a.position, t.measured_on, t.id`

export const pointRows = (ask: TableAsk): Rows => db().sql`
  with point as (
    select l.*, t.number, t.name as issue_name, t.issued_on, t.by_name, t.number = max(t.number) over (partition by l.mould_id) as in_force
    from locating_point l join locating_table t on t.id = l.table_id)
  select l.number as issue, l.issue_name as "issueName", l.issued_on as "issuedOn", l.in_force as "inForce", m.code as mould,
    a.name as area, l.tag, l.kind, l.u_mm as "uMm", l.v_mm as "vMm", l.diameter_mm as "diameterMm",
    l.bush_diameter_mm as "bushDiameterMm", l.through, l.is_datum as "isDatum", l.tolerance_mm as "toleranceMm",
    l.not_yet_fixed as "notYetFixed", l.by_name as "byName", l.id
  from point l join mould m on m.id = l.mould_id left join face_area a on a.id = l.area_id
  where ${ofMould(db().sql, ask)} and ${
    ask.issue === null
      ? db().sql`true`
      : ask.issue === 'current'
        ? db().sql`l.in_force`
        : db().sql`l.number = ${ask.issue}`
  } order by natural_key(m.code), m.id, l.number desc, l.position`

const planHead = (sql: Sql) =>
  sql`m.code as mould, p.number as patch, pl.version_no as version, pl.state as "planState"`
const plans = (sql: Sql) =>
  sql`patch_plan pl join patch p on p.id = pl.patch_id join mould m on m.id = p.mould_id`
const plansInOrder = (sql: Sql) => sql`natural_key(m.code), m.id, p.number, pl.version_no`

export const patchRows = (ask: TableAsk): Rows => {
  const { sql } = db()
  return sql`
  select ${planHead(sql)}, p.title, p.reason, a.name as area, v ->> 'place' as place, pl.input ->> 'side' as side,
    pl.input ->> 'edge' as edge, jsonb_array_length(v -> 'plies') as plies, (v -> 'lengths' ->> 'lengthMm')::float8 as "lengthMm",
    (v -> 'lengths' ->> 'ratioReached')::float8 as "ratioReached", (v ->> 'builtThicknessMm')::float8 as "builtThicknessMm",
    (v -> 'lengths' ->> 'measuredThicknessMm')::float8 as "measuredThicknessMm", (v ->> 'openingAreaMm2')::float8 as "openingAreaMm2",
    (v ->> 'footprintAreaMm2')::float8 as "footprintAreaMm2", f.stops, f.looks, j.ticked as "linesTicked", j.lines,
    ${at(sql, 'pl.created_at')} as "createdAt", pl.created_by_name as "createdByName", ${at(sql, 'pl.signed_at')} as "signedAt",
    pl.signed_by_name as "signedByName", pl.self_checked as "selfChecked", ${at(sql, 'pl.bench_at')} as "benchAt",
    laid.done_on as "laidOn", proved.done_on as "provedOn", ${at(sql, 'pl.put_by_at')} as "putByAt",
    pl.put_by_reason as "putByReason", pl.note, pl.calculation_version as "calculationVersion", p.id as "patchId", pl.id as "planId"
  from ${plans(sql)} join face_area a on a.id = p.area_id cross join lateral (select pl.result -> 'value' as v) r
  left join log_entry laid on laid.id = pl.laid_entry_id left join log_entry proved on proved.id = pl.proved_entry_id
  cross join lateral (select count(*) filter (where f ->> 'severity' = 'stop')::int as stops,
    count(*) filter (where f ->> 'severity' = 'look')::int as looks from jsonb_array_elements(pl.result -> 'findings') f) f
  cross join lateral (select count(*)::int as lines, count(l.ticked_at)::int as ticked from job_line l where l.plan_id = pl.id) j
  where ${ofPlan(sql, ask)} order by ${plansInOrder(sql)}`
}

export const planPlyRows = (ask: TableAsk): Rows => db().sql`
  select ${planHead(db().sql)}, (y ->> 'layingOrder')::int as "layingOrder", (y ->> 'replaces')::int as replaces,
    y -> 'material' ->> 'name' as material, (y ->> 'directionDeg')::float8 as "directionDeg", (y ->> 'thicknessMm')::float8 as "thicknessMm",
    (y ->> 'stepMm')::float8 as "stepMm", (y ->> 'growthMm')::float8 as "growthMm", (y ->> 'areaMm2')::float8 as "areaMm2",
    (y ->> 'perimeterMm')::float8 as "perimeterMm", (y -> 'acrossMm' ->> 0)::float8 as "acrossUMm",
    (y -> 'acrossMm' ->> 1)::float8 as "acrossVMm", (y ->> 'distanceToEdgeMm')::float8 as "distanceToEdgeMm"
  from ${plans(db().sql)} cross join lateral jsonb_array_elements(pl.result -> 'value' -> 'plies') with ordinality x(y, n)
  where ${ofPlan(db().sql, ask)} order by ${plansInOrder(db().sql)}, x.n`

export const takeOffRows = (ask: TableAsk): Rows => db().sql`
  select ${planHead(db().sql)}, t -> 'material' ->> 'name' as material, (t ->> 'netAreaM2')::float8 as "netAreaM2",
    (t ->> 'grossAreaM2')::float8 as "grossAreaM2", (t ->> 'rollLengthM')::float8 as "rollLengthM", (t ->> 'massKg')::float8 as "massKg",
    (t ->> 'offcutShare')::float8 * 100 as "offcutPercent", jsonb_array_length(t -> 'strips') as strips
  from ${plans(db().sql)} cross join lateral jsonb_array_elements(pl.result -> 'value' -> 'takeOff') with ordinality x(t, n)
  where ${ofPlan(db().sql, ask)} order by ${plansInOrder(db().sql)}, x.n`

export const jobLineRows = (ask: TableAsk): Rows => db().sql`
  select ${planHead(db().sql)}, l.position as no, l.title, l.detail, array_to_string(l.cautions, '; ') as cautions,
    l.second_person as "secondPerson", ${at(db().sql, 'l.ticked_at')} as "tickedAt", l.ticked_by_name as "tickedByName",
    l.tick_note as "tickNote", l.code
  from ${plans(db().sql)} join job_line l on l.plan_id = pl.id where ${ofPlan(db().sql, ask)}
  order by ${plansInOrder(db().sql)}, l.position`

export const planFindings = (ask: TableAsk) => db().sql<
  {
    mould: string
    patch: number
    version: number
    planState: string
    findings: Finding[]
    becauses: Record<string, string>
  }[]
>`
  select ${planHead(db().sql)}, pl.result -> 'findings' as findings, pl.becauses
  from ${plans(db().sql)} where ${ofPlan(db().sql, ask)} order by ${plansInOrder(db().sql)}`

export const partRows = (): Rows => db().sql`
  select p.code, p.name, (select count(*)::int from mould m where m.part_id = p.id) as moulds,
    (select count(*)::int from built_part b where b.part_id = p.id) as built, p.note, p.id
  from part p order by p.code, p.id`

export const patternRows = (): Rows => db().sql`
  select p.code, p.name, p.made_of as "madeOf", p.condition, coalesce(w.place, p.place) as place, p.available,
    p.can_be_made_again as "canBeMadeAgain", (select string_agg(m.code, ', ' order by m.code) from mould m where m.pattern_id = p.id) as moulds,
    p.owner, p.mass_kg as "massKg", p.length_mm as "lengthMm", p.width_mm as "widthMm", p.height_mm as "heightMm", p.note, p.id
  from pattern p left join pattern_place w on w.pattern_id = p.id order by p.code, p.id`

export const setRows = (): Rows => db().sql`
  select s.code, s.name, p.code as part, (select string_agg(m.code, ', ' order by m.piece_no) from mould m where m.set_id = s.id) as pieces,
    s.mass_kg as "massKg", s.length_mm as "lengthMm", s.width_mm as "widthMm", s.height_mm as "heightMm",
    s.lifting_points as "liftingPoints", s.backing, s.assembly, s.note, s.id
  from mould_set s left join part p on p.id = s.part_id order by s.code, s.id`

export const hardwareRows = (): Rows => db().sql`
  select s.code as set, h.position as no, h.kind, h.name, h.count, h.size, h.joins, h.place, h.note
  from set_hardware h join mould_set s on s.id = h.set_id order by s.code, s.id, h.position`

export const builtPartRows = (): Rows => db().sql`
  select b.serial, p.code as part, x.moulds, x.pulled_on as "pulledOn", b.cure, b.where_now as "whereNow", b.note,
    ${at(db().sql, 'b.created_at')} as "createdAt", b.id
  from built_part b left join part p on p.id = b.part_id
  left join (select e.serial_key, string_agg(m.code, ', ' order by m.code) as moulds, max(e.done_on) as pulled_on
    from part_pull e join mould m on m.id = e.mould_id group by e.serial_key) x on x.serial_key = lower(btrim(b.serial))
  order by b.serial, b.id`

export const builtPartLotRows = (): Rows => db().sql`
  select b.serial, l.position as no, l.material, l.lot, l.lot_id is not null as "inStores"
  from built_part_lot l join built_part b on b.id = l.built_part_id order by b.serial, b.id, l.position`

export const seasonRows = (): Rows => db().sql`
  select name, starts_on as "startsOn", ends_on as "endsOn" from season order by starts_on`

export const pictureRows = (ask: TableAsk): Rows => db().sql`
  select m.code as mould, t.code as pattern, s.code as set, b.serial as "builtPart", p.kind, p.taken_on as "takenOn", p.view, p.caption,
    p.mime_type as "mimeType", p.width_px as "widthPx", p.height_px as "heightPx", p.size_bytes as "sizeBytes", p.by_name as "byName",
    ${at(db().sql, 'p.written_at')} as "writtenAt", ${at(db().sql, 'p.put_away_at')} as "putAwayAt",
    p.put_away_because as "putAwayBecause", p.entry_id as "entryId", p.id
  from picture p left join mould m on m.id = p.mould_id left join pattern t on t.id = p.pattern_id
  left join mould_set s on s.id = p.set_id left join built_part b on b.id = p.built_part_id
  where ${ofMould(db().sql, ask)} order by p.taken_on, p.written_at, p.id`

/** The price of a material or a product, in the unit it is kept in, that holds on a day: the latest from-day, of that day the one written last. */
const priceOn = (sql: Sql, column: 'material_id' | 'product_id', of: string, unit: Piece, day: string) => sql`
  left join lateral (select c.minor_per_unit, c.currency, c.from_on from price c where c.${sql(column)} = ${sql(of)} and c.unit = ${unit}
    and c.from_on <= ${day} order by c.from_on desc, c.written_at desc, c.id desc limit 1) price on true`

/** Cycles come as they are stored (schema CureCycle). */
export const materialRows = (day: string) => db().sql<Record<string, never>[]>`
  select m.code, m.name, m.role, m.fibre_areal_weight_gsm as "fibreArealWeightGsm", m.fibre_density_g_cm3 as "fibreDensityGcm3",
    m.fibre_volume_fraction as "fibreVolumeFraction", m.resin_mass_fraction as "resinMassFraction",
    m.resin_density_g_cm3 as "resinDensityGcm3", m.roll_width_mm as "rollWidthMm", m.thickest_cure_mm as "thickestCureMm",
    m.cure, m.post_cure as "postCure", price.minor_per_unit as "priceMinor", price.currency, price.from_on as "priceFromOn",
    m.low_below_m2 as "lowBelowM2", m.out_life_h as "outLifeH", m.source_note as "sourceNote",
    ${at(db().sql, 'm.retired_at')} as "retiredAt", m.id
  from material m ${priceOn(db().sql, 'material_id', 'm.id', db().sql`'m2'`, day)} order by m.role desc, natural_key(m.code), m.id`

export const stackPlyRows = (): Rows => db().sql`
  select k.code as stack, k.name as "stackName", y.position as ply, m.code as material, m.name as "materialName",
    y.direction_deg as "directionDeg", k.note, k.id as "stackId", y.material_id as "materialId"
  from stack k join stack_ply y on y.stack_id = k.id join material m on m.id = y.material_id order by k.code, k.id, y.position`

export const productRows = (day: string): Rows => db().sql`
  select d.name, d.use, d.coats, d.interval_min as "intervalMin", d.flash_min as "flashMin", d.cure_min as "cureMin", d.cure_c as "cureC",
    d.pot_life_min as "potLifeMin", d.shelf_life_days as "shelfLifeDays", d.open_life_days as "openLifeDays", d.store_at as "storeAt",
    d.heat_limit_c as "heatLimitC", d.unit, d.low_below as "lowBelow", price.minor_per_unit as "priceMinor", price.currency,
    price.from_on as "priceFromOn", d.cautions, d.note, d.source_note as "sourceNote", ${at(db().sql, 'd.retired_at')} as "retiredAt", d.id
  from product d ${priceOn(db().sql, 'product_id', 'd.id', db().sql`d.unit`, day)} order by d.use, d.name, d.id`

const lotOf = (sql: Sql) =>
  sql`coalesce(m.code, d.name) as of, l.lot, case when m.id is null then d.unit else 'm2' end as unit`

export const lotRows = (): Rows => db().sql`
  select ${lotOf(db().sql)}, l.container, l.quantity, s.remaining, s.counted_on as "countedOn", s.out_hours as "outHours",
    m.out_life_h as "outLifeH", l.received_on as "receivedOn", l.expires_on as "expiresOn", l.opened_on as "openedOn", l.place,
    l.closed_on as "closedOn", l.closed_why as "closedWhy", l.note, l.id
  from stock_lot l ${lotSubject(db().sql)} join lot_state s on s.lot_id = l.id order by 1, l.received_on, l.lot, l.id`

export const lotMoveRows = (): Rows => db().sql`
  select ${lotOf(db().sql)}, v.kind, v.amount, v.done_on as "doneOn", em.code as mould, v.by_name as "byName",
    ${at(db().sql, 'v.written_at')} as "writtenAt",
    case when c.kind = 'correction' or ec.id is not null then 'no, struck out' when c.id is not null then 'no, put right'
      when v.kind = 'correction' then 'strikes out' else 'yes' end as standing,
    v.note, v.entry_id as "entryId", v.plan_id as "planId", v.corrects_id as "correctsId", v.id
  from lot_move v join stock_lot l on l.id = v.lot_id ${lotSubject(db().sql)}
  left join lot_move c on c.corrects_id = v.id left join log_entry ec on ec.corrects_id = v.entry_id
  left join log_entry e on e.id = v.entry_id left join patch_plan pl on pl.id = v.plan_id left join patch pa on pa.id = pl.patch_id
  left join mould em on em.id = coalesce(e.mould_id, pa.mould_id) order by v.done_on, v.written_at, v.id`

export const priceRows = (): Rows => db().sql`
  select coalesce(m.code, d.name) as of, l.minor_per_unit as "priceMinor", l.currency, l.unit, l.from_on as "fromOn",
    exists (select 1 from price x where (x.material_id, x.product_id) is not distinct from (l.material_id, l.product_id)
      and x.from_on = l.from_on and (x.written_at, x.id) > (l.written_at, l.id)) as "putRight",
    l.source_note as "sourceNote", l.by_name as "byName", ${at(db().sql, 'l.written_at')} as "writtenAt", l.id
  from price l ${lotSubject(db().sql)} order by 1, l.from_on, l.written_at, l.id`

export const rateRows = (): Rows => db().sql`
  select r.operation, r.basis, r.hours, r.minor_per_basis as "priceMinor", r.currency, r.from_on as "fromOn",
    exists (select 1 from rate x where lower(btrim(x.operation)) = lower(btrim(r.operation)) and x.basis = r.basis and x.from_on = r.from_on
      and (x.written_at, x.id) > (r.written_at, r.id))
      as "putRight", r.source_note as "sourceNote", r.by_name as "byName", ${at(db().sql, 'r.written_at')} as "writtenAt", r.id
  from rate r order by r.operation, r.from_on, r.written_at, r.id`

export const personRows = (): Rows => db().sql`
  select name, initials, role, email, ${at(db().sql, 'created_at')} as "createdAt", ${at(db().sql, 'ended_at')} as "endedAt", id
  from person order by ended_at nulls first, name, id`

export const tokenRows = (): Rows => db().sql`
  select name, role, created_by_name as "createdByName", ${at(db().sql, 'created_at')} as "createdAt",
    ${at(db().sql, 'last_used_at')} as "lastUsedAt", ${at(db().sql, 'ended_at')} as "endedAt"
  from api_token order by ended_at nulls first, name, id`

/** The audit in the order it was written, a page at a time; `after` is the number of the last row before. */
export const auditRows = (after: number, limit: number): Rows => db().sql`
  select id::float8 as no, ${at(db().sql, 'at')} as at, by_name as "byName", act, record_kind as "recordKind", record_id as "recordId",
    before::text as before, after::text as after
  from audit where id > ${after} order by id limit ${limit}`
