import { findInBook } from '#lib/services/search'
import { serve } from '#lib/web/route'

/** Searches the book: ?q=floor%20B5, &in=mould for one kind, &limit=20, &brief for suggestions. */
export function GET(request: Request): Promise<Response> {
  const asked = new URL(request.url).searchParams
  const limit = asked.get('limit')
  return serve(request, findInBook, () => ({
    q: asked.get('q') ?? '',
    ...(asked.has('in') ? { in: asked.get('in') } : {}),
    ...(limit === null ? {} : { limit: limit === '' ? Number.NaN : Number(limit) }),
    ...(asked.has('brief') ? { brief: true } : {}),
  }))
}
