import type { PatchInput, PatchPlan, Side } from '../repair/types'
import { figure } from '../units'
import { hatch } from './hatch'
import {
  type Margins,
  type Medium,
  nextReduction,
  paperRoom,
  type Sizes,
  scaledMargins,
  scaleToFit,
  sizesAt,
} from './medium'
import { baselineAbout, path, text } from './primitives'
import { type SectionProfile, sectionProfile } from './section-profile'
import type { DisplayList, Item, Shape, Xy } from './types'

const margins: Margins = { left: 6.5, top: 10, right: 7, bottom: 9.5 }
const timesWords: Readonly<Record<number, string>> = { 5: 'five', 10: 'ten', 20: 'twenty' }
const exaggerations = [20, 10, 5] as const
/** On a screen the drawn thickness stays below this share of the length. */
const tallestShare = 0.4

const toolFaceWords: Readonly<Record<Side, string>> = {
  'pattern-back': 'tool face, on the pattern',
  'place-back': 'tool face, on the caul',
  'place-face': 'tool face',
}

/**
 * Section through the join with the thickness drawn five, ten or twenty times, which is said. The side that is
 * worked from lies on top: from the back the tool face is the bottom line, from the face it is the top line.
 */
export function sectionDrawing(plan: PatchPlan, input: PatchInput, medium: Medium): DisplayList {
  const profile = sectionProfile(plan, input)
  const { sizes, times } = scaleOf(profile, medium)
  const room = scaledMargins(margins, sizes)
  const width = profile.insideMm + profile.outsideMm
  const height = (profile.highMm - profile.lowMm) * times
  const at: At = (alongMm, upMm) => [
    room.left + profile.insideMm + alongMm,
    room.top + (profile.fromFace ? upMm - profile.lowMm : profile.highMm - upMm) * times,
  ]
  const parent = drawParent(profile, at, sizes)
  const scale = sizes.scaleWords === null ? '' : `, lengths ${sizes.scaleWords}`
  const title = `Section through the join, thickness drawn ${timesWords[times]} times${scale}`
  return {
    title,
    description: describe(plan, input, profile),
    widthMm: room.left + width + room.right,
    heightMm: room.top + height + room.bottom,
    denominator: sizes.denominator,
    textMm: sizes.textMm,
    placement: null,
    legend: [],
    omittedLabels: [],
    items: [
      text([0, sizes.textMm * 0.85], title, sizes.textMm, { role: 'soft' }),
      ...parent.under,
      ...drawPlies(profile, at, sizes),
      ...parent.over,
      ...drawEdges(profile, input, at, sizes),
      ...drawDimensions(profile, input, at, sizes),
    ],
  }
}

type At = (alongMm: number, upMm: number) => Xy

function scaleOf(profile: SectionProfile, medium: Medium): { readonly sizes: Sizes; readonly times: number } {
  const width = profile.insideMm + profile.outsideMm
  const thickness = profile.highMm - profile.lowMm
  const down = paperRoom(medium).heightMm - margins.top - margins.bottom
  const wide = scaleToFit(width, 1e-6, margins, medium)
  for (let { denominator } = wide; ; denominator = nextReduction(denominator)) {
    const most = Math.min(down * denominator, width * tallestShare)
    const times = exaggerations.find((factor) => factor * thickness <= most)
    if (times !== undefined) return { sizes: sizesAt(denominator, medium.kind), times }
    if (5 * thickness <= down * denominator) return { sizes: sizesAt(denominator, medium.kind), times: 5 }
  }
}

function drawParent(profile: SectionProfile, at: At, sizes: Sizes): Parent {
  const { parentMm, outsideMm, insideMm, taper, floorMm, fromFace } = profile
  const worked = fromFace ? 0 : parentMm
  const under = fromFace ? parentMm : 0
  const cut = taper.map(([along, up]) => at(along, up))
  const throughCut = floorMm < 1e-9
  const floor: readonly Xy[] = throughCut ? [] : [at(-insideMm, taper[0]![1])]
  const corner = at(throughCut ? 0 : -insideMm, under)
  const body: readonly Xy[] = [corner, ...floor, ...cut, at(outsideMm, worked), at(outsideMm, under)]
  const edges = [
    [...floor, ...cut, at(outsideMm, worked)],
    ...(fromFace ? [[corner, at(outsideMm, under)]] : []),
  ]
  const breakLine = path([[at(outsideMm, worked), at(outsideMm, under)]], false, 'hair', 'soft')
  return {
    under: [hatch([body], sizes.hatchMm * 1.4, 'held'), breakLine],
    over: [path(edges, false, 'outline', 'held'), ...parentName(profile, at, sizes)],
  }
}

/** What lies under the plies and what is drawn over them. */
interface Parent {
  readonly under: readonly Shape[]
  readonly over: readonly Shape[]
}

function parentName({ parentMm, outsideMm }: SectionProfile, at: At, sizes: Sizes): readonly Shape[] {
  const size = sizes.textMm
  if (Math.abs(at(0, parentMm)[1] - at(0, 0)[1]) < size * 1.6) return []
  const [x, y] = at(outsideMm, parentMm / 2)
  const words = { anchor: 'end', role: 'held', halo: true } as const
  return [text([x - size * 0.6, baselineAbout(y, size)], 'parent laminate', size, words)]
}

function drawPlies(profile: SectionProfile, at: At, sizes: Sizes): readonly Shape[] {
  const size = sizes.smallTextMm
  const numbers: Shape[] = []
  let lastY = Number.NaN
  const bars = profile.plies.map((ply) => {
    const low = at(ply.fromMm, ply.bottomMm)
    const high = at(ply.toMm, ply.topMm)
    const y = (low[1] + high[1]) / 2
    if (!(Math.abs(y - lastY) < size * 0.78)) {
      numbers.push(
        text([low[0] - size * 0.6, baselineAbout(y, size)], `${ply.layingOrder}`, size, { anchor: 'end' }),
      )
      lastY = y
    }
    const bar: readonly Xy[] = [low, [high[0], low[1]], high, [low[0], high[1]]]
    const cover = ply.kind === 'cover'
    const fill = cover ? 'none' : ply.layingOrder % 2 === 0 ? 'sheet' : 'wash'
    return path([bar], false, cover ? 'cover' : 'thin', 'ink', fill)
  })
  return [...bars, ...numbers]
}

function drawEdges(profile: SectionProfile, input: PatchInput, at: At, sizes: Sizes): readonly Shape[] {
  const { insideMm, outsideMm, parentMm, lowMm, highMm, fromFace } = profile
  const size = sizes.textMm
  const face = at(outsideMm, 0)
  const back = at(outsideMm, parentMm)
  const below = size * 1.15
  const above = -size * 0.45
  const side = (isTop: boolean) => (isTop ? above : below)
  const top = at(0, fromFace ? lowMm : highMm)
  const bottom = at(0, fromFace ? highMm : lowMm)
  const words = { anchor: 'end', role: 'soft' } as const
  return [
    path([[at(-insideMm, 0), face]], false, 'outline', 'ink'),
    text([face[0], face[1] + side(fromFace)], toolFaceWords[input.side], size, words),
    text([back[0], back[1] + side(!fromFace)], 'back', size, words),
    path(
      [
        [
          [top[0], top[1] - size * 1.1],
          [bottom[0], bottom[1] + size * 0.9],
        ],
      ],
      false,
      'centre',
      'ink',
    ),
    text([top[0] + size * 0.35, top[1] - size * 0.5], 'edge of the opening', sizes.smallTextMm, {
      role: 'soft',
      halo: true,
    }),
  ]
}

function drawDimensions(profile: SectionProfile, input: PatchInput, at: At, sizes: Sizes): readonly Item[] {
  const { parentMm, outsideMm, lengthMm, lowMm, highMm, fromFace } = profile
  const size = sizes.smallTextMm
  const y = at(0, fromFace ? highMm : lowMm)[1] + size * 2.6
  const x = at(outsideMm, 0)[0] + size * 1.6
  const [foot, head] = [at(outsideMm, 0)[1], at(outsideMm, parentMm)[1]]
  const kind = input.edge === 'scarf' ? 'scarf' : 'steps'
  const across: readonly Item[] =
    lengthMm > 0
      ? [
          {
            kind: 'dimension',
            from: [at(0, 0)[0], y],
            to: [at(lengthMm, 0)[0], y],
            label: `${kind} ${figure(lengthMm, 1)} mm`,
            sizeMm: size,
            ends: 'arrows',
            role: 'soft',
          },
        ]
      : []
  return [
    ...across,
    {
      kind: 'dimension',
      from: [x, Math.max(foot, head)],
      to: [x, Math.min(foot, head)],
      label: `${figure(parentMm, 2)} mm`,
      sizeMm: size,
      ends: 'arrows',
      role: 'soft',
    },
  ]
}

function describe(plan: PatchPlan, input: PatchInput, profile: SectionProfile): string {
  const side = profile.fromFace ? 'from the face, tool face on top' : 'from the back, tool face at the bottom'
  const edge = input.edge === 'scarf' ? 'Sanded scarf' : 'Machined steps'
  return `${edge} over ${figure(profile.lengthMm, 1)} mm, worked ${side}. Parent ${figure(profile.parentMm, 2)} mm, built ${figure(plan.builtThicknessMm, 2)} mm.`
}
