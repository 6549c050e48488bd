import 'server-only'
import type * as z from 'zod'
import type { HomographyRequest } from '#lib/schema/homography'
import type { LogRequest } from '#lib/schema/log-request'
import type { JoinRequest, PlateRequest } from '#lib/schema/mechanics'
import type { OffsetRequest, OutlineRequest, PatchInputSchema } from '#lib/schema/patch'

/** Invented figures that the routes take as they stand. */

export const outlineExample: z.input<typeof OutlineRequest> = {
  name: 'opening.csv',
  text: 'u;v\n0;0\n80;0\n80;50\n0;50\n',
  unit: 'mm',
}

const surface = {
  name: '200 g twill',
  role: 'surface' as const,
  fibreArealWeightGsm: 200,
  fibreDensityGcm3: 1.78,
  fibreContent: { kind: 'fibre-volume' as const, fibreVolumeFraction: 0.5 },
  rollWidthMm: 1250,
}

const bulk = { ...surface, name: '650 g twill', role: 'bulk' as const, fibreArealWeightGsm: 650 }

export const patchExample: z.input<typeof PatchInputSchema> = {
  side: 'pattern-back',
  edge: 'scarf',
  opening: {
    outer: [
      [0, 0],
      [80, 0],
      [80, 50],
      [0, 50],
    ],
  },
  stack: [
    { material: surface, directionDeg: 0 },
    { material: bulk, directionDeg: 45 },
    { material: bulk, directionDeg: 45 },
    { material: surface, directionDeg: 0 },
  ],
  removedPlies: [1, 2, 3, 4],
  measuredThicknessMm: [1.9, 1.95],
  taper: { ratio: 20, mmPerPly: 12.7, use: 'longer' },
  area: {
    name: 'floor',
    boundary: [
      [-400, -300],
      [400, -300],
      [400, 300],
      [-400, 300],
    ],
    dowels: [{ tag: 'D02', at: [40, 25], diameterMm: 8, bushDiameterMm: 20, through: true }],
    grid: { originMm: [-400, 300], cellMm: 50 },
  },
}

/** The stack of a textbook example: 0, 90, 0 of graphite and epoxy, 5 mm each. */
export const plateExample: z.input<typeof PlateRequest> = {
  layers: [0, 90, 0].map((directionDeg) => ({
    lamina: {
      e1MPa: 181_000,
      e2MPa: 10_300,
      g12MPa: 7170,
      nu12: 0.28,
      alpha1PerK: 0.02e-6,
      alpha2PerK: 22.5e-6,
    },
    directionDeg,
    thicknessMm: 5,
  })),
  changeK: -75,
}

export const joinExample: z.input<typeof JoinRequest> = {
  kind: 'scarf',
  pullMPa: 400,
  ratio: 20,
  allowedShearMPa: 20,
}

export const offsetExample: z.input<typeof OffsetRequest> = {
  outer: [
    [0, 0],
    [80, 0],
    [80, 50],
    [0, 50],
  ],
  growMm: [12.7, 25.4, -5],
}

export const homographyExample: z.input<typeof HomographyRequest> = {
  marks: [
    { tag: 'D01', atPx: [920, 2348], atMm: [0, 0] },
    { tag: 'D02', atPx: [3255, 2122], atMm: [400, 0] },
    { tag: 'D03', atPx: [2872, 859], atMm: [400, 300] },
    { tag: 'D04', atPx: [988, 1007], atMm: [0, 300] },
    { tag: 'D05', atPx: [2016, 1513], atMm: [200, 150] },
    { tag: 'D06', atPx: [2110, 2230], atMm: [200, 0] },
  ],
  outlinePx: [
    [1611, 1820],
    [2484, 1741],
    [2383, 1233],
    [1581, 1299],
  ],
  placesMm: [[200, 300]],
  curvature: { kind: 'single', radiusMm: 4000 },
}

export const pullExample: Partial<LogRequest> = {
  id: '7b0f8f34-94f8-4d6a-9a2d-0d7f6a3f7c11',
  kind: 'pull',
  doneAt: '2026-10-21T14:05:00+02:00',
  data: { went: 'usual', serial: 'LH-P2-041', partFate: 'good', mouldFate: 'unharmed', cureC: 80 },
}

export const coatExample: Partial<LogRequest> = {
  id: '2c2a7a0e-3b5b-4c5c-8f0e-3f4b6e1c9d02',
  kind: 'coat',
  doneOn: '2026-10-21',
  area: 'floor',
  data: { product: 'semi-permanent release', coats: 1 },
}
