import type { IsoDate } from '#lib/core/dates'
import type { PatchSketch } from '#lib/schema/patch'
import { idOf } from '../base/ids'
import type { Who } from './people'

/** One version of a patch plan with what became of it; days and people of the story. */
export interface PlanStory {
  readonly mould: string
  readonly area: string
  readonly number: number
  readonly version: number
  readonly title: string
  readonly reason: string
  readonly note: string
  readonly sketched: { readonly on: IsoDate; readonly by: Who }
  readonly sketch: Pick<PatchSketch, 'side' | 'edge' | 'taper' | 'opening' | 'pliesFromFace' | 'coverPlies'>
  readonly putBy?: { readonly on: IsoDate; readonly by: Who; readonly reason: string }
  readonly signed?: {
    readonly on: IsoDate
    readonly by: Who
    /** Why each look was accepted, by the code of the finding. */
    readonly becauses: Readonly<Record<string, string>>
  }
  readonly bench?: { readonly on: IsoDate; readonly by: Who }
  readonly ticked?: { readonly by: Who; readonly second: Who; readonly stretches: readonly TickStretch[] }
  readonly laid?: { readonly on: IsoDate; readonly by: Who }
  readonly proved?: { readonly on: IsoDate; readonly by: Who }
}

/** Job lines up to and with the one of this code were ticked on these days, about as many on each; null: all of them. */
export interface TickStretch {
  readonly days: readonly IsoDate[]
  readonly through: string | null
}

export const patchKey = (mould: string, number: number) => `${mould}/patch ${number}`
export const patchIdOf = (mould: string, number: number) => idOf(patchKey(mould, number))
export const planIdOf = (mould: string, number: number, version: number) =>
  idOf(`${patchKey(mould, number)}/plan ${version}`)
export const laidKey = (mould: string, number: number) => `${patchKey(mould, number)}/laid`
export const provedKey = (mould: string, number: number) => `${patchKey(mould, number)}/proved`

const here = (u: number, v: number, turnDeg = 0) => ({
  shiftMm: [u, v] as [number, number],
  turnDeg,
  mirrored: false,
})
const twentyToOne = { ratio: 20, mmPerPly: 12.7, use: 'ratio' } as const
const freeStanding =
  'Post-cured free-standing on the egg-crate, no bag and no pressure on it, supported all over; 0.3 °C/min.'

export const plans: readonly PlanStory[] = [
  {
    mould: 'LH-S',
    area: 'side',
    number: 1,
    version: 1,
    title: 'Torn side after the stuck hull',
    reason:
      'LH-25-06 stuck at the aft end of the side; the surface ply and two bulk plies came away on 60 mm.',
    note: 'Delaminated a little beyond what is seen: tap it out after the cut.',
    sketched: { on: '2025-02-17', by: 'SL' },
    sketch: {
      side: 'pattern-back',
      edge: 'scarf',
      taper: twentyToOne,
      opening: { kind: 'circle', diameterMm: 64, placement: here(1510, 211) },
      pliesFromFace: null,
      coverPlies: [],
    },
    signed: {
      on: '2025-02-18',
      by: 'MO',
      becauses: { 'post-cure-over-in-use-limit': freeStanding },
    },
    bench: { on: '2025-02-19', by: 'JR' },
    ticked: {
      by: 'JR',
      second: 'TA',
      stretches: [
        {
          through: 'lift',
          days: ['2025-02-19', '2025-02-20', '2025-02-24', '2025-02-26', '2025-03-03', '2025-03-06'],
        },
        { through: 'leak-hot', days: ['2025-03-10', '2025-03-11', '2025-03-11'] },
        { through: 'coats', days: ['2025-03-12', '2025-03-13', '2025-03-13'] },
        { through: null, days: ['2025-03-14', '2025-03-20'] },
      ],
    },
    laid: { on: '2025-03-06', by: 'JR' },
    proved: { on: '2025-03-20', by: 'MO' },
  },
  {
    mould: 'LH-P',
    area: 'floor',
    number: 1,
    version: 1,
    title: 'Opening round D05',
    reason: 'The bush of D05 was turned out with the part and took the laminate round it along.',
    note: '',
    sketched: { on: '2025-05-05', by: 'SL' },
    sketch: {
      side: 'pattern-back',
      edge: 'scarf',
      taper: twentyToOne,
      opening: { kind: 'circle', diameterMm: 56, placement: here(1350, 215) },
      pliesFromFace: null,
      coverPlies: [],
    },
    signed: {
      on: '2025-05-06',
      by: 'MO',
      becauses: {
        'dowel-in-opening': 'D05 is why it is cut; set anew off the pattern pin.',
        'post-cure-over-in-use-limit': freeStanding,
      },
    },
    bench: { on: '2025-05-07', by: 'TA' },
    ticked: {
      by: 'TA',
      second: 'JR',
      stretches: [
        {
          through: 'lift',
          days: ['2025-05-07', '2025-05-08', '2025-05-09', '2025-05-12', '2025-05-14', '2025-05-20'],
        },
        { through: 'leak-hot', days: ['2025-05-21'] },
        { through: 'coats', days: ['2025-05-22'] },
        { through: null, days: ['2025-05-23', '2025-05-28'] },
      ],
    },
    laid: { on: '2025-05-20', by: 'TA' },
    proved: { on: '2025-05-28', by: 'MO' },
  },
  {
    mould: 'NC-1',
    area: 'upper',
    number: 1,
    version: 1,
    title: 'Crack beside the centreline',
    reason: 'A wedge slipped off the rim; the crack goes through and leaks hot.',
    note: 'No pattern: the splash is the caul. Keep it, with the two dowels on it.',
    sketched: { on: '2026-10-12', by: 'SL' },
    sketch: {
      side: 'place-back',
      edge: 'scarf',
      taper: twentyToOne,
      opening: {
        kind: 'rounded-rectangle',
        lengthMm: 76,
        widthMm: 40,
        cornerRadiusMm: 20,
        placement: here(235, 55, 20),
      },
      pliesFromFace: null,
      coverPlies: [],
    },
    signed: {
      on: '2026-10-13',
      by: 'MO',
      becauses: {
        'post-cure-over-in-use-limit': freeStanding,
      },
    },
    bench: { on: '2026-10-14', by: 'RN' },
    ticked: {
      by: 'RN',
      second: 'TA',
      stretches: [
        {
          through: 'post-cure',
          days: ['2026-10-14', '2026-10-15', '2026-10-16', '2026-10-19', '2026-10-26', '2026-10-30'],
        },
        { through: 'leak-hot', days: ['2026-11-02', '2026-11-03', '2026-11-03'] },
        { through: 'coats', days: ['2026-11-04', '2026-11-05', '2026-11-05'] },
        { through: 'tape-test', days: ['2026-11-06'] },
      ],
    },
    laid: { on: '2026-10-30', by: 'RN' },
  },
  {
    mould: 'LH-P',
    area: 'floor',
    number: 2,
    version: 1,
    title: 'Opening round D02',
    reason: 'Issue of October 2026 moves D02 by 15.7 mm: old and new hole run together with their bushes.',
    note: '',
    sketched: { on: '2026-10-30', by: 'SL' },
    sketch: {
      side: 'pattern-back',
      edge: 'steps',
      taper: { ratio: 20, mmPerPly: 8, use: 'mm-per-ply' },
      opening: { kind: 'circle', diameterMm: 70, placement: here(647, 238.5) },
      pliesFromFace: null,
      coverPlies: [],
    },
    putBy: {
      on: '2026-11-03',
      by: 'MO',
      reason:
        '8 mm a ply is far below 20:1, and the floor is wedged at demoulding. Drawn again as a scarf of 20:1.',
    },
  },
  {
    mould: 'LH-P',
    area: 'floor',
    number: 2,
    version: 2,
    title: 'Opening round D02',
    reason: 'Issue of October 2026 moves D02 by 15.7 mm: old and new hole run together with their bushes.',
    note: 'Holds the old hole and the new one. To be cut in the week of 7 December, after the first two hulls are out.',
    sketched: { on: '2026-11-04', by: 'SL' },
    sketch: {
      side: 'pattern-back',
      edge: 'scarf',
      taper: twentyToOne,
      opening: {
        kind: 'rounded-rectangle',
        lengthMm: 78,
        widthMm: 60,
        cornerRadiusMm: 30,
        placement: here(647, 238.5, 26.6),
      },
      pliesFromFace: null,
      coverPlies: [],
    },
    signed: {
      on: '2026-11-06',
      by: 'MO',
      becauses: {
        'dowel-in-opening':
          'D02 is why it is cut; the new bush is set off the pattern pin, moved in October.',
        'post-cure-over-in-use-limit': freeStanding,
      },
    },
  },
  {
    mould: 'BT-1',
    area: 'floor',
    number: 1,
    version: 1,
    title: 'Burn at the heater plug',
    reason: 'The heater plug lay against the floor for a whole cure: resin burnt out over 50 mm.',
    note: 'Steps, since the aluminium pattern takes the router guide.',
    sketched: { on: '2026-11-10', by: 'SL' },
    sketch: {
      side: 'pattern-back',
      edge: 'steps',
      taper: { ratio: 20, mmPerPly: 12.7, use: 'longer' },
      opening: { kind: 'circle', diameterMm: 64, placement: here(300, 269) },
      pliesFromFace: null,
      coverPlies: [{ materialId: idOf('material/S200'), directionDeg: 45 }],
    },
    signed: {
      on: '2026-11-11',
      by: 'MO',
      becauses: {
        'dowel-in-opening': 'D03 goes; set off the pin of the aluminium pattern.',
        'post-cure-over-in-use-limit': freeStanding,
        'post-cure-near-bonded-limit': 'The bushes come out before the post-cure and go in after it.',
        'footprint-on-flange': 'Carried up the starboard flange and trimmed; the flange is rebuilt there.',
      },
    },
    bench: { on: '2026-11-12', by: 'TA' },
    ticked: {
      by: 'TA',
      second: 'RN',
      stretches: [{ through: 'cut', days: ['2026-11-12', '2026-11-13', '2026-11-18'] }],
    },
  },
  {
    mould: 'ST-1',
    area: 'back',
    number: 1,
    version: 1,
    title: 'Surface plies gone dull, left shoulder',
    reason: 'Dull spot of 40 by 25 mm that grips; it shows on every tub since May.',
    note: 'Surface ply and one bulk ply only.',
    sketched: { on: '2026-11-16', by: 'MO' },
    sketch: {
      side: 'place-face',
      edge: 'scarf',
      taper: twentyToOne,
      opening: {
        kind: 'rounded-rectangle',
        lengthMm: 52,
        widthMm: 34,
        cornerRadiusMm: 17,
        placement: here(366, -112, 10),
      },
      pliesFromFace: 2,
      coverPlies: [],
    },
    signed: {
      on: '2026-11-17',
      by: 'MO',
      becauses: {
        'post-cure-over-in-use-limit': freeStanding,
        'scribe-line-near-face':
          'Shoulder line noted against D02 and D03; scribed anew if the dressing takes it.',
        'dowel-near-face': 'D03 is measured before and after.',
        'thickness-uneven': 'The thick reading is the old fill; the spot lies on even ground.',
      },
    },
  },
  {
    mould: 'UD-1',
    area: 'deck',
    number: 1,
    version: 1,
    title: 'Chipped corner, aft starboard',
    reason: 'Chipped when the deck was lifted by the tail.',
    note: 'First sketch, off a photo.',
    sketched: { on: '2026-11-19', by: 'SL' },
    sketch: {
      side: 'pattern-back',
      edge: 'scarf',
      taper: twentyToOne,
      opening: { kind: 'circle', diameterMm: 90, placement: here(2560, -476) },
      pliesFromFace: null,
      coverPlies: [{ materialId: idOf('material/B650'), directionDeg: 0 }],
    },
  },
]
