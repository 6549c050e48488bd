import { computePlate } from '#lib/services/mechanics'
import { readJson } from '#lib/web/body'
import { resultAnswer } from '#lib/web/result-answer'
import { serve } from '#lib/web/route'

export function POST(request: Request): Promise<Response> {
  return serve(request, computePlate, () => readJson(request), resultAnswer)
}
