import { writeSetLogOf } from '#lib/services/log-api'
import { readJson } from '#lib/web/body'
import { answer, pathText, serve } from '#lib/web/route'

/** A pull or a clearance of every piece, all or none: 201 when it was written now, 200 when it stood there already. */
export async function POST(
  request: Request,
  { params }: RouteContext<'/api/v1/sets/[code]/log'>,
): Promise<Response> {
  const { code } = await params
  return serve(
    request,
    writeSetLogOf,
    async () => ({ ...(Object(await readJson(request)) as object), code: pathText(code) }),
    ({ answer: body, written }) => answer(body, written ? 201 : 200),
  )
}
