import type { Loop, Point } from '../types'
import type { Projection } from './projection'

/** A point of a picture, [x, y] in pixels: x to the right, y downwards from the upper left corner; parts of a pixel count. */
export type Pixel = readonly [number, number]

/** A point that is seen in the picture and whose place on the face is known. */
export interface Mark {
  readonly tag: string
  readonly atPx: Pixel
  readonly atMm: Point
}

/** How the face area is bent. Double: the smaller of the two radii. */
export type Curvature =
  | { readonly kind: 'flat' }
  | { readonly kind: 'single' | 'double'; readonly radiusMm: number }

export interface PictureRequest {
  /** At least four, each with a tag of its own. */
  readonly marks: readonly Mark[]
  /** What was traced; null when only the fit is asked for. */
  readonly outlinePx: readonly Pixel[] | null
  /** Single points to be placed on the face. */
  readonly pointsPx: readonly Pixel[]
  /** Places of the face to be found in the picture. */
  readonly placesMm: readonly Point[]
  /** The picture shows the face from the back, or was mirrored. */
  readonly mirrored: boolean
  readonly curvature: Curvature
}

export interface FittedMark extends Mark {
  /** Where the fit puts it. */
  readonly fittedMm: Point
  /** From its known place to where the fit puts it; null with four marks, which fit whatever they are. */
  readonly residualMm: number | null
  /** From its known place to where all the other marks put it; null where those are too few, or lie in a line. */
  readonly fromOthersMm: number | null
}

export interface PictureToFace {
  /** [x, y, 1] times this is w times [u, v, 1]; w is 1 in the middle of the marks and above 0 on all that is seen. */
  readonly toFace: Projection
  /** Its inverse. */
  readonly toPicture: Projection
  readonly marks: readonly FittedMark[]
  /** Figures that the marks give beyond the eight that the fit takes. */
  readonly freedom: number
  /** Root mean square of the residuals of the marks; null with four. */
  readonly rmsMm: number | null
  readonly largestMm: number | null
  /** Standard deviation of a mark along u or v, estimated from the residuals; null with four. */
  readonly spreadMm: number | null
  /** On the face, counter-clockwise; null when none was sent. */
  readonly outlineMm: Loop | null
  /** How many mm the worst point of the outline is out for 1 mm in every coordinate of the marks (standard deviations). */
  readonly outlineSlip: number | null
  /** Standard deviation of the worst point of the outline, that of its worse direction; null with four marks. */
  readonly outlineSpreadMm: number | null
  readonly pointsMm: readonly Point[]
  readonly placesPx: readonly Pixel[]
  /** How much of the face a pixel covers over marks and outline, along the coarser way. */
  readonly mmPerPixel: { readonly least: number; readonly most: number }
  /** About how far from square on the face is seen, in the middle of the outline or else of the marks. */
  readonly viewDeg: number
}
