import type { PictureContent } from './content'

/** What is told of a file that is not taken, with its cure. */
export const advice: Readonly<
  Record<Exclude<PictureContent, 'jpeg' | 'png' | 'webp' | 'gif' | 'avif' | 'tiff' | 'pdf'>, string>
> = {
  heic:
    "This is a HEIC photo, which most screens can't show. In the settings of the phone's camera choose the format JPEG " +
    '("most compatible" instead of "high efficiency"). A photo that is already taken: share or export it as JPEG, then send that.',
  heif:
    "This is a HEIF picture, which most screens can't show. In the settings of the phone's camera choose the format JPEG " +
    '("most compatible"). A picture that is already taken: share or export it as JPEG, then send that.',
  'camera-raw': 'This is a raw file of a camera. Export it as JPEG, then send that.',
  bmp: 'This is a BMP picture. Save it as PNG (a drawing) or JPEG (a photo), then send that.',
  svg: 'SVG may carry script, so it is not kept. Export the drawing as PDF or PNG, then send that.',
  'jpeg-xl': 'This is a JPEG XL picture. Save it as JPEG or PNG, then send that.',
  'jpeg-2000': 'This is a JPEG 2000 picture. Save it as JPEG or PNG, then send that.',
  photoshop: 'This is the working file of a painting program. Export it as JPEG or PNG, then send that.',
  film: 'This is a film or a sound. Send a single picture of it as JPEG.',
  page: 'This is a web page. Send a picture (JPEG, PNG) or a drawing as PDF.',
  archive: 'This is an archive or an office document. Send the pictures one by one, a drawing as PDF.',
  unknown: 'This is no picture that can be read. Send a JPEG or PNG, or a drawing as PDF.',
}

export const emptyFile =
  'The file is empty (0 bytes); it may not have come over whole. Choose it again, or take the photo anew.'
export const cutOff =
  'The file breaks off or is damaged: it may not have come over whole. Copy it anew from the phone or card, then send it again.'
