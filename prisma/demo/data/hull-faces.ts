import {
  type Band,
  bandInside,
  bandOutline,
  box,
  crossStrip,
  lowerStrip,
  otherHand,
  overturned,
  roundedBox,
  type Spot,
  upperStrip,
} from '../base/shapes'
import { axes, type FaceData, type FaceWords, face, keepOut, scribe, trim } from './face'

/** The side seen from the cavity of the port piece: aft end left, nose right. */
const side: Band = {
  lengthMm: 2400,
  lower: (u) => 75 * (u / 2400) ** 2.4,
  upper: (u) => 460 - 205 * (u / 2400) ** 1.7,
  roundRightMm: 130,
}

/** The port half of the floor: nose left, split edge on top. */
const floor: Band = {
  lengthMm: 2000,
  lower: (u) => 20 + 55 * ((u - 1000) / 1000) ** 4 + 95 * (1 - u / 2000) ** 3,
  upper: () => 470,
}

type Turn = (points: readonly Spot[]) => Spot[]
const asDrawn: Turn = (points) => [...points]

const measuredHull = { on: '2023-09-12', by: 'AW' } as const

interface Hand {
  readonly mould: string
  /** Turns what is drawn for the port piece into the piece's own hand. */
  readonly turnSide: Turn
  readonly turnFloor: Turn
  readonly sideFrame: Pick<FaceWords, 'originMm' | 'u' | 'v'>
  readonly floorFrame: Pick<FaceWords, 'originMm' | 'u' | 'v'>
  /** Where the frames begin to starboard, mm. */
  readonly frameY: number
  readonly aboutMm: number
}

function hullPiece(hand: Hand): FaceData[] {
  const { mould, turnSide, turnFloor, aboutMm, frameY } = hand
  return [
    face({
      mould,
      name: 'side',
      ...hand.sideFrame,
      boundary: turnSide(bandOutline(side)),
      lines: [
        trim('side trim', turnSide(bandInside(side, 15))),
        scribe(
          'station 1450',
          turnSide([
            [1400, 45],
            [1400, 360],
          ]),
        ),
      ],
      keepOuts: [
        keepOut('top flange', 'flange', turnSide(upperStrip(side, 45, 0, 2250))),
        keepOut('keel root', 'flange', turnSide(lowerStrip(side, 35, 0, 2250))),
        keepOut('rib 1', 'backing', turnSide(crossStrip(side, 500, 40, 50))),
        keepOut('rib 2', 'backing', turnSide(crossStrip(side, 1200, 40, 50))),
        keepOut('rib 3', 'backing', turnSide(crossStrip(side, 1900, 40, 50))),
      ],
      measured: {
        ...measuredHull,
        aboutMm,
        at: turnSide([
          [240, 220],
          [700, 210],
          [1050, 230],
          [1650, 190],
          [2150, 170],
        ]),
      },
    }),
    face({
      mould,
      name: 'floor',
      ...hand.floorFrame,
      boundary: turnFloor(bandOutline(floor)),
      lines: [
        trim('floor trim', turnFloor(bandInside(floor, 10))),
        scribe(
          'station 1450',
          turnFloor([
            [1000, 60],
            [1000, 455],
          ]),
        ),
      ],
      keepOuts: [
        keepOut('split flange root', 'flange', turnFloor(upperStrip(floor, 35))),
        keepOut('foot 750', 'backing', turnFloor(crossStrip(floor, 300, 50, 45))),
        keepOut('foot 1450', 'backing', turnFloor(crossStrip(floor, 1000, 50, 45))),
        keepOut('foot 2150', 'backing', turnFloor(crossStrip(floor, 1700, 50, 45))),
      ],
      measured: {
        ...measuredHull,
        aboutMm: aboutMm + 0.03,
        at: turnFloor([
          [160, 320],
          [520, 250],
          [780, 210],
          [1350, 350],
          [1850, 250],
        ]),
      },
    }),
    face({
      mould,
      name: 'frame fwd',
      originMm: [700, frameY, 60],
      u: axes.starboard,
      v: axes.up,
      boundary: roundedBox(0, 0, 360, 210, 30),
      lines: [trim('frame trim', roundedBox(12, 12, 348, 198, 22))],
      keepOuts: [keepOut('foot flange', 'flange', box(30, 0, 330, 32))],
      measured: {
        ...measuredHull,
        aboutMm: aboutMm + 0.05,
        at: [
          [60, 60],
          [300, 60],
          [180, 105],
          [60, 160],
          [300, 160],
        ],
      },
    }),
    face({
      mould,
      name: 'frame aft',
      originMm: [1900, frameY + 360, 60],
      u: axes.port,
      v: axes.up,
      boundary: roundedBox(0, 0, 360, 240, 30),
      lines: [trim('frame trim', roundedBox(12, 12, 348, 228, 22))],
      keepOuts: [keepOut('foot flange', 'flange', box(30, 0, 330, 32))],
      measured: {
        ...measuredHull,
        aboutMm: aboutMm + 0.04,
        at: [
          [60, 60],
          [300, 60],
          [180, 120],
          [60, 190],
          [300, 190],
        ],
      },
    }),
  ]
}

export const hullFaces: readonly FaceData[] = [
  ...hullPiece({
    mould: 'LH-P',
    turnSide: asDrawn,
    turnFloor: asDrawn,
    sideFrame: { originMm: [2850, -480, 40], u: axes.forward, v: axes.up },
    floorFrame: { originMm: [450, -470, 40], u: axes.aft, v: axes.starboard },
    frameY: -400,
    aboutMm: 6.08,
  }),
  ...hullPiece({
    mould: 'LH-S',
    turnSide: (points) => otherHand(points, 2400),
    turnFloor: (points) => overturned(points, 470),
    sideFrame: { originMm: [450, 480, 40], u: axes.aft, v: axes.up },
    floorFrame: { originMm: [450, 0, 40], u: axes.aft, v: axes.starboard },
    frameY: 40,
    aboutMm: 6.14,
  }),
  face({
    mould: 'LH-B',
    name: 'block top',
    originMm: [1150, -150, 230],
    u: axes.aft,
    v: axes.starboard,
    boundary: roundedBox(0, 0, 640, 300, 45),
    lines: [
      scribe('centreline', [
        [20, 150],
        [620, 150],
      ]),
    ],
    keepOuts: [keepOut('jack-screw pads', 'other', roundedBox(40, 120, 100, 180, 15))],
    measured: {
      on: '2023-09-12',
      by: 'AW',
      aboutMm: 4.66,
      at: [
        [120, 80],
        [120, 220],
        [320, 150],
        [520, 80],
        [520, 220],
      ],
    },
  }),
  face({
    mould: 'LH-B',
    name: 'block front',
    originMm: [1150, 150, 60],
    u: axes.port,
    v: axes.up,
    boundary: roundedBox(0, 0, 300, 160, 30),
    measured: {
      on: '2023-09-12',
      by: 'AW',
      aboutMm: 4.7,
      at: [
        [60, 45],
        [60, 115],
        [150, 80],
        [240, 45],
        [240, 115],
      ],
    },
  }),
]
