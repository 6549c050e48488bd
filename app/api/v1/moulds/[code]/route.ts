import { readMouldPage } from '#lib/services/moulds'
import { mouldAnswer } from '#lib/web/mould-answer'
import { answer, pathText, serve } from '#lib/web/route'

export async function GET(
  request: Request,
  { params }: RouteContext<'/api/v1/moulds/[code]'>,
): Promise<Response> {
  const { code } = await params
  return serve(
    request,
    readMouldPage,
    () => ({ code: pathText(code) }),
    (page) => answer(mouldAnswer(page)),
  )
}
