import type { IsoDate } from '#lib/core/dates'
import type { FaceLine, KeepOut } from '#lib/core/repair/types'
import { FaceAreaInput } from '#lib/schema/mould'
import { drawer, idOf } from '../base/ids'
import type { Spot } from '../base/shapes'

type Axis = [number, number, number]

/** The car's axes: x aft from the nose, y to starboard, z up. */
export const axes = {
  aft: [1, 0, 0],
  forward: [-1, 0, 0],
  starboard: [0, 1, 0],
  port: [0, -1, 0],
  up: [0, 0, 1],
  down: [0, 0, -1],
} as const satisfies Record<string, Axis>

export interface FaceWords {
  readonly mould: string
  readonly name: string
  readonly originMm: Axis
  readonly u: Readonly<Axis>
  readonly v: Readonly<Axis>
  readonly boundary: readonly Spot[]
  readonly lines?: readonly FaceLine[]
  readonly keepOuts?: readonly KeepOut[]
  readonly gridCellMm?: number
  readonly measured: Measured
}

export interface Measured {
  readonly on: IsoDate
  readonly by: 'AW' | 'MO' | 'JR' | 'SL' | 'TA' | 'RN'
  /** About what the caliper said; the places differ by a hundredth or two. */
  readonly aboutMm: number
  /** Five places on the face. */
  readonly at: readonly Spot[]
  /** What was read at those places, where the small spread is not the story. */
  readonly readMm?: readonly number[]
}

export interface FaceData {
  readonly area: FaceAreaInput
  readonly readings: readonly { id: string; uMm: number; vMm: number; thicknessMm: number }[]
  readonly measured: Measured
}

export const trim = (name: string, points: readonly Spot[]): FaceLine => ({
  name,
  kind: 'trim',
  points,
  closed: true,
})
export const scribe = (name: string, points: readonly Spot[]): FaceLine => ({
  name,
  kind: 'scribe',
  points,
  closed: false,
})
export const keepOut = (name: string, kind: KeepOut['kind'], outline: readonly Spot[]): KeepOut => ({
  name,
  kind,
  outline,
})

export function areaId(mould: string, name: string): string {
  return idOf(`area/${mould}/${name}`)
}

export function face(words: FaceWords): FaceData {
  const { mould, name, boundary, measured } = words
  const cell = words.gridCellMm ?? 50
  const area = FaceAreaInput.parse({
    id: areaId(mould, name),
    mouldId: idOf(`mould/${mould}`),
    name,
    originMm: words.originMm,
    uAxis: words.u,
    vAxis: words.v,
    boundary,
    lines: words.lines ?? [],
    keepOuts: words.keepOuts ?? [],
    gridOriginMm: topLeft(boundary, cell),
    gridCellMm: cell,
    stackId: null,
  })
  return { area, readings: readingsOf(words), measured }
}

/** The grid begins at the top left, on a whole cell. */
function topLeft(boundary: readonly Spot[], cell: number): Spot {
  const left = Math.min(...boundary.map(([u]) => u))
  const top = Math.max(...boundary.map(([, v]) => v))
  return [Math.floor(left / cell) * cell, Math.ceil(top / cell) * cell]
}

function readingsOf({ mould, name, measured }: FaceWords): FaceData['readings'] {
  const draw = drawer(`thickness/${mould}/${name}`)
  return measured.at.map(([uMm, vMm], index) => ({
    id: idOf(`reading/${mould}/${name}/${index + 1}`),
    uMm,
    vMm,
    thicknessMm: measured.readMm?.[index] ?? Math.round((measured.aboutMm + draw(-6, 6) / 100) * 100) / 100,
  }))
}
