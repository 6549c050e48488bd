import type { PlanStory } from './plan-story'
import { freeStanding, here, twentyToOne } from './plan-words'

/** Patches that are in a mould: two proved, one that waits for its proof pull. */
export const laidPlans: readonly PlanStory[] = [
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
]
