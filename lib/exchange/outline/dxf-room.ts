import { Refused, stop } from './finding'
import { mostVertices } from './limits'

export function tooManyPoints(): Refused {
  return new Refused(
    stop(
      'too-many-points',
      `The drawing holds more than ${mostVertices} points.`,
      null,
      'Save a drawing that holds nothing but the outline.',
      { mostVertices },
    ),
  )
}
