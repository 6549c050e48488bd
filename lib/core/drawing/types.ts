/**
 * The display list: one truth for screen, SVG and PDF. Drawing coordinates are millimetres of the thing drawn,
 * x to the right, y down, from the top left corner of the list. What must stay readable at every scale (text,
 * symbols, hatch distance) is sized through `denominator` when the list is made, so renderers only draw.
 */
import type { LineStyle, Role } from './styles'

/** A point of a drawing, mm, y down. */
export type Xy = readonly [xMm: number, yMm: number]

/** Axis-parallel box of a drawing. */
export interface Box {
  readonly left: number
  readonly top: number
  readonly right: number
  readonly bottom: number
}

/** none: not filled; sheet: the paper's own colour; wash: a light tint; solid: the role's colour. */
export type Fill = 'none' | 'sheet' | 'wash' | 'solid'

/** One or several lines drawn as one; closed ones are filled by the even-odd rule. */
export interface PathItem {
  readonly kind: 'path'
  readonly lines: readonly (readonly Xy[])[]
  readonly closed: boolean
  readonly style: LineStyle
  readonly role: Role
  readonly fill: Fill
}

export interface CircleItem {
  readonly kind: 'circle'
  readonly centre: Xy
  readonly radiusMm: number
  readonly style: LineStyle
  readonly role: Role
  readonly fill: Fill
}

/** `at` is on the baseline. `sizeMm` is the em of the font. The halo is a rim in the paper's colour. */
export interface TextItem {
  readonly kind: 'text'
  readonly at: Xy
  readonly text: string
  readonly sizeMm: number
  readonly anchor: 'start' | 'middle' | 'end'
  readonly weight: 'regular' | 'semibold'
  readonly role: Role
  readonly halo: boolean
  /** Clockwise, as seen on the drawing. */
  readonly turnDeg: number
}

/** 45 degree hatch, already cut to its loops: `segments` is what is drawn. */
export interface HatchItem {
  readonly kind: 'hatch'
  readonly loops: readonly (readonly Xy[])[]
  readonly segments: readonly (readonly [Xy, Xy])[]
  readonly role: Role
}

export interface ArrowItem {
  readonly kind: 'arrow'
  readonly from: Xy
  readonly to: Xy
  readonly headMm: number
  readonly style: LineStyle
  readonly role: Role
}

/** A locating point. The datum is marked by a second ring. */
export interface CentreMarkItem {
  readonly kind: 'centre-mark'
  readonly at: Xy
  readonly radiusMm: number
  readonly datum: boolean
  readonly role: Role
}

/** A measured distance with its label; a scale bar is one with ticks and a round length. */
export interface DimensionItem {
  readonly kind: 'dimension'
  readonly from: Xy
  readonly to: Xy
  readonly label: string
  readonly sizeMm: number
  readonly ends: 'ticks' | 'arrows'
  readonly role: Role
}

export type Shape = PathItem | CircleItem | TextItem | HatchItem | ArrowItem | CentreMarkItem | DimensionItem

/** What a group of shapes stands for, so that a screen can link it. */
export interface Subject {
  readonly kind: 'dowel' | 'patch' | 'opening'
  readonly name: string
}

/** Shapes that belong to one thing of the mould. `hit` is the least area that takes a pointer. */
export interface GroupItem {
  readonly kind: 'group'
  readonly subject: Subject
  /** What a screen reader says. */
  readonly label: string
  readonly hit: Box
  readonly items: readonly Shape[]
}

export type Item = Shape | GroupItem

/** All that a renderer must know how to draw: composites are resolved into these by `primitives`. */
export type Primitive = PathItem | CircleItem | TextItem

/** How face coordinates lie on a drawing: x = (u - uAtLeft) or (uAtLeft - u), y = vAtTop - v. */
export interface FacePlacement {
  readonly uAtLeft: number
  readonly vAtTop: number
  /** True for a view from the back. */
  readonly mirrored: boolean
}

/** One entry of the legend that stands below a drawing. */
export type LegendKey =
  | 'patch'
  | 'footprint'
  | 'opening'
  | 'opening-cut'
  | 'cover'
  | 'dowel'
  | 'datum'
  | 'old-place'
  | 'trim'
  | 'scribe'
  | 'keep-out'

export interface DisplayList {
  /** For the reader who can't see it: what it is, and what is on it. */
  readonly title: string
  readonly description: string
  readonly widthMm: number
  readonly heightMm: number
  /** Drawing millimetres for a millimetre of paper; a screen counts as paper of 96 pixels to 25.4 mm. */
  readonly denominator: number
  /** Size of ordinary text in drawing mm. */
  readonly textMm: number
  readonly placement: FacePlacement | null
  readonly legend: readonly LegendKey[]
  /** Labels for which there was no room at this size; said beside the drawing, never dropped in silence. */
  readonly omittedLabels: readonly string[]
  readonly items: readonly Item[]
}
