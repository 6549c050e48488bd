import { type DisplayList, type Primitive, primitives } from '#lib/core/drawing/index'
import { inkOf, type Paper, setStroke } from './paper'
import { words } from './words'

/** Draws a display list made for paper with its top left corner at (x, y) of the page, at the list's scale. */
export function drawList(paper: Paper, list: DisplayList, x: number, y: number): void {
  for (const primitive of primitives(list.items)) drawPrimitive(paper, primitive, list.denominator, x, y)
}

export function drawPrimitive(
  paper: Paper,
  shape: Primitive,
  denominator: number,
  x: number,
  y: number,
): void {
  const { doc } = paper
  if (shape.kind === 'text') {
    words(paper, x + shape.at[0] / denominator, y + shape.at[1] / denominator, shape.text, {
      sizeMm: shape.sizeMm / denominator,
      font: shape.weight,
      role: shape.role,
      anchor: shape.anchor,
      turnDeg: shape.turnDeg,
      ...(shape.halo ? { haloMm: 1 } : {}),
    })
    return
  }
  setStroke(paper, shape.style, shape.role)
  if (shape.kind === 'circle') {
    const [cx, cy] = shape.centre
    doc.circle(x + cx / denominator, y + cy / denominator, shape.radiusMm / denominator)
  } else {
    for (const line of shape.lines) {
      for (const [i, [px, py]] of line.entries()) {
        if (i === 0) doc.moveTo(x + px / denominator, y + py / denominator)
        else doc.lineTo(x + px / denominator, y + py / denominator)
      }
      if (shape.closed) doc.closePath()
    }
  }
  if (shape.fill === 'none') doc.stroke()
  else doc.fillAndStroke(fillOf(shape), inkOf[shape.role], 'even-odd')
}

function fillOf(shape: Exclude<Primitive, { kind: 'text' }>): string {
  if (shape.fill === 'solid') return inkOf[shape.role]
  return shape.fill === 'wash' ? '#ececec' : '#ffffff'
}
