import { facing } from './dxf-extrusion'
import type { DxfEntity } from './dxf-sections'
import { type DxfShape, named, span } from './dxf-shape'
import { pointOf, real, realOr } from './dxf-values'
import { lineName, Refused, stop } from './finding'

/** A full turn as programs write it, rounded: 6.28318 and 6.2832 are whole ellipses. */
const hairRad = 1e-5

/**
 * Centre, end of one half axis from there, the other one as a share of it, and two parameters between which it runs
 * counter-clockwise about the direction that it is seen from. Parameters are angles of the circle that was pressed to the
 * ellipse, not angles of the drawing. Equal ones are the whole ellipse.
 */
export function ellipseShape(entity: DxfEntity): DxfShape {
  const [x, y] = pointOf(entity, 11)
  const ratio = real(entity, 40)
  if (ratio === 0 || (x === 0 && y === 0)) throw withoutAxis(entity)
  const [startRad, endRad] = [realOr(entity, 41, 0), realOr(entity, 42, 2 * Math.PI)]
  const turn = 2 * Math.PI
  const sweep = (((endRad - startRad) % turn) + turn) % turn
  const whole = sweep === 0 || endRad - startRad > turn - hairRad
  const across = facing(entity) === 'mirrored' ? -ratio : ratio
  return {
    ...named(entity),
    course: {
      kind: 'ellipse',
      ellipse: {
        centre: pointOf(entity, 10),
        first: [x, y],
        second: [-y * across, x * across],
        startRad: whole ? 0 : startRad % turn,
        sweepRad: whole ? turn : sweep,
      },
    },
    closed: whole,
    heights: span([realOr(entity, 30, 0)]),
    mirrored: false,
  }
}

function withoutAxis(entity: DxfEntity): Refused {
  return new Refused(
    stop(
      'ellipse-axis',
      'This ELLIPSE has an axis of length 0.',
      lineName(entity.line),
      'Delete it in the drawing, or draw it anew.',
      { line: entity.line },
    ),
  )
}
