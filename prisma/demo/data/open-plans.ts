import { idOf } from '../base/ids'
import type { PlanStory } from './plan-story'
import { freeStanding, here, twentyToOne } from './plan-words'

/** Plans of autumn 2026: put by, signed, on the bench, and a first sketch that can't be signed as it is. */
export const openPlans: readonly PlanStory[] = [
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
