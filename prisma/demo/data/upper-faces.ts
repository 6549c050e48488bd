import {
  type Band,
  bandInside,
  bandOutline,
  box,
  crossStrip,
  otherHand,
  ringArc,
  roundedBox,
  type Spot,
} from '../base/shapes'
import { axes, type FaceData, face, keepOut, scribe, trim } from './face'

/** Half width of the deck along its length, nose left. */
function halfDeck(uMm: number, lengthMm: number): number {
  return 440 + 185 * Math.sin((Math.PI * uMm) / lengthMm)
}

function deckBand(lengthMm: number, tailMm: number): Band {
  return {
    lengthMm,
    lower: (u) => -halfDeck(u, lengthMm),
    upper: (u) => halfDeck(u, lengthMm),
    roundLeftMm: 520,
    roundRightMm: tailMm,
    stations: 24,
  }
}

const deck = deckBand(2900, 240)
const oldDeck = deckBand(2880, 300)

const deckFrame = { originMm: [300, 0, 620] as [number, number, number], u: axes.aft, v: axes.port }

const deckFaces: readonly FaceData[] = [
  face({
    mould: 'UD-1',
    name: 'deck',
    ...deckFrame,
    boundary: bandOutline(deck),
    lines: [
      trim('deck trim', bandInside(deck, 20)),
      scribe('centreline', [
        [60, 0],
        [2850, 0],
      ]),
      scribe('array edge', [
        [620, -430],
        [2480, -430],
        [2480, 430],
        [620, 430],
        [620, -430],
      ]),
    ],
    keepOuts: [
      keepOut('crossbar 1', 'backing', crossStrip(deck, 700, 60, 40)),
      keepOut('crossbar 2', 'backing', crossStrip(deck, 1500, 60, 40)),
      keepOut('crossbar 3', 'backing', crossStrip(deck, 2250, 60, 40)),
      keepOut('air port', 'seal-land', roundedBox(1060, -45, 1150, 45, 20)),
    ],
    gridCellMm: 100,
    measured: {
      on: '2025-03-27',
      by: 'JR',
      aboutMm: 4.7,
      at: [
        [350, 0],
        [1000, 420],
        [1000, -420],
        [1900, 0],
        [2600, 150],
      ],
    },
  }),
  face({
    mould: 'UD-1',
    name: 'tail land',
    originMm: [3200, 360, 600],
    u: axes.port,
    v: axes.up,
    boundary: roundedBox(0, 0, 720, 110, 20),
    lines: [trim('tail trim', roundedBox(10, 10, 710, 100, 14))],
    measured: {
      on: '2025-03-27',
      by: 'JR',
      aboutMm: 4.72,
      at: [
        [90, 55],
        [220, 55],
        [360, 55],
        [500, 55],
        [630, 55],
      ],
    },
  }),
  face({
    mould: 'UD-0',
    name: 'deck',
    ...deckFrame,
    boundary: bandOutline(oldDeck),
    lines: [
      trim('deck trim', bandInside(oldDeck, 20)),
      scribe('centreline', [
        [60, 0],
        [2830, 0],
      ]),
    ],
    keepOuts: [
      keepOut('crossbar 1', 'backing', crossStrip(oldDeck, 700, 60, 40)),
      keepOut('crossbar 2', 'backing', crossStrip(oldDeck, 1500, 60, 40)),
      keepOut('crossbar 3', 'backing', crossStrip(oldDeck, 2250, 60, 40)),
    ],
    gridCellMm: 100,
    measured: {
      on: '2023-09-14',
      by: 'AW',
      aboutMm: 4.8,
      at: [
        [350, 0],
        [1000, 420],
        [1000, -420],
        [1900, 0],
        [2600, 150],
      ],
    },
  }),
]

const ringPort: Spot[] = ringArc([540, 380], [430, 270], 92, 268, [560, 400])
const ringStarboard: Spot[] = ringArc([540, 380], [430, 270], -88, 88, [560, 400])

const ringFaces: readonly FaceData[] = [
  face({
    mould: 'CR-1',
    name: 'land fwd',
    originMm: [900, -400, 650],
    u: axes.aft,
    v: axes.starboard,
    boundary: ringPort,
    lines: [scribe('seal line', ringArc([490, 330], [489, 329], 96, 264, [560, 400]).slice(0, 30))],
    keepOuts: [keepOut('pad 1', 'backing', box(30, 380, 115, 420))],
    measured: {
      on: '2023-09-15',
      by: 'JR',
      aboutMm: 4.64,
      at: [
        [80, 440],
        [160, 620],
        [160, 180],
        [380, 720],
        [380, 90],
      ],
    },
  }),
  face({
    mould: 'CR-1',
    name: 'land aft',
    originMm: [900, -400, 650],
    u: axes.aft,
    v: axes.starboard,
    boundary: ringStarboard,
    lines: [scribe('seal line', ringArc([490, 330], [489, 329], -84, 84, [560, 400]).slice(0, 30))],
    keepOuts: [keepOut('pad 2', 'backing', box(1005, 380, 1090, 420))],
    measured: {
      on: '2023-09-15',
      by: 'JR',
      aboutMm: 4.66,
      at: [
        [1040, 440],
        [960, 620],
        [960, 180],
        [740, 720],
        [740, 90],
      ],
    },
  }),
]

const nose: Band = {
  lengthMm: 640,
  lower: (u) => -(245 - 150 * (u / 640) ** 1.6),
  upper: (u) => 245 - 150 * (u / 640) ** 1.6,
  roundRightMm: 110,
}

const noseMeasured = {
  on: '2023-09-15',
  by: 'AW',
  at: [
    [90, 0],
    [220, 110],
    [220, -110],
    [380, 0],
    [520, 20],
  ] as Spot[],
} as const

const noseFaces: readonly FaceData[] = [
  face({
    mould: 'NC-1',
    name: 'upper',
    originMm: [660, 0, 420],
    u: axes.forward,
    v: axes.starboard,
    boundary: bandOutline(nose),
    lines: [
      trim('rim', bandInside(nose, 14)),
      scribe('centreline', [
        [20, 0],
        [620, 0],
      ]),
    ],
    keepOuts: [
      keepOut('rim flange', 'flange', box(0, -235, 40, 235)),
      keepOut('rib', 'backing', crossStrip(nose, 470, 30, 30)),
    ],
    measured: { ...noseMeasured, aboutMm: 4.63 },
  }),
  face({
    mould: 'NC-1',
    name: 'lower',
    originMm: [660, 0, 180],
    u: axes.forward,
    v: axes.port,
    boundary: bandOutline(nose),
    lines: [trim('rim', bandInside(nose, 14))],
    keepOuts: [keepOut('rim flange', 'flange', box(0, -235, 40, 235))],
    measured: { ...noseMeasured, aboutMm: 4.6 },
  }),
]

const fairing: Band = {
  lengthMm: 1120,
  lower: (u) => 40 * (u / 1120) ** 2,
  upper: (u) => 330 - 180 * (u / 1120) ** 1.5,
  roundRightMm: 90,
}

const fairingMeasured = { on: '2024-02-20', by: 'JR', aboutMm: 3.27 } as const
const fairingSpots: Spot[] = [
  [120, 160],
  [350, 90],
  [350, 220],
  [650, 150],
  [950, 110],
]

const fairingFaces: readonly FaceData[] = [
  face({
    mould: 'RF-1',
    name: 'port skin',
    originMm: [4320, -300, 200],
    u: axes.forward,
    v: axes.up,
    boundary: otherHand(bandOutline(fairing), 1120),
    lines: [trim('skin trim', otherHand(bandInside(fairing, 12), 1120))],
    keepOuts: [keepOut('rib', 'backing', otherHand(crossStrip(fairing, 560, 30, 30), 1120))],
    measured: { ...fairingMeasured, at: otherHand(fairingSpots, 1120) },
  }),
  face({
    mould: 'RF-1',
    name: 'starboard skin',
    originMm: [3200, 300, 200],
    u: axes.aft,
    v: axes.up,
    boundary: bandOutline(fairing),
    lines: [trim('skin trim', bandInside(fairing, 12))],
    keepOuts: [keepOut('rib', 'backing', crossStrip(fairing, 560, 30, 30))],
    measured: { ...fairingMeasured, at: fairingSpots },
  }),
]

export const upperFaces: readonly FaceData[] = [...deckFaces, ...ringFaces, ...noseFaces, ...fairingFaces]
