import { listRack } from '#lib/services/rack'
import { rackAnswer } from '#lib/web/mould-answer'
import { answer, serve } from '#lib/web/route'

/** The rack, a page at a time: ?find=, ?state=, ?sort=, ?page=, ?size=. */
export function GET(request: Request): Promise<Response> {
  const query = new URL(request.url).searchParams
  const number = (name: string) => (query.has(name) ? { [name]: Number(query.get(name)) } : {})
  const word = (name: string) => (query.has(name) ? { [name]: query.get(name) } : {})
  return serve(
    request,
    listRack,
    () => ({
      size: 500,
      ...word('find'),
      ...word('state'),
      ...word('sort'),
      ...number('page'),
      ...number('size'),
    }),
    (rack) => answer(rackAnswer(rack)),
  )
}
