import { openApi } from '#lib/web/openapi'
import { answer } from '#lib/web/route'

export const dynamic = 'force-dynamic'

/** The description of this API; open to everyone. */
export function GET(): Response {
  return answer(openApi())
}
