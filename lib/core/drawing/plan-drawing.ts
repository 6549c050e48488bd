import { loopBounds } from '../geometry/index'
import type { Bounds, Region } from '../geometry/types'
import type { PatchInput, PatchPlan, Side } from '../repair/types'
import { border } from './border'
import { boxOf, boxRound, clipLine, clipSegment, grown, type Segment } from './boxes'
import { directionRose } from './direction-rose'
import {
  type Drafting,
  keepLines,
  labelArea,
  labelBeside,
  markBoxes,
  markRadius,
  startDrafting,
} from './drafting'
import type { SeenFrom } from './face-model'
import { foot } from './foot'
import { hatch } from './hatch'
import { type Margins, type Medium, paperRoom, type Sizes, scaledMargins, scaleToFit } from './medium'
import { loopToDrawing, placeWindow, toDrawing } from './placement'
import { plyNumbers } from './ply-numbers'
import { path } from './primitives'
import type { Box, DisplayList, FacePlacement, GroupItem, LegendKey, PathItem, Shape, Xy } from './types'

const margins: Margins = { left: 6.8, top: 5.2, right: 1, bottom: 8 }
/**
 * Ground shown round the footprint at least, as a share of its greater extent. A standard scale on paper mostly
 * leaves more, and the window is opened up to it.
 */
const nearbyShare: Readonly<Record<Medium['kind'], number>> = { screen: 0.16, paper: 0.03 }

/** The laminator works from the back and sees the face mirrored, or stands in the cavity. */
export function seenFromSide(side: Side): SeenFrom {
  return side === 'place-face' ? 'cavity' : 'back'
}

/**
 * The patch as the one who lays it sees it: plies as rings with their laying numbers, the opening in brick, cover
 * plies dashed, and what of the mould lies near: boundary, lines, keep-outs, dowels, old patches.
 */
export function planDrawing(plan: PatchPlan, input: PatchInput, medium: Medium): DisplayList {
  const seenFrom = seenFromSide(input.side)
  const { window, sizes } = frameUp(plan, medium)
  const room = scaledMargins(margins, sizes)
  const placement = placeWindow(window, [room.left, room.top], seenFrom === 'back')
  const { frame, items: ruling } = border(
    input.area.grid,
    window,
    loopBounds(input.area.boundary),
    placement,
    sizes,
  )
  const draft = startDrafting(grown(frame, -sizes.textMm * 0.2), sizes)
  const plies = drawPlies(plan, placement, draft)
  const opening = drawRegions([plan.opening], placement, 'opening-cut', 'held', 'sheet')
  keepLines(draft, opening.lines, true)
  const near = drawNear(input, placement, frame, draft, seenFrom)
  const dowels = input.area.dowels.filter((dowel) => liesIn(toDrawing(placement, dowel.at), draft.area))
  for (const dowel of dowels) {
    draft.taken.push(...markBoxes(toDrawing(placement, dowel.at), markRadius(dowel.diameterMm, sizes)))
  }
  const rose = directionRose(placement, draft)
  const numbers = plyNumbers(plan, placement, draft)
  const tags = dowels.map((dowel): GroupItem => {
    const at = toDrawing(placement, dowel.at)
    const radiusMm = markRadius(dowel.diameterMm, sizes)
    const style = { role: 'ink', weight: 'regular', sizeMm: sizes.textMm } as const
    return {
      kind: 'group',
      subject: { kind: 'dowel', name: dowel.tag },
      label: `${dowel.isDatum ? 'Datum' : 'Locating point'} ${dowel.tag}`,
      hit: boxRound(at, radiusMm * 2, radiusMm * 2),
      items: [
        { kind: 'centre-mark', at, radiusMm, datum: dowel.isDatum, role: 'ink' },
        ...labelBeside(draft, { text: dowel.tag, at, clearMm: radiusMm * 1.45 }, style),
      ],
    }
  })
  const names = near.names()
  return {
    title: `Plan of the patch at ${plan.place}, seen from the ${seenFrom}`,
    description: describe(plan),
    widthMm: frame.right + room.right,
    heightMm: frame.bottom + room.bottom,
    denominator: sizes.denominator,
    textMm: sizes.textMm,
    placement,
    legend: legendOf(plan, input, dowels.length > 0),
    omittedLabels: draft.omitted,
    items: [
      ...ruling,
      ...plies,
      opening,
      ...near.shapes,
      ...numbers,
      ...rose,
      ...names,
      ...tags,
      ...foot(frame, seenFrom, sizes),
    ],
  }
}

/** The footprint with some ground about it, opened up to fill the room that the medium gives. */
function frameUp(plan: PatchPlan, medium: Medium): { readonly window: Bounds; readonly sizes: Sizes } {
  const outlines = [
    ...plan.footprint,
    ...plan.face,
    plan.opening,
    ...plan.plies.flatMap((ply) => ply.outline),
  ]
  const core = boxOf(outlines.flatMap((region) => region.outer))
  const nearby = Math.max(core.right - core.left, core.bottom - core.top) * nearbyShare[medium.kind]
  const need = grown(core, nearby)
  const sizes = scaleToFit(need.right - need.left, need.bottom - need.top, margins, medium)
  const room = paperRoom(medium)
  const across = (room.widthMm - margins.left - margins.right) * sizes.denominator
  const down = (room.heightMm - margins.top - margins.bottom) * sizes.denominator
  const halfWidth = Math.max(across, need.right - need.left) / 2
  const halfHeight =
    (Number.isFinite(down) ? Math.max(down, need.bottom - need.top) : need.bottom - need.top) / 2
  const u = (core.left + core.right) / 2
  const v = (core.top + core.bottom) / 2
  return { window: [u - halfWidth, v - halfHeight, u + halfWidth, v + halfHeight], sizes }
}

function drawRegions(
  regions: readonly Region[],
  placement: FacePlacement,
  style: PathItem['style'],
  role: PathItem['role'],
  fill: PathItem['fill'],
): PathItem {
  const loops = regions.flatMap((region) => [region.outer, ...region.holes])
  return path(
    loops.map((loop) => loopToDrawing(placement, loop)),
    true,
    style,
    role,
    fill,
  )
}

/** Largest first, so that each smaller one shows; tints change from ply to ply, covers are only outlined. */
function drawPlies(plan: PatchPlan, placement: FacePlacement, draft: Drafting): readonly PathItem[] {
  const bySize = [...plan.plies].sort((a, b) => b.areaMm2 - a.areaMm2 || b.layingOrder - a.layingOrder)
  return bySize.map((ply) => {
    const fill = ply.replaces === null ? 'none' : ply.layingOrder % 2 === 0 ? 'sheet' : 'wash'
    const style = ply.replaces === null ? 'cover' : 'thin'
    const item = drawRegions(ply.outline, placement, style, 'ink', fill)
    keepLines(draft, item.lines, true)
    return item
  })
}

interface Near {
  readonly shapes: readonly Shape[]
  /** Asked for after the marks have taken their places. */
  readonly names: () => readonly Shape[]
}

function drawNear(
  input: PatchInput,
  placement: FacePlacement,
  frame: Box,
  draft: Drafting,
  seenFrom: SeenFrom,
): Near {
  const { area } = input
  const cut = (line: readonly (readonly [number, number])[], closed: boolean) =>
    clipLine(loopToDrawing(placement, line), closed, frame)
  const boundary = cut(area.boundary, true)
  keepLines(draft, boundary, false)
  const lines = area.lines.map((line) => ({ line, pieces: cut(line.points, line.closed) }))
  const keepOuts = area.keepOuts.map((keepOut) => ({ keepOut, pieces: cut(keepOut.outline, true) }))
  const patches = area.oldPatches.map((patch) => ({ patch, pieces: cut(patch.face, true) }))
  for (const { pieces } of [...lines, ...keepOuts, ...patches]) keepLines(draft, pieces, false)
  const hatches = area.oldPatches.map((patch) => {
    const item = hatch([loopToDrawing(placement, patch.face)], draft.sizes.hatchMm, 'soft')
    return { ...item, segments: item.segments.flatMap((segment) => clipped(segment, frame)) }
  })
  const soft = { role: 'soft', weight: 'regular', sizeMm: draft.sizes.smallTextMm } as const
  const named = [
    ...keepOuts.map(({ keepOut, pieces }) => ({ name: keepOut.name, pieces })),
    ...patches.map(({ patch, pieces }) => ({ name: patch.name, pieces })),
  ]
  return {
    shapes: [
      ...hatches.filter((item) => item.segments.length > 0),
      ...patches.map(({ pieces }) => path(pieces, false, 'thin', 'ink')),
      ...keepOuts.map(({ pieces }) => path(pieces, false, seenFrom === 'back' ? 'thin' : 'hidden', 'soft')),
      ...lines.map(({ line, pieces }) => path(pieces, false, line.kind, 'ink')),
      path(boundary, false, 'outline', 'ink'),
    ].filter((shape) => shape.kind !== 'path' || shape.lines.length > 0),
    names: () =>
      named.flatMap(({ name, pieces }) =>
        pieces.length > 0 ? labelArea(draft, pieces, name, soft, true) : [],
      ),
  }
}

function clipped(segment: Segment, frame: Box): readonly Segment[] {
  const part = clipSegment(segment, frame)
  return part === null ? [] : [part]
}

function liesIn([x, y]: Xy, box: Box): boolean {
  return x > box.left && x < box.right && y > box.top && y < box.bottom
}

function describe(plan: PatchPlan): string {
  const covers = plan.plies.filter((ply) => ply.replaces === null).length
  const count = plan.plies.length - covers
  const plies = plan.plies
    .map((ply) => `${ply.layingOrder} ${ply.material.name} at ${ply.directionDeg} degrees`)
    .join(', ')
  return `${count} plies and ${covers} cover plies in laying order: ${plies}.`
}

function legendOf(plan: PatchPlan, input: PatchInput, dowels: boolean): readonly LegendKey[] {
  const { area } = input
  const has: readonly (readonly [LegendKey, boolean])[] = [
    ['opening-cut', true],
    ['cover', plan.plies.some((ply) => ply.replaces === null)],
    ['patch', area.oldPatches.length > 0],
    ['dowel', dowels],
    ['trim', area.lines.some((line) => line.kind === 'trim')],
    ['scribe', area.lines.some((line) => line.kind === 'scribe')],
    ['keep-out', area.keepOuts.length > 0],
  ]
  return has.filter(([, shown]) => shown).map(([key]) => key)
}
