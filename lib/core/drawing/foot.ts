import type { SeenFrom } from './face-model'
import type { Sizes } from './medium'
import { baselineAbout, text } from './primitives'
import { scaleBar } from './scale-bar'
import type { Box, Shape } from './types'

/** Below the frame: where it is seen from, the scale on paper, and a scale bar of about a sixth of the frame. */
export function foot(frame: Box, seenFrom: SeenFrom, sizes: Sizes): readonly Shape[] {
  const size = sizes.smallTextMm
  const y = frame.bottom + size * 1.75
  const view = seenFrom === 'back' ? 'seen from the back, mirrored' : 'seen from the cavity'
  const words = sizes.scaleWords === null ? view : `${view}, scale ${sizes.scaleWords}`
  return [
    text([frame.left, baselineAbout(y, size)], words, size, { role: 'soft' }),
    scaleBar([frame.right - size * 0.2, y + size * 0.2], (frame.right - frame.left) / 5, size),
  ]
}
