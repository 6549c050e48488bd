import { computeOffsets } from '#lib/services/outline'
import { readJson } from '#lib/web/body'
import { serve } from '#lib/web/route'

export function POST(request: Request): Promise<Response> {
  return serve(request, computeOffsets, () => readJson(request))
}
