import { hatch } from './hatch'
import { path, resolve } from './primitives'
import type { LineStyle, Role } from './styles'
import type { LegendKey, PathItem, Primitive, Xy } from './types'

/** One entry of a legend: a sample of the line in paper mm, and the words beside it. */
export interface LegendEntry {
  readonly words: string
  readonly widthMm: number
  readonly heightMm: number
  readonly shapes: readonly Primitive[]
}

const widthMm = 6.4
const heightMm = 3.8
const middle = heightMm / 2

const words: Readonly<Record<LegendKey, string>> = {
  patch: 'patch',
  footprint: 'footprint on the back',
  opening: 'opening, planned',
  'opening-cut': 'opening',
  cover: 'cover ply',
  dowel: 'locating point',
  datum: 'datum point',
  'old-place': 'place before the move',
  trim: 'trim line',
  scribe: 'scribe line',
  'keep-out': 'keep-out on the back',
}

export function legendEntry(key: LegendKey): LegendEntry {
  return { words: words[key], widthMm, heightMm, shapes: samples[key]() }
}

const samples: Readonly<Record<LegendKey, () => readonly Primitive[]>> = {
  patch: () => [...resolve(hatch([box], 1.2, 'ink')), frame('thin', 'ink')],
  footprint: () => [frame('footprint', 'ink')],
  opening: () => [frame('opening', 'held')],
  'opening-cut': () => [frame('opening-cut', 'held')],
  cover: () => [frame('cover', 'ink')],
  dowel: () =>
    resolve({ kind: 'centre-mark', at: [widthMm / 2, middle], radiusMm: 0.9, datum: false, role: 'ink' }),
  datum: () =>
    resolve({ kind: 'centre-mark', at: [widthMm / 2, middle], radiusMm: 0.9, datum: true, role: 'ink' }),
  'old-place': () => [
    { kind: 'circle', centre: [1.4, middle], radiusMm: 1, style: 'old-place', role: 'held', fill: 'none' },
    ...resolve({
      kind: 'arrow',
      from: [1.4, middle],
      to: [widthMm - 0.2, middle],
      headMm: 1.8,
      style: 'thin',
      role: 'held',
    }),
  ],
  trim: () => [line('trim', 'ink')],
  scribe: () => [line('scribe', 'ink')],
  'keep-out': () => [line('hidden', 'soft')],
}

const box: readonly Xy[] = [
  [0.3, 0.3],
  [widthMm - 0.3, 0.3],
  [widthMm - 0.3, heightMm - 0.3],
  [0.3, heightMm - 0.3],
]

function frame(style: LineStyle, role: Role): PathItem {
  return path([box], true, style, role)
}

function line(style: LineStyle, role: Role): PathItem {
  return path(
    [
      [
        [0, middle],
        [widthMm, middle],
      ],
    ],
    false,
    style,
    role,
  )
}
