import { pictureToFace } from '#lib/core/geometry/homography/index'
import { HomographyRequest } from '#lib/schema/homography'
import { everyone, verb } from './verb'

/** Places on the face what was traced in a picture; reads and writes nothing. */
export const computeHomography = verb(
  'homography.compute',
  everyone,
  HomographyRequest,
  async (_actor, request) => pictureToFace(request),
)
