import { computePatch } from '#lib/services/patches'
import { readJson } from '#lib/web/body'
import { outcomeAnswer } from '#lib/web/result-answer'
import { serve } from '#lib/web/route'

export function POST(request: Request): Promise<Response> {
  return serve(request, computePatch, () => readJson(request), outcomeAnswer('No plan'))
}
