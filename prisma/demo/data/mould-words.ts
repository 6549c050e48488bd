import type { MouldInput } from '#lib/schema/mould'
import { idOf } from '../base/ids'

type Words = Omit<MouldInput, 'id' | 'partId' | 'patternId' | 'setId' | 'stackId'> & {
  readonly part: string
  readonly pattern: string
  readonly set?: string
  readonly stack: string
}

/** A mould with its ids found by the codes of what belongs to it. */
export function mould({ part, pattern, set, stack, ...rest }: Words): MouldInput {
  return {
    id: idOf(`mould/${rest.code}`),
    partId: idOf(`part/${part}`),
    patternId: idOf(`pattern/${pattern}`),
    setId: set ? idOf(`set/${set}`) : null,
    stackId: idOf(`stack/${stack}`),
    ...rest,
  }
}

/** What most of the moulds have in common. */
export const usual = {
  pieceNo: null,
  hand: 'none',
  patternState: 'As first machined.',
  owner: 'Lanternfish Solar',
  liftingPoints: '',
  heatInUseC: 160,
  heatFreeC: 200,
  heatBondedC: 200,
  tgDryC: 203,
  tgWetC: 178,
  tgNote: 'Dry: witness coupon after post-cure to 190 °C, onset. Wet: from memory.',
  partCureC: 120,
  canBeMadeAgain: true,
  doNots: 'No steel on the face. No knocking on the back: it stars the surface ply.',
} as const
