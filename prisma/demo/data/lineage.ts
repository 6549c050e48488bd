import type { PartInput } from '#lib/schema/mould'
import { idOf } from '../base/ids'

const part = (code: string, name: string, note = ''): PartInput => ({
  id: idOf(`part/${code}`),
  code,
  name,
  note,
})

export const parts: readonly PartInput[] = [
  part('LH', 'Lower hull', 'One part off three pieces: port, starboard and the loose block.'),
  part('UD', 'Upper deck', 'Carries the array; cells are bonded after trimming.'),
  part('CR', 'Canopy ring'),
  part('NC', 'Nose cone'),
  part('RF', 'Rear fairing', 'Two skins off one mould.'),
  part('WSP', 'Wheel spat, port'),
  part('WSS', 'Wheel spat, starboard'),
  part('ST', 'Seat tub', 'Sandwich: two cures for one part.'),
  part('BT', 'Battery tray'),
  part('MPP', 'Mirror pod, port'),
  part('MPS', 'Mirror pod, starboard'),
]
