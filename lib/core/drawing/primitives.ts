import type { Role } from './styles'
import { capHeightEm } from './text-width'
import type {
  ArrowItem,
  CentreMarkItem,
  CircleItem,
  DimensionItem,
  Item,
  PathItem,
  Primitive,
  Shape,
  TextItem,
  Xy,
} from './types'

/** Everything of a list as lines, circles and text: what a renderer must be able to draw, and nothing more. */
export function primitives(items: readonly Item[]): readonly Primitive[] {
  return items.flatMap((item) => (item.kind === 'group' ? item.items.flatMap(resolve) : resolve(item)))
}

export function resolve(shape: Shape): readonly Primitive[] {
  switch (shape.kind) {
    case 'path':
    case 'circle':
    case 'text':
      return [shape]
    case 'hatch':
      return shape.segments.length === 0 ? [] : [path(shape.segments, false, 'hatch', shape.role)]
    case 'arrow':
      return arrow(shape)
    case 'centre-mark':
      return centreMark(shape)
    case 'dimension':
      return dimension(shape)
  }
}

export function path(
  lines: readonly (readonly Xy[])[],
  closed: boolean,
  style: PathItem['style'],
  role: Role,
  fill: PathItem['fill'] = 'none',
): PathItem {
  return { kind: 'path', lines, closed, style, role, fill }
}

export function text(
  at: Xy,
  words: string,
  sizeMm: number,
  more: Partial<Omit<TextItem, 'kind' | 'at' | 'text' | 'sizeMm'>> = {},
): TextItem {
  return {
    kind: 'text',
    at,
    text: words,
    sizeMm,
    anchor: more.anchor ?? 'start',
    weight: more.weight ?? 'regular',
    role: more.role ?? 'ink',
    halo: more.halo ?? false,
    turnDeg: more.turnDeg ?? 0,
  }
}

function unit(from: Xy, to: Xy): Xy {
  const length = Math.hypot(to[0] - from[0], to[1] - from[1])
  return length === 0 ? [1, 0] : [(to[0] - from[0]) / length, (to[1] - from[1]) / length]
}

function head(tip: Xy, [dx, dy]: Xy, lengthMm: number): readonly Xy[] {
  const half = lengthMm * 0.28
  const back: Xy = [tip[0] - dx * lengthMm, tip[1] - dy * lengthMm]
  return [tip, [back[0] - dy * half, back[1] + dx * half], [back[0] + dy * half, back[1] - dx * half]]
}

function arrow(item: ArrowItem): readonly PathItem[] {
  const along = unit(item.from, item.to)
  const length = Math.hypot(item.to[0] - item.from[0], item.to[1] - item.from[1])
  const headMm = Math.min(item.headMm, length * 0.6)
  const shaftEnd: Xy = [item.to[0] - along[0] * headMm * 0.9, item.to[1] - along[1] * headMm * 0.9]
  return [
    path([[item.from, shaftEnd]], false, item.style, item.role),
    path([head(item.to, along, headMm)], true, 'thin', item.role, 'solid'),
  ]
}

function centreMark(item: CentreMarkItem): readonly Primitive[] {
  const [x, y] = item.at
  const ring = (radiusMm: number): CircleItem => ({
    kind: 'circle',
    centre: item.at,
    radiusMm,
    style: 'thin',
    role: item.role,
    fill: 'none',
  })
  const arm = item.radiusMm * centreMarkReach
  const cross = path(
    [
      [
        [x - arm, y],
        [x + arm, y],
      ],
      [
        [x, y - arm],
        [x, y + arm],
      ],
    ],
    false,
    'thin',
    item.role,
  )
  return item.datum
    ? [ring(item.radiusMm), ring(item.radiusMm * datumRing), cross]
    : [ring(item.radiusMm), cross]
}

/** Arms of a centre mark and second ring of a datum, in radii. */
export const centreMarkReach = 2
export const datumRing = 1.55

function dimension(item: DimensionItem): readonly Primitive[] {
  const along = unit(item.from, item.to)
  const across: Xy = [-along[1], along[0]]
  const line = path([[item.from, item.to]], false, 'dimension', item.role)
  const ends: readonly PathItem[] =
    item.ends === 'ticks'
      ? [
          path(
            [item.from, item.to].map((end) => tick(end, across, item.sizeMm * 0.45)),
            false,
            'dimension',
            item.role,
          ),
        ]
      : [
          path(
            [
              head(item.from, [-along[0], -along[1]], item.sizeMm * 0.75),
              head(item.to, along, item.sizeMm * 0.75),
            ],
            true,
            'dimension',
            item.role,
            'solid',
          ),
        ]
  const degrees = (Math.atan2(along[1], along[0]) * 180) / Math.PI
  const turnDeg = degrees >= 90 ? degrees - 180 : degrees < -90 ? degrees + 180 : degrees
  const up = (turnDeg * Math.PI) / 180
  const lift = item.sizeMm * 0.4
  const at: Xy = [
    (item.from[0] + item.to[0]) / 2 + Math.sin(up) * lift,
    (item.from[1] + item.to[1]) / 2 - Math.cos(up) * lift,
  ]
  const label = text(at, item.label, item.sizeMm, { anchor: 'middle', role: item.role, halo: true, turnDeg })
  return [line, ...ends, label]
}

function tick(at: Xy, across: Xy, halfMm: number): readonly Xy[] {
  return [
    [at[0] - across[0] * halfMm, at[1] - across[1] * halfMm],
    [at[0] + across[0] * halfMm, at[1] + across[1] * halfMm],
  ]
}

/** Baseline that puts capitals of a size midway about y. */
export function baselineAbout(y: number, sizeMm: number): number {
  return y + (capHeightEm * sizeMm) / 2
}
