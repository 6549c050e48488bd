/** Face model in mm to display list: one truth for screen, SVG and PDF. */
export { clipLine, inside, type Segment, segmentsOf } from './boxes'
export { dowelPlaces, type TableIssue, type TablePoint } from './dowel-places'
export { edgeNames, viewScale } from './edge-names'
export {
  type DrawnOutline,
  edgeOf,
  editOutline,
  endOfEdge,
  nothingDrawn,
  type OutlineEdit,
  type OutlineHistory,
  startOutline,
} from './edit-outline'
export { faceDrawing } from './face-drawing'
export type { FaceDowel, FaceModel, FacePatch, PlannedOpening, SeenFrom } from './face-model'
export { type FaceOnSheet, type FaceSheet, faceSheet, padSheet, relaidSheet } from './face-sheet'
export { viewWords } from './foot'
export { hatch } from './hatch'
export { joinedPaths } from './joined-paths'
export { type LegendEntry, legendEntry } from './legend'
export { type Medium, paperRoom, type Sizes, scaleToFit, sizesAt } from './medium'
export { directionInView, directionOnDrawing, placeWindow, toDrawing, toFace } from './placement'
export { planDrawing, seenFromSide } from './plan-drawing'
export { primitives } from './primitives'
export { pullFates } from './pull-layout'
export { type PullFate, type PullStrokes, pullStrip, type StripSize } from './pull-strip'
export { findRoom } from './room'
export { roundLengthMm } from './scale-bar'
export { sectionDrawing } from './section-drawing'
export {
  type LineStyle,
  lineStyles,
  lineTable,
  pxPerPaperMm,
  type Role,
  roles,
  type StrokePx,
  screenStroke,
} from './styles'
export { textWidthMm } from './text-width'
export type {
  Box,
  DisplayList,
  FacePlacement,
  Fill,
  GroupItem,
  Item,
  LegendKey,
  PathItem,
  Primitive,
  Shape,
  Subject,
  TextItem,
  Xy,
} from './types'
export { changeView, mostZoom, type Sheet, type SheetView, type ViewAct, wholeSheet, windowOf } from './view'
