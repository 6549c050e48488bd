import { listPicturesOf } from '#lib/services/pictures'
import { pictureAnswer } from '#lib/web/picture-answer'
import { servePictureOf } from '#lib/web/picture-request'
import { answer, pathText, serve } from '#lib/web/route'

type Context = RouteContext<'/api/v1/moulds/[code]/pictures'>

/** The pictures of a mould, newest first: ?view= narrows it to one fixed view. */
export async function GET(request: Request, { params }: Context): Promise<Response> {
  const { code } = await params
  const view = new URL(request.url).searchParams.get('view')
  return serve(
    request,
    listPicturesOf,
    () => ({ code: pathText(code), ...(view === null ? {} : { view }) }),
    (pictures) => answer({ pictures: pictures.map(pictureAnswer) }),
  )
}

/** Takes a picture in: 201 when it was stored now, 200 with the same body when it stood there already. */
export async function POST(request: Request, { params }: Context): Promise<Response> {
  const { code } = await params
  return servePictureOf(request, pathText(code))
}
