export { pictureContent } from './content'
export { type PictureReading, type PictureSides, type ReadPicture, readPicture } from './read-picture'
