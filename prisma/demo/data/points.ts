import type { IsoDate } from '#lib/core/dates'
import { LocatingIssueInput, type LocatingPointInput } from '#lib/schema/mould'
import { idOf } from '../base/ids'
import type { Who } from './people'

export interface IssueData {
  readonly by: Who
  readonly issue: LocatingIssueInput
}

type Row = Omit<LocatingPointInput, 'notYetFixed'> & { readonly notYetFixed?: boolean }

const dowelRow = (areaName: string, tag: string, uMm: number, vMm: number, more: Partial<Row> = {}): Row => ({
  tag,
  areaName,
  kind: 'dowel',
  uMm,
  vMm,
  diameterMm: 8,
  bushDiameterMm: 20,
  through: true,
  isDatum: false,
  toleranceMm: 0.2,
  ...more,
})

/** A datum dowel with its closer zone. */
const datumRow = (areaName: string, tag: string, uMm: number, vMm: number): Row =>
  dowelRow(areaName, tag, uMm, vMm, { diameterMm: 10, bushDiameterMm: 24, isDatum: true, toleranceMm: 0.1 })

const insertRow = (areaName: string, tag: string, uMm: number, vMm: number, diameterMm = 6): Row =>
  dowelRow(areaName, tag, uMm, vMm, {
    kind: 'insert',
    diameterMm,
    bushDiameterMm: diameterMm + 4,
    through: false,
    toleranceMm: 0.3,
  })

const scribeRow = (areaName: string, tag: string, uMm: number, vMm: number): Row =>
  dowelRow(areaName, tag, uMm, vMm, {
    kind: 'scribe',
    diameterMm: 1,
    bushDiameterMm: null,
    through: false,
    toleranceMm: 0.5,
  })

function issue(
  mould: string,
  issuedOn: IsoDate,
  by: Who,
  name: string,
  note: string,
  rows: readonly Row[],
): IssueData {
  const points = rows.map((row) => ({ notYetFixed: false, ...row }))
  const id = idOf(`points/${mould}/${issuedOn}`)
  return {
    by,
    issue: LocatingIssueInput.parse({ id, mouldId: idOf(`mould/${mould}`), name, issuedOn, note, points }),
  }
}

/** Rows of an earlier issue with some put in place of those of the same tag. */
function revised(rows: readonly Row[], changes: readonly Row[]): Row[] {
  const changed = rows.map((row) => changes.find(({ tag }) => tag === row.tag) ?? row)
  return [...changed, ...changes.filter(({ tag }) => !rows.some((row) => row.tag === tag))]
}

const portFirst: readonly Row[] = [
  datumRow('floor', 'D01', 130, 360),
  dowelRow('floor', 'D02', 640, 235),
  dowelRow('floor', 'D03', 900, 130),
  dowelRow('floor', 'D04', 1180, 330),
  dowelRow('floor', 'D05', 1350, 215),
  datumRow('floor', 'D06', 1880, 360),
  dowelRow('side', 'D11', 330, 250),
  dowelRow('side', 'D12', 1480, 330),
  insertRow('side', 'I13', 2080, 150),
  scribeRow('side', 'S14', 900, 30),
  dowelRow('frame fwd', 'D21', 90, 130, { diameterMm: 10, bushDiameterMm: 22 }),
  dowelRow('frame fwd', 'D22', 270, 130, { diameterMm: 10, bushDiameterMm: 22 }),
  dowelRow('frame aft', 'D31', 100, 150, { diameterMm: 12, bushDiameterMm: 26 }),
  dowelRow('frame aft', 'D32', 260, 150, { diameterMm: 12, bushDiameterMm: 26 }),
]
const portSecond = revised(portFirst, [dowelRow('floor', 'D04', 1186, 330)])
const portThird = revised(portSecond, [
  dowelRow('floor', 'D02', 654, 242),
  dowelRow('floor', 'D07', 1560, 150, { notYetFixed: true, toleranceMm: null }),
])

const starboardFirst: readonly Row[] = [
  datumRow('floor', 'D01', 130, 110),
  dowelRow('floor', 'D02', 640, 235),
  dowelRow('floor', 'D03', 900, 340),
  dowelRow('floor', 'D04', 1180, 140),
  datumRow('floor', 'D06', 1880, 110),
  dowelRow('side', 'D11', 2070, 250),
  dowelRow('side', 'D12', 920, 330),
  insertRow('side', 'I13', 320, 150),
  dowelRow('frame fwd', 'D21', 90, 130, { diameterMm: 10, bushDiameterMm: 22 }),
  dowelRow('frame fwd', 'D22', 270, 130, { diameterMm: 10, bushDiameterMm: 22 }),
  dowelRow('frame aft', 'D31', 100, 150, { diameterMm: 12, bushDiameterMm: 26 }),
  dowelRow('frame aft', 'D32', 260, 150, { diameterMm: 12, bushDiameterMm: 26 }),
]
const starboardSecond = revised(starboardFirst, [dowelRow('floor', 'D04', 1186, 140)])
const starboardThird = revised(starboardSecond, [dowelRow('floor', 'D02', 654, 228)])

const deckRows: readonly Row[] = [
  datumRow('deck', 'D01', 220, 0),
  datumRow('deck', 'D02', 2700, 0),
  dowelRow('deck', 'D03', 820, 470),
  dowelRow('deck', 'D04', 820, -470),
  insertRow('deck', 'I05', 1350, 300),
  insertRow('deck', 'I06', 1350, -300),
  dowelRow('tail land', 'D11', 60, 55),
  dowelRow('tail land', 'D12', 660, 55),
]

const spatRows = (turn: (u: number) => number): readonly Row[] => [
  datumRow('outer', 'D01', turn(250), 0),
  dowelRow('outer', 'D02', turn(620), 0),
  insertRow('outer', 'I03', turn(380), 120),
  insertRow('outer', 'I04', turn(380), -120),
]

const trayRows: readonly Row[] = [
  datumRow('floor', 'D01', 90, 210),
  datumRow('floor', 'D02', 810, 210),
  dowelRow('floor', 'D03', 300, 272),
  dowelRow('floor', 'D04', 600, 120),
  insertRow('front wall', 'I11', 110, 75, 8),
  insertRow('front wall', 'I12', 310, 75, 8),
]

const tubRows: readonly Row[] = [
  datumRow('back', 'D01', 60, 0),
  dowelRow('back', 'D02', 310, 95),
  dowelRow('back', 'D03', 310, -95),
  dowelRow('seat', 'D11', 120, 80),
  dowelRow('seat', 'D12', 120, 320),
]

/** Every issue in the order in which it was given out: the numbers run over the whole shop. */
export const issues: readonly IssueData[] = [
  issue(
    'LH-P',
    '2023-09-12',
    'AW',
    'Hull points 2023/24',
    'First issue, off the CAD model of the 2024 car.',
    portFirst,
  ),
  issue(
    'LH-S',
    '2023-09-12',
    'AW',
    'Hull points 2023/24',
    'First issue, off the CAD model of the 2024 car.',
    starboardFirst,
  ),
  issue('LH-B', '2023-09-12', 'AW', 'Loose block 2023/24', '', [
    datumRow('block top', 'D01', 150, 150),
    dowelRow('block top', 'D02', 520, 150),
    insertRow('block front', 'I03', 150, 80, 8),
  ]),
  issue('UD-0', '2023-09-14', 'AW', 'Deck points as found', 'Copied from the drawing on the wall.', [
    datumRow('deck', 'D01', 220, 0),
    datumRow('deck', 'D02', 2680, 0),
  ]),
  issue('CR-1', '2023-09-15', 'AW', 'Canopy ring 2023/24', '', [
    datumRow('land fwd', 'D01', 72, 400),
    dowelRow('land aft', 'D02', 1048, 400),
    insertRow('land fwd', 'I03', 300, 687),
    insertRow('land fwd', 'I04', 300, 113),
  ]),
  issue('NC-1', '2023-09-15', 'AW', 'Nose cone 2023/24', '', [
    datumRow('upper', 'D01', 75, 150),
    datumRow('upper', 'D02', 75, -150),
    insertRow('lower', 'I03', 300, 0),
  ]),
  issue(
    'WS-L',
    '2023-09-18',
    'AW',
    'Spat, port, 2023/24',
    '',
    spatRows((u) => 820 - u),
  ),
  issue(
    'WS-R',
    '2023-09-18',
    'AW',
    'Spat, starboard, 2023/24',
    '',
    spatRows((u) => u),
  ),
  issue('ST-1', '2023-09-20', 'AW', 'Seat tub 2023/24', '', tubRows),
  issue('BT-1', '2023-10-20', 'AW', 'Battery tray 2023/24', '', trayRows),
  issue('MP-L', '2024-01-25', 'AW', 'Mirror pod, port', '', [
    dowelRow('pod', 'D01', 150, 0, { diameterMm: 5, bushDiameterMm: 10 }),
  ]),
  issue('MP-R', '2024-01-25', 'AW', 'Mirror pod, starboard', '', [
    dowelRow('pod', 'D01', 90, 0, { diameterMm: 5, bushDiameterMm: 10 }),
  ]),
  issue('RF-1', '2024-02-20', 'AW', 'Rear fairing 2023/24', '', [
    datumRow('port skin', 'D01', 1010, 160),
    dowelRow('port skin', 'D02', 300, 110),
    datumRow('starboard skin', 'D11', 110, 160),
    dowelRow('starboard skin', 'D12', 820, 110),
  ]),
  issue('UD-1', '2025-03-27', 'SL', 'Deck points 2025', 'For the raised tail.', deckRows),
  issue(
    'LH-P',
    '2025-09-10',
    'SL',
    'Hull points 2025/26',
    'D04 goes aft by 6 mm for the new strut foot.',
    portSecond,
  ),
  issue(
    'LH-S',
    '2025-09-10',
    'SL',
    'Hull points 2025/26',
    'D04 goes aft by 6 mm for the new strut foot.',
    starboardSecond,
  ),
  issue(
    'LH-P',
    '2026-10-28',
    'SL',
    'Hull points 2026/27',
    'D02 goes aft by 14 mm and inboard by 7 mm for the new steering rack. D07 is asked for and not yet fixed.',
    portThird,
  ),
  issue(
    'LH-S',
    '2026-10-28',
    'SL',
    'Hull points 2026/27',
    'D02 goes aft by 14 mm and inboard by 7 mm.',
    starboardThird,
  ),
  issue('BT-2', '2026-11-12', 'SL', 'Battery tray, wide', '', [
    datumRow('floor', 'D01', 90, 230),
    datumRow('floor', 'D02', 890, 230),
    dowelRow('floor', 'D03', 330, 340),
    dowelRow('floor', 'D04', 650, 120, { notYetFixed: true, toleranceMm: null }),
  ]),
]
