import type { FaceModel } from '#lib/core/drawing/index'
import { circle } from '#lib/core/geometry/index'
import type { Point } from '#lib/core/geometry/types'

export function rectangle(u: number, v: number, width: number, height: number): readonly Point[] {
  return [
    [u, v],
    [u + width, v],
    [u + width, v + height],
    [u, v + height],
  ]
}

/** An egg-shaped floor of an invented hull mould, 3 m long. */
function egg(shrink: number): readonly Point[] {
  return Array.from({ length: 160 }, (_, i) => {
    const angle = (2 * Math.PI * i) / 160
    const u = 1500 + (1420 - shrink) * Math.cos(angle)
    return [u, 700 + (520 - shrink) * Math.sin(angle) * (1 - 0.00012 * (u - 1500))] as const
  })
}

export function sampleFace(changes: Partial<FaceModel> = {}): FaceModel {
  return {
    mouldCode: 'LH-P2',
    areaName: 'floor',
    boundary: egg(0),
    grid: { originMm: [0, 1400], cellMm: 400 },
    lines: [
      { name: 'trim', kind: 'trim', points: egg(60), closed: true },
      {
        name: 'centre line',
        kind: 'scribe',
        points: [
          [200, 700],
          [2800, 700],
        ],
        closed: false,
      },
    ],
    keepOuts: [{ name: 'rib 2', kind: 'backing', outline: rectangle(1180, 300, 60, 800) }],
    dowels: [
      { tag: 'D01', at: [480, 820], diameterMm: 8, isDatum: true, oldPlace: null, setOn: null },
      { tag: 'D02', at: [800, 690], diameterMm: 8, isDatum: false, oldPlace: [720, 640], setOn: null },
      { tag: 'D04', at: [1330, 1020], diameterMm: 8, isDatum: false, oldPlace: null, setOn: null },
      { tag: 'D06', at: [1640, 1030], diameterMm: 8, isDatum: false, oldPlace: null, setOn: null },
      { tag: 'D09', at: [1500, 360], diameterMm: 8, isDatum: false, oldPlace: null, setOn: null },
      { tag: 'D11', at: [2500, 640], diameterMm: 8, isDatum: true, oldPlace: null, setOn: null },
    ],
    patches: [
      {
        name: 'Patch 7',
        face: [rectangle(1950, 600, 380, 280)],
        footprint: [rectangle(1850, 500, 580, 480)],
      },
    ],
    openings: [{ name: 'opening, planned', regions: [{ outer: circle([760, 670], 140), holes: [] }] }],
    ...changes,
  }
}
