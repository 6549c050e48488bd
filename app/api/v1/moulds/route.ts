import { listRack } from '#lib/services/moulds'
import { rackAnswer } from '#lib/web/mould-answer'
import { answer, serve } from '#lib/web/route'

export function GET(request: Request): Promise<Response> {
  return serve(
    request,
    listRack,
    () => ({}),
    (rack) => answer(rackAnswer(rack)),
  )
}
