import 'server-only'
import type { Actor } from '#lib/schema/actor'
import type { SeasonInput } from '#lib/schema/season'
import type { Transaction } from './db'
import { changeSeen, createOnce, dateColumn, dayOf } from './once'

const columnsOf = ({ name, startsOn, endsOn }: SeasonInput) => ({
  name,
  startsOn: dateColumn(startsOn),
  endsOn: dateColumn(endsOn),
})

async function read(tx: Transaction, id: string) {
  const row = await tx.season.findUnique({ where: { id } })
  return row && { ...row, startsOn: dayOf(row.startsOn), endsOn: dayOf(row.endsOn) }
}

export const addSeason = (actor: Actor, input: SeasonInput) =>
  createOnce(actor, 'season', input.id, input, (tx) =>
    tx.season.create({ data: { id: input.id, ...columnsOf(input) } }),
  )

export const changeSeason = (actor: Actor, sawVersion: number, input: SeasonInput) =>
  changeSeen(
    actor,
    'season',
    input.id,
    (tx) => read(tx, input.id),
    (tx) =>
      tx.season.updateMany({
        where: { id: input.id, version: sawVersion },
        data: { ...columnsOf(input), version: { increment: 1 } },
      }),
  )
