import type { Xy } from '#lib/core/drawing/index'

/** Where on the drawing a pointer is, in the drawing's own millimetres; null before the drawing is laid out. */
export function pointerPoint(svg: SVGSVGElement, clientX: number, clientY: number): Xy | null {
  const onScreen = svg.getScreenCTM()
  if (onScreen === null) return null
  const { x, y } = new DOMPoint(clientX, clientY).matrixTransform(onScreen.inverse())
  return [x, y]
}
