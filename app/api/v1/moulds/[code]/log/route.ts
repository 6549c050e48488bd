import { listLogOf, writeLogOf } from '#lib/services/log-api'
import { readJson } from '#lib/web/body'
import { answer, pathText, serve } from '#lib/web/route'

type Context = RouteContext<'/api/v1/moulds/[code]/log'>

/** The history of a mould, newest first: ?kind=pull&kind=coat narrows it, ?limit= bounds it. */
export async function GET(request: Request, { params }: Context): Promise<Response> {
  const { code } = await params
  const query = new URL(request.url).searchParams
  const limit = query.get('limit')
  return serve(
    request,
    listLogOf,
    () => ({
      code: pathText(code),
      kinds: query.getAll('kind'),
      ...(limit === null ? {} : { limit: Number(limit) }),
    }),
    (entries) => answer({ entries }),
  )
}

/** Appends an entry: 201 when it was written now, 200 with the same body when it stood there already. */
export async function POST(request: Request, { params }: Context): Promise<Response> {
  const { code } = await params
  return serve(
    request,
    writeLogOf,
    async () => ({ ...(Object(await readJson(request)) as object), code: pathText(code) }),
    ({ entry, written }) => answer(entry, written ? 201 : 200),
  )
}
