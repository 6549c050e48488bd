import { directionInView, placeWindow, seenFromSide, toDrawing } from '#lib/core/drawing/index'
import { bounds, clockwise, counterClockwise, type Loop, type Point } from '#lib/core/geometry/index'
import type { Bounds, Region } from '#lib/core/geometry/types'
import type { PlannedPly } from '#lib/core/repair/types'
import { figure } from '#lib/core/units'
import { directionWords } from '../sheets/template-blocks'
import type { PatchSheet } from '../sheets/types'

/** laid: as the one who lays the plies sees them, like the templates. cavity: as screens show the face. */
export const outlineViews = ['laid', 'cavity'] as const
export type OutlineView = (typeof outlineViews)[number]

/** Everything on one layer: one ply, or one of the outlines that belong to no ply. */
export interface OutlineLayer {
  /** "PLY-01": in laying order, plies of the cover after those of the mould's own stack. */
  readonly code: string
  /** A few plain letters more for a list of layers: "bulk 650 twill -45deg", in this view; empty where it needs none. */
  readonly label: string
  /** What it is, in words. */
  readonly title: string
  /** mm, y up; outer loops counter-clockwise, holes clockwise, in the view. */
  readonly regions: readonly Region[]
  /** Fibres in this view, degrees counter-clockwise from the right; null where there are none. */
  readonly directionInViewDeg: number | null
}

export interface PlanOutlines {
  readonly title: string
  /** The view by its name. */
  readonly view: string
  /** Seen from the back: u runs to the left. */
  readonly mirrored: boolean
  readonly notes: readonly string[]
  readonly layers: readonly OutlineLayer[]
  readonly boundsMm: Bounds
}

/**
 * All outlines of a plan in one view and in one frame, so that layers lie on each other as the plies do: the opening,
 * each ply with its number, material and direction, the footprint. RangeError for a plan without plies.
 */
export function planOutlines(sheet: PatchSheet, view: OutlineView): PlanOutlines {
  const { patch, input, plan, mould } = sheet
  if (patch.plies.length === 0) throw new RangeError('a plan without plies has no outlines')
  const mirrored = view === 'laid' && seenFromSide(input.side) === 'back'
  const place = placing(mirrored)
  const all: readonly OutlineLayer[] = [
    layer('OPENING', 'The opening, as it is cut', [patch.opening], place),
    ...patch.plies.map((ply) => plyLayer(sheet, ply, mirrored, place)),
    layer('FOOTPRINT', 'Footprint: what must fit the back, cover plies included', patch.footprint, place),
  ]
  // Worked from the face, nothing reaches the back.
  const layers = all.filter(({ regions }) => regions.length > 0)
  return {
    title: `${mould.code} ${mould.name}: ${plan.name}`,
    view: viewWords(view, seenFromSide(input.side)),
    mirrored,
    notes: [
      `${plan.code}, ${patch.place}. Version ${plan.version}, ${plan.state}. Lengths in mm, 1:1.`,
      `For tooling only. Calculation ${sheet.calculationVersion}, record ${sheet.recordId}`,
    ],
    layers,
    boundsMm: bounds(layers.flatMap(({ regions }) => regions)),
  }
}

type Place = (point: Point) => Point

/** A face's point in the view, y up; seen from the back u runs to the left. */
function placing(mirrored: boolean): Place {
  const placement = placeWindow([0, 0, 0, 0], [0, 0], mirrored)
  return (point) => {
    const [x, yDown] = toDrawing(placement, point)
    return [x + 0, 0 - yDown]
  }
}

function viewWords(view: OutlineView, laidFrom: 'back' | 'cavity'): string {
  if (view === 'laid') {
    return laidFrom === 'back'
      ? 'As laid, from the back: mirrored. This side up'
      : 'As laid, seen from the cavity. This side up'
  }
  return laidFrom === 'back'
    ? 'Seen from the cavity, not as laid: plies are laid from the back'
    : 'Seen from the cavity, as laid'
}

function plyLayer(sheet: PatchSheet, ply: PlannedPly, mirrored: boolean, place: Place): OutlineLayer {
  const directionInViewDeg = directionInView(ply.directionDeg, mirrored)
  const number = `${ply.layingOrder}`.padStart(2, '0')
  const what = ply.replaces === null ? 'cover ply' : `replaces ply ${ply.replaces} of the mould`
  const title =
    `Ply ${ply.layingOrder} of ${sheet.patch.plies.length}, ${what}: ${ply.material.name}. ` +
    `${directionWords({ ply, directionInViewDeg })}. ${figure(ply.areaMm2 / 1e6, 4)} m²`
  const label = `${ply.replaces === null ? 'cover ' : ''}${ply.material.name} ${figure(directionInViewDeg, 1)}deg`
  return { ...layer(`PLY-${number}`, title, ply.outline, place), label, directionInViewDeg }
}

function layer(code: string, title: string, regions: readonly Region[], place: Place): OutlineLayer {
  const placed = regions.map(({ outer, holes }) => ({
    outer: counterClockwise(outer.map(place)),
    holes: holes.map((hole) => clockwise(hole.map(place))),
  }))
  return { code, label: '', title, regions: placed, directionInViewDeg: null }
}

/** Loops of a layer, outer ones and holes alike. */
export function loopsOfLayer({ regions }: OutlineLayer): readonly Loop[] {
  return regions.flatMap(({ outer, holes }) => [outer, ...holes])
}

/** A length in mm with four decimals at most: the grid that outlines are computed on. */
export function mmText(mm: number): string {
  return `${Math.round(mm * 1e4) / 1e4 + 0}`
}
