import type { Bounds, Point } from '../geometry/types'
import { border } from './border'
import { boxOf, grown } from './boxes'
import {
  type Drafting,
  keepLines,
  labelArea,
  labelBeside,
  markBoxes,
  markRadius,
  startDrafting,
} from './drafting'
import { describeFace } from './face-description'
import type { FaceDowel, FaceModel, SeenFrom } from './face-model'
import { foot, viewWords } from './foot'
import { hatch } from './hatch'
import { type Margins, type Medium, type Sizes, scaledMargins, scaleToFit } from './medium'
import { loopToDrawing, placeWindow, toDrawing } from './placement'
import { path } from './primitives'
import type { Box, DisplayList, FacePlacement, GroupItem, Item, LegendKey, Shape, Xy } from './types'

/** Letters at the left, numbers on top, scale bar and view below; paper mm. */
const margins: Margins = { left: 6.8, top: 5.2, right: 1, bottom: 8 }
/** Between the outermost line of the face and the frame, paper mm. */
const airMm = 4
/** Of which the foot takes, paper mm. */
export const footMm = margins.bottom
/** The same with the air: all that a face drawing takes beyond the face itself, paper mm. */
export const faceMargins: Margins = {
  left: margins.left + airMm,
  top: margins.top + airMm,
  right: margins.right + airMm,
  bottom: margins.bottom + airMm,
}

/** A face drawing with the frame of its location grid, drawing mm. */
export interface DrawnFace {
  readonly list: DisplayList
  readonly frame: Box
  readonly placement: FacePlacement
}

/**
 * A face area to scale with its location grid: boundary, trim and scribe lines, keep-outs on the back, locating
 * points, patches and planned openings. Seen from the back the geometry is mirrored and the words are not.
 * RangeError for a face without extent.
 */
export function faceDrawing(model: FaceModel, medium: Medium, seenFrom: SeenFrom = 'cavity'): DisplayList {
  const extent = faceExtent(model)
  const sizes = scaleToFit(extent[2] - extent[0], extent[3] - extent[1], faceMargins, medium)
  return faceAt(model, sizes, seenFrom).list
}

/** The same at a scale that is known already; without its foot when it shares one with other faces. */
export function faceAt(model: FaceModel, sizes: Sizes, seenFrom: SeenFrom, footed = true): DrawnFace {
  const extent = faceExtent(model)
  const air = airMm * sizes.denominator
  const room = scaledMargins(margins, sizes)
  const window: Bounds = [extent[0] - air, extent[1] - air, extent[2] + air, extent[3] + air]
  const placement = placeWindow(window, [room.left, room.top], seenFrom === 'back')
  const { frame, items: ruling } = border(model.grid, window, extent, placement, sizes)
  const draft = startDrafting(grown(frame, -sizes.textMm * 0.2), sizes)

  const outlines = drawOutlines(model, placement, draft)
  const marks = model.dowels.map((dowel) => toDrawing(placement, dowel.at))
  for (const [i, dowel] of model.dowels.entries()) {
    draft.taken.push(...markBoxes(marks[i]!, markRadius(dowel.diameterMm, sizes)))
  }
  const patches = model.patches.map((patch) => drawPatch(patch, placement, draft))
  const openings = model.openings.map((opening) => drawOpening(opening, placement, draft))
  const dowels = model.dowels.map((dowel) => drawDowel(dowel, placement, draft))
  const names = nameKeepOuts(model, placement, draft)
  const heightMm = frame.bottom + (footed ? room.bottom : 0)
  const list: DisplayList = {
    title: `${model.mouldCode}, ${model.areaName}, ${viewWords(seenFrom)}`,
    description: describeFace(model),
    widthMm: frame.right + room.right,
    heightMm,
    denominator: sizes.denominator,
    textMm: sizes.textMm,
    placement,
    legend: legendOf(model),
    omittedLabels: draft.omitted,
    items: [
      ...ruling,
      ...outlines,
      ...patches,
      ...openings,
      ...names,
      ...dowels,
      ...(footed ? foot(frame, seenFrom, sizes) : []),
    ],
  }
  return { list, frame, placement }
}

/** What of a face is drawn, [uMin, vMin, uMax, vMax] in mm. RangeError for a face without a point. */
export function faceExtent(model: FaceModel): Bounds {
  const points: Point[] = [
    ...model.boundary,
    ...model.lines.flatMap((line) => line.points),
    ...model.keepOuts.flatMap((keepOut) => keepOut.outline),
    ...model.dowels.flatMap((dowel) => (dowel.oldPlace ? [dowel.at, dowel.oldPlace] : [dowel.at])),
    ...model.patches.flatMap((patch) => [...patch.face, ...patch.footprint].flat()),
    ...model.openings.flatMap((opening) => opening.regions.flatMap((region) => region.outer)),
  ]
  const box = boxOf(points)
  return [box.left, box.top, box.right, box.bottom]
}

function drawOutlines(model: FaceModel, placement: FacePlacement, draft: Drafting): readonly Shape[] {
  const boundary = loopToDrawing(placement, model.boundary)
  keepLines(draft, [boundary], true)
  const lines = model.lines.map((line) => {
    const drawn = loopToDrawing(placement, line.points)
    keepLines(draft, [drawn], line.closed)
    return path([drawn], line.closed, line.kind, 'ink')
  })
  const keepOuts = model.keepOuts.map((keepOut) => {
    const drawn = loopToDrawing(placement, keepOut.outline)
    keepLines(draft, [drawn], true)
    return path([drawn], true, 'hidden', 'soft')
  })
  return [...keepOuts, ...lines, path([boundary], true, 'outline', 'ink')]
}

function drawPatch(
  patch: FaceModel['patches'][number],
  placement: FacePlacement,
  draft: Drafting,
): GroupItem {
  const face = patch.face.map((loop) => loopToDrawing(placement, loop))
  const footprint = patch.footprint.map((loop) => loopToDrawing(placement, loop))
  keepLines(draft, face, true)
  const style = { role: 'ink', weight: 'semibold', sizeMm: draft.sizes.textMm } as const
  return {
    kind: 'group',
    subject: { kind: 'patch', name: patch.name },
    label: patch.name,
    hit: boxOf(face.flat()),
    items: [
      path(footprint, true, 'footprint', 'ink'),
      hatch(face, draft.sizes.hatchMm, 'ink'),
      path(face, true, 'thin', 'ink'),
      ...labelArea(draft, face, patch.name, style, true),
    ],
  }
}

function drawOpening(
  opening: FaceModel['openings'][number],
  placement: FacePlacement,
  draft: Drafting,
): GroupItem {
  const loops = opening.regions.flatMap((region) =>
    [region.outer, ...region.holes].map((loop) => loopToDrawing(placement, loop)),
  )
  keepLines(draft, loops, true)
  const style = { role: 'held', weight: 'regular', sizeMm: draft.sizes.textMm } as const
  return {
    kind: 'group',
    subject: { kind: 'opening', name: opening.name },
    label: `Planned opening: ${opening.name}`,
    hit: boxOf(loops.flat()),
    items: [path(loops, true, 'opening', 'held'), ...labelArea(draft, loops, opening.name, style, false)],
  }
}

function drawDowel(dowel: FaceDowel, placement: FacePlacement, draft: Drafting): GroupItem {
  const { sizes } = draft
  const at = toDrawing(placement, dowel.at)
  const radiusMm = markRadius(dowel.diameterMm, sizes)
  const moved = dowel.oldPlace
  const role = moved ? 'held' : 'ink'
  const by = moved ? Math.hypot(dowel.at[0] - moved[0], dowel.at[1] - moved[1]) : 0
  const words = moved ? `${dowel.tag} moves ${by.toFixed(1)}` : dowel.tag
  const style = { role, weight: dowel.isDatum ? 'semibold' : 'regular', sizeMm: sizes.textMm } as const
  const old = moved ? oldPlace(toDrawing(placement, moved), at, radiusMm, sizes) : []
  const half = Math.max(radiusMm * 2, sizes.textMm * 1.2)
  return {
    kind: 'group',
    subject: { kind: 'dowel', name: dowel.tag },
    label: `${dowel.isDatum ? 'Datum' : 'Locating point'} ${words}${moved ? ' mm' : ''}`,
    hit: { left: at[0] - half, top: at[1] - half, right: at[0] + half, bottom: at[1] + half },
    items: [
      ...old,
      { kind: 'centre-mark', at, radiusMm, datum: dowel.isDatum, role },
      ...labelBeside(draft, { text: words, at, clearMm: radiusMm * 1.45 }, style),
    ],
  }
}

function oldPlace(from: Xy, to: Xy, radiusMm: number, sizes: Sizes): readonly Shape[] {
  const distance = Math.hypot(to[0] - from[0], to[1] - from[1])
  const ring = {
    kind: 'circle',
    centre: from,
    radiusMm,
    style: 'old-place',
    role: 'held',
    fill: 'none',
  } as const
  if (distance < radiusMm * 0.5) return [ring]
  const end: Xy = [
    to[0] - ((to[0] - from[0]) / distance) * Math.min(radiusMm, distance * 0.4),
    to[1] - ((to[1] - from[1]) / distance) * Math.min(radiusMm, distance * 0.4),
  ]
  return [ring, { kind: 'arrow', from, to: end, headMm: sizes.headMm, style: 'thin', role: 'held' }]
}

function nameKeepOuts(model: FaceModel, placement: FacePlacement, draft: Drafting): readonly Item[] {
  const style = { role: 'soft', weight: 'regular', sizeMm: draft.sizes.smallTextMm } as const
  const keepOuts = model.keepOuts.flatMap((keepOut) =>
    labelArea(draft, [loopToDrawing(placement, keepOut.outline)], keepOut.name, style, true),
  )
  const scribes = model.lines
    .filter((line) => line.kind === 'scribe' && line.points.length > 0)
    .flatMap((line) => {
      const at = toDrawing(placement, line.points[Math.floor(line.points.length / 2)]!)
      return labelBeside(draft, { text: line.name, at, clearMm: style.sizeMm * 0.4 }, style)
    })
  return [...keepOuts, ...scribes]
}

function legendOf(model: FaceModel): readonly LegendKey[] {
  const has: readonly (readonly [LegendKey, boolean])[] = [
    ['patch', model.patches.length > 0],
    ['footprint', model.patches.some((patch) => patch.footprint.length > 0)],
    ['opening', model.openings.length > 0],
    ['dowel', model.dowels.some((dowel) => !dowel.isDatum)],
    ['datum', model.dowels.some((dowel) => dowel.isDatum)],
    ['old-place', model.dowels.some((dowel) => dowel.oldPlace !== null)],
    ['trim', model.lines.some((line) => line.kind === 'trim')],
    ['scribe', model.lines.some((line) => line.kind === 'scribe')],
    ['keep-out', model.keepOuts.length > 0],
  ]
  return has.filter(([, shown]) => shown).map(([key]) => key)
}
