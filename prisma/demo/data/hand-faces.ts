import {
  type Band,
  bandInside,
  bandOutline,
  crossStrip,
  otherHand,
  roundedBox,
  type Spot,
} from '../base/shapes'
import { axes, type FaceData, face, keepOut, scribe, trim } from './face'

/** Starboard hand, seen from the cavity: heel of the drop left, tail right. */
const spat: Band = {
  lengthMm: 820,
  lower: (u) => -(215 - 165 * (u / 820) ** 2),
  upper: (u) => 215 - 165 * (u / 820) ** 2,
  roundLeftMm: 250,
  roundRightMm: 45,
}

type Turn = (points: readonly Spot[], lengthMm: number) => Spot[]
const asDrawn: Turn = (points) => [...points]

function spatFaces(mould: string, turn: Turn): FaceData[] {
  const measured = { on: '2023-09-18', by: 'JR' } as const
  return [
    face({
      mould,
      name: 'outer',
      originMm: turn === asDrawn ? [1300, 640, 320] : [2120, -640, 320],
      u: turn === asDrawn ? axes.aft : axes.forward,
      v: axes.up,
      boundary: turn(bandOutline(spat), 820),
      lines: [
        trim('spat trim', turn(bandInside(spat, 12), 820)),
        scribe(
          'axle line',
          turn(
            [
              [250, -190],
              [250, 190],
            ],
            820,
          ),
        ),
      ],
      keepOuts: [keepOut('stiffener', 'backing', turn(crossStrip(spat, 560, 25, 25), 820))],
      measured: {
        ...measured,
        aboutMm: 3.26,
        at: turn(
          [
            [90, 0],
            [260, 130],
            [260, -130],
            [450, 0],
            [680, 10],
          ],
          820,
        ),
      },
    }),
    face({
      mould,
      name: 'lip',
      originMm: turn === asDrawn ? [1360, 560, 120] : [2060, -560, 120],
      u: turn === asDrawn ? axes.aft : axes.forward,
      v: turn === asDrawn ? axes.starboard : axes.port,
      boundary: roundedBox(0, 0, 700, 65, 15),
      lines: [trim('lip trim', roundedBox(8, 8, 692, 57, 10))],
      measured: {
        ...measured,
        aboutMm: 3.3,
        at: [
          [70, 32],
          [210, 32],
          [350, 32],
          [490, 32],
          [630, 32],
        ],
      },
    }),
  ]
}

const pod: Band = {
  lengthMm: 240,
  lower: (u) => -(58 - 40 * (u / 240) ** 1.8),
  upper: (u) => 58 - 40 * (u / 240) ** 1.8,
  roundLeftMm: 70,
  roundRightMm: 18,
  stations: 16,
}

function podFace(mould: string, turn: Turn): FaceData {
  return face({
    mould,
    name: 'pod',
    originMm: turn === asDrawn ? [1150, 520, 700] : [1390, -520, 700],
    u: turn === asDrawn ? axes.aft : axes.forward,
    v: axes.up,
    boundary: turn(bandOutline(pod), 240),
    lines: [trim('pod trim', turn(bandInside(pod, 6), 240))],
    gridCellMm: 25,
    measured: {
      on: '2024-01-25',
      by: 'JR',
      aboutMm: 1.88,
      at: turn(
        [
          [30, 0],
          [80, 30],
          [80, -30],
          [140, 0],
          [200, 5],
        ],
        240,
      ),
    },
  })
}

export const spatAndPodFaces: readonly FaceData[] = [
  ...spatFaces('WS-L', otherHand),
  ...spatFaces('WS-R', asDrawn),
  podFace('MP-L', otherHand),
  podFace('MP-R', asDrawn),
]
