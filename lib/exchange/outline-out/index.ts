/** Outlines of a patch plan for other programs: as DXF and as SVG. */
export { type OutlineView, outlineViews, type PlanOutlines, planOutlines } from './plan-outlines'
export { writeOutlinesDxf } from './write-dxf'
export { writeOutlinesSvg } from './write-svg'
