import 'server-only'
import type { PictureToFace } from '#lib/core/geometry/homography/index'
import { CALCULATION_VERSION, type Outcome } from '#lib/core/result'
import type { HomographyAnswer } from '#lib/schema/answers/homography'
import { answer, problem } from './route'

/** A fit as the API tells it; "no fit" is a problem with its reason. */
export function homographyAnswer(outcome: Outcome<PictureToFace>): Response {
  if (!outcome.ok) return problem(422, 'No fit', outcome.reason, { findings: outcome.findings })
  const { value, ...result } = outcome.result
  return answer({ ...value, ...result, calculationVersion: CALCULATION_VERSION } satisfies HomographyAnswer)
}
