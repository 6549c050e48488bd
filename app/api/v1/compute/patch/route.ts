import { computePatch } from '#lib/services/patches'
import { readJson } from '#lib/web/body'
import { patchAnswer } from '#lib/web/patch-answer'
import { serve } from '#lib/web/route'

export function POST(request: Request): Promise<Response> {
  return serve(request, computePatch, () => readJson(request), patchAnswer)
}
