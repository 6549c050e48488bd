/** From a picture to the face by marks of known place: a homography of the plane, its residuals, what it can't tell. */
export { pictureToFace } from './picture-to-face'
export { type Projection, projected } from './projection'
export type { Curvature, FittedMark, Mark, PictureRequest, PictureToFace, Pixel } from './types'
