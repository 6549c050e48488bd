import * as z from 'zod'
import { isoDate, text, uuid } from './fields'

export const SeasonInput = z
  .object({
    id: uuid(),
    name: text('a name, for example 2026/27', 60),
    startsOn: isoDate(),
    endsOn: isoDate(),
  })
  .refine((season) => season.endsOn >= season.startsOn, {
    path: ['endsOn'],
    error: () => 'Ends before it starts',
  })
export type SeasonInput = z.output<typeof SeasonInput>
