import type { MouldSetInput, PartInput, PatternInput } from '#lib/schema/mould'
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

const pattern = (words: Omit<PatternInput, 'id'>): PatternInput => ({
  id: idOf(`pattern/${words.code}`),
  ...words,
})

const good = { available: true, canBeMadeAgain: true } as const
const store = 'Pattern store, Hall B'

export const patterns: readonly PatternInput[] = [
  pattern({
    code: 'LH-PAT',
    name: 'Lower hull, whole',
    condition: 'Epoxy board on a steel frame. Pins D01 to D06 a side in place; checked October 2026.',
    place: store,
    ...good,
    note: 'Split plane carried by a removable board.',
  }),
  pattern({
    code: 'LB-PAT',
    name: 'Loose block of the lower hull',
    condition: 'Epoxy board, good.',
    place: store,
    ...good,
    note: '',
  }),
  pattern({
    code: 'UD-PAT',
    name: 'Upper deck',
    condition: 'Re-machined March 2025: tail raised by 12 mm, array land kept. UD-0 no longer fits it.',
    place: store,
    ...good,
    note: 'As first machined (2021) it gave UD-0.',
  }),
  pattern({
    code: 'CR-PAT',
    name: 'Canopy ring',
    condition: 'Epoxy board, good.',
    place: store,
    ...good,
    note: '',
  }),
  pattern({
    code: 'NC-PAT',
    name: 'Nose cone',
    condition: 'Gone: hand-shaped foam plug, broken when the mould was released in 2023.',
    place: '',
    available: false,
    canBeMadeAgain: false,
    note: "Can't be made again: there was never a CAD model of it. NC-1 is the only record of the shape.",
  }),
  pattern({
    code: 'RF-PAT',
    name: 'Rear fairing',
    condition: 'Epoxy board, an edge chipped aft port; filled.',
    place: store,
    ...good,
    note: '',
  }),
  pattern({
    code: 'WS-PAT-P',
    name: 'Wheel spat, port',
    condition: 'Epoxy board, good.',
    place: store,
    ...good,
    note: '',
  }),
  pattern({
    code: 'WS-PAT-S',
    name: 'Wheel spat, starboard',
    condition: 'Epoxy board, good; sealed anew September 2025.',
    place: store,
    ...good,
    note: '',
  }),
  pattern({
    code: 'ST-PAT',
    name: 'Seat tub',
    condition: 'PU board, surface soft under the seat: no second mould at 60 °C without a new seal.',
    place: store,
    available: false,
    canBeMadeAgain: true,
    note: 'CAD model kept; to be machined again when a second mould is wanted.',
  }),
  pattern({
    code: 'BT-PAT',
    name: 'Battery tray',
    condition: 'Machined aluminium, good.',
    place: 'Bench 2',
    ...good,
    note: 'Out of store for patch 1 of BT-1.',
  }),
  pattern({
    code: 'BT-PAT-W',
    name: 'Battery tray, wide',
    condition: 'Epoxy board, new October 2026.',
    place: 'Oven room',
    ...good,
    note: 'For the wide pack of 2026/27. BT-2 came off it in November 2026.',
  }),
  pattern({
    code: 'MP-PAT',
    name: 'Mirror pods, both hands',
    condition: 'Epoxy board, good.',
    place: store,
    ...good,
    note: '',
  }),
]

export const mouldSets: readonly MouldSetInput[] = [
  {
    id: idOf('set/LH-SET'),
    code: 'LH-SET',
    name: 'Lower hull, three pieces',
    note: 'Split on the centreline: 14 bolts M8, 4 pins of 10 mm. The loose block goes in last, on two pins of 8 mm. Pins out for any bag.',
  },
]
