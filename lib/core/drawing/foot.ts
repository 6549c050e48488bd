import type { SeenFrom } from './face-model'
import type { Sizes } from './medium'
import { baselineAbout, text } from './primitives'
import { roundLengthMm, scaleBar } from './scale-bar'
import { textWidthMm } from './text-width'
import type { Box, Shape } from './types'

/** Where a drawing is seen from, with the warning that a mirrored one needs. */
export function viewWords(seenFrom: SeenFrom): string {
  return seenFrom === 'back' ? 'seen from the back, mirrored' : 'seen from the cavity'
}

/** Below the frame: where it is seen from, the scale on paper, and a scale bar of about a sixth of the frame. */
export function foot(frame: Box, seenFrom: SeenFrom, sizes: Sizes): readonly Shape[] {
  const size = sizes.smallTextMm
  const y = frame.bottom + size * 1.75
  const view = viewWords(seenFrom)
  const words = sizes.scaleWords === null ? view : `${view}, scale ${sizes.scaleWords}`
  const mostMm = (frame.right - frame.left) / 5
  const lengthMm = roundLengthMm(mostMm)
  // Of a short bar the label stands out on both sides; it stays within the frame.
  const standsOut = Math.max(0, (textWidthMm(`${lengthMm} mm`, size) - lengthMm) / 2)
  return [
    text([frame.left, baselineAbout(y, size)], words, size, { role: 'soft' }),
    scaleBar([frame.right - size * 0.2 - standsOut, y + size * 0.2], mostMm, size),
  ]
}
