import { computeHomography } from '#lib/services/homography'
import { readJson } from '#lib/web/body'
import { outcomeAnswer } from '#lib/web/result-answer'
import { serve } from '#lib/web/route'

export function POST(request: Request): Promise<Response> {
  return serve(request, computeHomography, () => readJson(request), outcomeAnswer('No fit'))
}
