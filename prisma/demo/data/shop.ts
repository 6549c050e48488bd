import type { FirstLead } from '#lib/schema/people'
import { timeZone } from '../base/calendar'

export const shopName = 'Lanternfish Solar (invented)'

export const shopSettings: Pick<FirstLead, 'shopName' | 'timeZone' | 'currency'> = {
  shopName,
  timeZone,
  currency: 'EUR',
}

export const address =
  'Demo data, invented: no such workshop, car or person exists. Workshop 4, Lantern Yard, Example Town. ' +
  'A small university workshop that builds an endurance solar car; three seasons of history and the one ahead.'

export const seasons = [
  { name: '2023/24', startsOn: '2023-09-01', endsOn: '2024-08-31' },
  { name: '2024/25', startsOn: '2024-09-01', endsOn: '2025-08-31' },
  { name: '2025/26', startsOn: '2025-09-01', endsOn: '2026-08-31' },
  { name: '2026/27', startsOn: '2026-09-01', endsOn: '2027-08-31' },
] as const
