import { beforeLayUp, defaultUpkeepRules } from '#lib/core/log/index'
import { mouldCounts } from '#lib/store/counts'
import { closeDatabase, db } from '#lib/store/db'

const { sql } = db()
await sql.unsafe(`create table if not exists keep as select * from log_entry; 
 alter table log_entry disable trigger all; delete from log_entry; alter table patch_plan disable trigger all;
 update patch_plan set state='sketched' where state='on the bench'`)
const rows =
  await sql`select k.*, m.code, to_json(k.done_at)#>>'{}' as at from keep k join mould m on m.id=k.mould_id order by done_on, day_order, written_at, id`
let checked = 0,
  bad = 0
for (const row of rows) {
  if (row.kind === 'cleared') {
    const c = (await mouldCounts([row.mould_id], null)).get(row.mould_id)!
    const now = row.at ?? `${row.done_on}T11:00:00Z`
    const ms = beforeLayUp(c, defaultUpkeepRules, row.done_on, now).filter((m) => m.severity !== 'note')
    const open = ms.map((m) => m.text)
    checked++
    if (JSON.stringify(open) !== JSON.stringify(row.data.open)) {
      bad++
      console.log(
        row.code,
        row.done_on,
        'stored',
        row.data.open,
        'computed',
        ms.map((m) => m.severity + ' ' + m.text),
      )
    }
  }
  await sql`insert into log_entry select * from keep where id=${row.id}`
}
console.log({ checked, bad })
await closeDatabase()
