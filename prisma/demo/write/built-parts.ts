import { BuiltPartInput } from '#lib/schema/built-part'
import { changeBuiltPart } from '#lib/services/built-parts'
import { lotNames, readBuiltPart } from '#lib/store/built-parts'
import { db } from '#lib/store/db'
import { idOf } from '../base/ids'
import { partStories } from '../data/built-parts'
import { actorOf } from './people'

/** Every serial that a pull of the diaries names, and what the shop has added to some. */
export async function writeBuiltParts(): Promise<void> {
  const { sql } = db()
  const serials = await sql<{ serial: string; partId: string | null; at: string }[]>`
    select distinct on (p.serial_key) btrim(p.data ->> 'serial') as serial, m.part_id as "partId", p.written_at as at
    from part_pull p join mould m on m.id = p.mould_id order by p.serial_key, p.written_at`
  const rows = serials.map((row) => ({ ...row, id: idOf(`built-part/${row.serial}`) }))
  await sql`
    insert into built_part (id, serial, part_id, created_at)
    select r.id, r.serial, r."partId", r.at
    from jsonb_to_recordset(${sql.json(rows as never)}) as r(id uuid, serial text, "partId" uuid, at timestamptz)`
  const inStores = await lotNames()
  for (const { serial, stock = [], ...story } of partStories) {
    const part = await readBuiltPart(serial)
    if (!part) throw new RangeError(`No pull of the diaries gives the part ${serial}`)
    const lots = stock.map((wanted) => {
      const lot = inStores.find((each) => each.material === wanted.material && each.lot === wanted.lot)
      if (!lot) throw new RangeError(`Stores has no lot ${wanted.lot} of ${wanted.material}`)
      return { lotId: lot.id, material: '', lot: '' }
    })
    const input = BuiltPartInput.parse({
      ...story,
      id: part.id,
      partId: part.partId,
      lots: [...story.lots, ...lots],
    })
    await changeBuiltPart(actorOf('MO'), { ...input, version: part.version })
  }
}
