import { readPictureFile } from '#lib/services/pictures'
import { fileAnswer } from '#lib/web/picture-answer'
import { serve } from '#lib/web/route'

/** The bytes of a picture: full, or small as lists show it. */
export async function GET(
  request: Request,
  { params }: RouteContext<'/pictures/[id]/[size]'>,
): Promise<Response> {
  const { id, size } = await params
  return serve(
    request,
    readPictureFile,
    () => ({ id, size }),
    (file) => fileAnswer(request, file),
  )
}
