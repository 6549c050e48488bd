import type { IsoDate } from '#lib/core/dates'
import type { PictureKind } from '#lib/schema/picture'
import { burntTray, hullFloor, patternSection, tornBush } from './drawn-pictures'
import type { Who } from './people'

/** A picture of the demo shop, drawn by code: no camera was ever there. */
export interface DemoPicture {
  readonly key: string
  readonly on: 'mould' | 'pattern'
  readonly code: string
  readonly kind: PictureKind
  readonly svg: string
  readonly takenOn: IsoDate
  readonly by: Who
  readonly view: string
  readonly caption: string
  /** The damage of this day in the mould's diary, beside which it stands. */
  readonly besideDamageOn: IsoDate | null
}

const floorView = 'floor from the front'

export const demoPictures: readonly DemoPicture[] = [
  {
    key: 'LH-P/floor/2024',
    on: 'mould',
    code: 'LH-P',
    kind: 'photo',
    svg: hullFloor({ patched: false, scratched: false }),
    takenOn: '2024-09-09',
    by: 'MO',
    view: floorView,
    caption: 'After the season, stripped (drawn, invented)',
    besideDamageOn: null,
  },
  {
    key: 'LH-P/D05/2025',
    on: 'mould',
    code: 'LH-P',
    kind: 'photo',
    svg: tornBush(),
    takenOn: '2025-05-02',
    by: 'TA',
    view: '',
    caption: 'Bush of D05 turned out, rule in centimetres (drawn, invented)',
    besideDamageOn: '2025-05-02',
  },
  {
    key: 'LH-P/floor/2025',
    on: 'mould',
    code: 'LH-P',
    kind: 'photo',
    svg: hullFloor({ patched: true, scratched: false }),
    takenOn: '2025-09-08',
    by: 'MO',
    view: floorView,
    caption: 'Patch 1 at D05 after its first pulls (drawn, invented)',
    besideDamageOn: null,
  },
  {
    key: 'LH-P/floor/2026',
    on: 'mould',
    code: 'LH-P',
    kind: 'photo',
    svg: hullFloor({ patched: true, scratched: true }),
    takenOn: '2026-09-14',
    by: 'MO',
    view: floorView,
    caption: 'Patch 1 holds; scratch from the trimming knife (drawn, invented)',
    besideDamageOn: null,
  },
  {
    key: 'BT-1/heater/2026',
    on: 'mould',
    code: 'BT-1',
    kind: 'photo',
    svg: burntTray(),
    takenOn: '2026-11-09',
    by: 'TA',
    view: '',
    caption: 'Burnt at the heater plug (drawn, invented)',
    besideDamageOn: '2026-11-09',
  },
  {
    key: 'LH-PAT/section',
    on: 'pattern',
    code: 'LH-PAT',
    kind: 'drawing',
    svg: patternSection(),
    takenOn: '2023-10-02',
    by: 'AW',
    view: '',
    caption: 'Section of the pattern with its pins (invented)',
    besideDamageOn: null,
  },
]
