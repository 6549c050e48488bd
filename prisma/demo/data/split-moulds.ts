import type { MouldSetInput, SetHardware } from '#lib/schema/mould-set'
import { idOf } from '../base/ids'

const line = (
  kind: SetHardware['kind'],
  count: number,
  name: string,
  size: string,
  joins: string,
  place: string,
  note = '',
): SetHardware => ({ kind, count, name, size, joins, place, note })

const box = 'Red box, hull trolley'

const hullHardware: readonly SetHardware[] = [
  line('flange', 2, 'Split flange on the centreline', '60 wide, 9 thick', 'LH-P, LH-S', 'on the pieces'),
  line('pin', 4, 'Locating pin, split flange', '10 h6 x 60', 'LH-P, LH-S', box, 'Out for any bag.'),
  line(
    'bolt',
    14,
    'Split bolt, with washer and nut',
    'M8 x 50, 8.8',
    'LH-P, LH-S',
    box,
    'Hand tight, then 12 Nm.',
  ),
  line('pin', 2, 'Locating pin, loose block', '8 h6 x 45', 'LH-B, LH-P', box),
  line('bolt', 2, 'Jack-screw', 'M8 x 80', 'LH-B', box, 'For getting the block out; greased.'),
  line('loose block', 1, 'Block of the wheel arch, LH-B', '700 x 360 x 240', 'LH-P, LH-S', 'Shelf C2'),
  line(
    'seal',
    2,
    'Silicone cord in the split groove',
    '5 mm, 2.7 m each',
    'LH-P, LH-S',
    'Bag cupboard',
    'New after 10 parts.',
  ),
  line('lifting', 4, 'Lifting eye', 'M12, 340 kg each', 'LH-P, LH-S', box),
  line('other', 1, 'Hull trolley with cradle', '2700 x 1300', '', 'Bay 1'),
]

export const mouldSets: readonly MouldSetInput[] = [
  {
    id: idOf('set/LH-SET'),
    code: 'LH-SET',
    name: 'Lower hull, three pieces',
    partId: idOf('part/LH'),
    massKg: 131,
    lengthMm: 2700,
    widthMm: 1290,
    heightMm: 780,
    liftingPoints:
      'Four M12 eyes in the egg-crate at stations 600 and 2100, both sides. Spreader bar; never by the split flange.',
    backing: 'Egg-crates of both halves bolted together under the floor by six M10.',
    assembly:
      'Close: halves on the trolley, cord in the groove, four pins by hand, bolts from the middle outwards, then the block on its two pins, last.\n' +
      'Open: block out on its jack-screws, pins out, bolts from the middle outwards, wooden wedges at the aft end of the flange, starboard half away first.',
    note: 'Pins out for any bag: they are the leak.',
    hardware: [...hullHardware],
  },
]
