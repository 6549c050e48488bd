import * as z from 'zod'
import { SeasonInput } from '#lib/schema/season'
import { addSeason as insertSeason, changeSeason as updateSeason } from '#lib/store/seasons'
import { told } from './shop'
import { leads, verb } from './verb'

const seasonRules = { season_name_key: { field: 'name', says: 'Another season has this name' } }

export const addSeason = verb('seasons.add', leads, SeasonInput, (actor, input) =>
  told(insertSeason(actor, input), seasonRules),
)
export const changeSeason = verb(
  'seasons.change',
  leads,
  SeasonInput.safeExtend({ version: z.int() }),
  (actor, { version, ...input }) => told(updateSeason(actor, version, input), seasonRules),
)
