import { NewLogEntry, NewPatternEntry } from '#lib/schema/log'
import { db } from '#lib/store/db'
import { entryHash } from '#lib/store/log'
import { momentOf } from '../base/calendar'
import { idOf } from '../base/ids'
import { areaId } from '../data/face'
import type { PatternLine } from '../data/pattern-log'
import { personOf } from '../data/people'
import { patchIdOf } from '../data/plan-story'
import { type Book, type Draft, noon } from '../diary/book'

interface Written {
  readonly entry: NewLogEntry | NewPatternEntry
  readonly hash: string
  readonly dayOrder: number
  readonly writtenAt: string
  readonly byId: string
  readonly byName: string
}

/**
 * Writes all diaries and what happened to the patterns in one statement, each entry checked by the schema that screens use and stamped with the day
 * on which it was written; then the versions of the moulds and patterns that their moves and states have brought about.
 */
export async function writeLog(books: readonly Book[], patternLines: readonly PatternLine[]): Promise<void> {
  const written = [...books.flatMap(({ drafts }) => entriesOf(drafts)), ...patternEntries(patternLines)]
  const rows = written.map(({ entry, ...rest }) => ({ ...entry, ...rest }))
  const { sql } = db()
  await sql.begin(async (tx) => {
    await tx`
      insert into log_entry (id, mould_id, pattern_id, kind, done_on, done_at, precision, day_order, written_at, by_id, by_name, area_id,
        patch_id, corrects_id, data, note, content_hash)
      select r.id, r."mouldId", r."patternId", r.kind, r."doneOn", r."doneAt", r.precision, r."dayOrder", r."writtenAt", r."byId", r."byName",
        r."areaId", r."patchId", r."correctsId", r.data, r.note, r.hash
      from jsonb_to_recordset(${tx.json(rows as never)}) as r(id uuid, "mouldId" uuid, "patternId" uuid, kind text, "doneOn" date, "doneAt" timestamptz,
        precision text, "dayOrder" int, "writtenAt" timestamptz, "byId" uuid, "byName" text, "areaId" uuid, "patchId" uuid,
        "correctsId" uuid, data jsonb, note text, hash text)
      order by r."writtenAt"`
    const audits = written.map(({ entry, hash, ...rest }) => ({
      ...rest,
      id: entry.id,
      after: { ...entry, hash },
    }))
    await tx`
      insert into audit (at, by_id, by_name, act, record_kind, record_id, after)
      select r."writtenAt", r."byId", r."byName", 'made', 'log-entry', r.id, r.after
      from jsonb_to_recordset(${tx.json(audits as never)}) as r("writtenAt" timestamptz, "byId" uuid, "byName" text, id uuid, after jsonb)
      order by r."writtenAt"`
    await tx`
      update mould m set version = m.version + e.changes, created_at = e.first_written
      from (select mould_id, count(*) filter (where kind in ('moved', 'state'))::int as changes, min(written_at) as first_written
        from log_entry where mould_id is not null group by mould_id) e
      where e.mould_id = m.id`
    await tx`
      update pattern p set version = p.version + e.moves
      from (select pattern_id, count(*)::int as moves from log_entry where kind = 'moved' and pattern_id is not null group by pattern_id) e
      where e.pattern_id = p.id`
  })
}

function entriesOf(drafts: readonly Draft[]): Written[] {
  let version = 1
  return drafts.map((draft, index) => {
    const changesMould = draft.kind === 'moved' || draft.kind === 'state'
    const entry = NewLogEntry.parse({
      id: entryId(draft.key),
      mouldId: idOf(`mould/${draft.mould}`),
      areaId: draft.area === null ? null : areaId(draft.mould, draft.area),
      patchId: draft.patch === null ? null : patchIdOf(draft.mould, draft.patch),
      doneOn: draft.doneOn,
      doneAt: draft.minute === null ? null : momentOf(draft.doneOn, draft.minute),
      precision: draft.precision,
      correctsId: draft.correctsKey === null ? null : entryId(draft.correctsKey),
      note: draft.note,
      sawVersion: changesMould ? version : null,
      kind: draft.kind,
      data: draft.data,
    })
    if (changesMould) version += 1
    const { id: byId, name: byName } = personOf(draft.by)
    const dayOrder = draft.minute ?? noon
    return { entry, hash: entryHash(entry), dayOrder, writtenAt: writtenAt(draft, index), byId, byName }
  })
}

/** A move of a pattern names the version that it saw. */
function patternEntries(lines: readonly PatternLine[]): Written[] {
  const versions = new Map<string, number>()
  return lines.map(({ pattern, on, by, kind, data, note }, index) => {
    const version = versions.get(pattern) ?? 1
    if (kind === 'moved') versions.set(pattern, version + 1)
    const entry = NewPatternEntry.parse({
      id: idOf(`pattern-entry/${index}`),
      patternId: idOf(`pattern/${pattern}`),
      doneOn: on,
      doneAt: null,
      precision: 'day',
      correctsId: null,
      note: note ?? '',
      sawVersion: kind === 'moved' ? version : null,
      kind,
      data,
    })
    const { id: byId, name: byName } = personOf(by)
    const written = new Date(Date.parse(momentOf(on, 18 * 60)) + index * 1000).toISOString()
    return { entry, hash: entryHash(entry), dayOrder: noon, writtenAt: written, byId, byName }
  })
}

export const entryId = (key: string) => idOf(`entry/${key}`)

/** In the evening of its day, in the order of the diary; a minute apart from the next at most 40 a day. */
function writtenAt(draft: Draft, index: number): string {
  const evening = momentOf(draft.writtenOn, 18 * 60)
  return new Date(Date.parse(evening) + index * 1000).toISOString()
}
