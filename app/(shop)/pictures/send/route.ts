import { servePictureForm } from '#lib/web/picture-request'

/** Photos and drawings from the shop's own form. */
export function POST(request: Request): Promise<Response> {
  return servePictureForm(request)
}
