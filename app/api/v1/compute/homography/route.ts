import { computeHomography } from '#lib/services/homography'
import { readJson } from '#lib/web/body'
import { homographyAnswer } from '#lib/web/homography-answer'
import { serve } from '#lib/web/route'

export function POST(request: Request): Promise<Response> {
  return serve(request, computeHomography, () => readJson(request), homographyAnswer)
}
