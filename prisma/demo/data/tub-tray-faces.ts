import {
  type Band,
  bandInside,
  bandOutline,
  box,
  crossStrip,
  otherHand,
  roundedBox,
  type Spot,
} from '../base/shapes'
import { axes, type FaceData, face, keepOut, scribe, trim } from './face'

const tubBack: Band = {
  lengthMm: 640,
  lower: (u) => -(225 - 45 * (u / 640)),
  upper: (u) => 225 - 45 * (u / 640),
  roundRightMm: 120,
}

const tubSide: Band = {
  lengthMm: 560,
  lower: () => 0,
  upper: (u) => 235 - 90 * (u / 560) ** 2,
  roundRightMm: 60,
}

const tubMeasured = { on: '2023-09-20', by: 'AW' } as const

const tubFaces: readonly FaceData[] = [
  face({
    mould: 'ST-1',
    name: 'back',
    originMm: [1750, 0, 220],
    u: axes.up,
    v: axes.starboard,
    boundary: bandOutline(tubBack),
    lines: [
      trim('top edge', bandInside(tubBack, 12)),
      scribe('shoulder line', [
        [420, -180],
        [420, 180],
      ]),
    ],
    keepOuts: [keepOut('upper frame', 'backing', crossStrip(tubBack, 520, 30, 30))],
    measured: {
      ...tubMeasured,
      aboutMm: 3.3,
      at: [
        [90, 0],
        [230, 140],
        [230, -140],
        [400, 60],
        [570, 0],
      ],
      // An old fill low on the port side, older than the book.
      readMm: [3.28, 3.31, 3.66, 3.27, 3.3],
    },
  }),
  face({
    mould: 'ST-1',
    name: 'seat',
    originMm: [1250, -200, 180],
    u: axes.aft,
    v: axes.starboard,
    boundary: roundedBox(0, 0, 480, 400, 60),
    lines: [
      scribe('centreline', [
        [20, 200],
        [460, 200],
      ]),
    ],
    keepOuts: [keepOut('lower frame', 'backing', box(215, 40, 245, 360))],
    measured: {
      ...tubMeasured,
      aboutMm: 3.29,
      at: [
        [90, 90],
        [90, 310],
        [180, 200],
        [390, 90],
        [390, 310],
      ],
    },
  }),
  face({
    mould: 'ST-1',
    name: 'side port',
    originMm: [1780, -220, 180],
    u: axes.forward,
    v: axes.up,
    boundary: bandOutline(tubSide),
    measured: {
      ...tubMeasured,
      aboutMm: 3.25,
      at: [
        [80, 110],
        [220, 60],
        [220, 170],
        [380, 100],
        [480, 90],
      ],
    },
  }),
  face({
    mould: 'ST-1',
    name: 'side starboard',
    originMm: [1220, 220, 180],
    u: axes.aft,
    v: axes.up,
    boundary: otherHand(bandOutline(tubSide), 560),
    measured: {
      ...tubMeasured,
      aboutMm: 3.27,
      at: otherHand(
        [
          [80, 110],
          [220, 60],
          [220, 170],
          [380, 100],
          [480, 90],
        ],
        560,
      ),
    },
  }),
]

const wallMeasured = (aboutMm: number) =>
  ({
    aboutMm,
    at: [
      [60, 40],
      [60, 110],
      [210, 75],
      [360, 40],
      [360, 110],
    ] as Spot[],
  }) as const

const trayFaces: readonly FaceData[] = [
  face({
    mould: 'BT-1',
    name: 'floor',
    originMm: [1200, -210, 90],
    u: axes.aft,
    v: axes.starboard,
    boundary: roundedBox(0, 0, 900, 420, 40),
    lines: [
      trim('tray edge', roundedBox(10, 10, 890, 410, 32)),
      scribe('module split', [
        [450, 20],
        [450, 400],
      ]),
    ],
    keepOuts: [
      keepOut('port flange', 'flange', box(40, 0, 860, 38)),
      keepOut('starboard flange', 'flange', box(40, 382, 860, 420)),
    ],
    measured: {
      on: '2023-10-20',
      by: 'JR',
      aboutMm: 3.31,
      at: [
        [120, 100],
        [120, 320],
        [450, 240],
        [780, 100],
        [780, 320],
      ],
    },
  }),
  face({
    mould: 'BT-1',
    name: 'front wall',
    originMm: [1200, -210, 100],
    u: axes.starboard,
    v: axes.up,
    boundary: roundedBox(0, 0, 420, 150, 18),
    measured: { on: '2023-10-20', by: 'JR', ...wallMeasured(3.28) },
  }),
  face({
    mould: 'BT-1',
    name: 'rear wall',
    originMm: [2100, 210, 100],
    u: axes.port,
    v: axes.up,
    boundary: roundedBox(0, 0, 420, 150, 18),
    measured: { on: '2023-10-20', by: 'JR', ...wallMeasured(3.29) },
  }),
  face({
    mould: 'BT-2',
    name: 'floor',
    originMm: [1200, -230, 90],
    u: axes.aft,
    v: axes.starboard,
    boundary: roundedBox(0, 0, 980, 460, 40),
    lines: [
      trim('tray edge', roundedBox(10, 10, 970, 450, 32)),
      scribe('module split', [
        [490, 20],
        [490, 440],
      ]),
    ],
    measured: {
      on: '2026-11-18',
      by: 'RN',
      aboutMm: 3.26,
      at: [
        [120, 110],
        [120, 350],
        [490, 260],
        [860, 110],
        [860, 350],
      ],
    },
  }),
  face({
    mould: 'BT-2',
    name: 'front wall',
    originMm: [1200, -230, 100],
    u: axes.starboard,
    v: axes.up,
    boundary: roundedBox(0, 0, 460, 150, 18),
    measured: { on: '2026-11-18', by: 'RN', ...wallMeasured(3.24) },
  }),
]

export const tubAndTrayFaces: readonly FaceData[] = [...tubFaces, ...trayFaces]
