import 'server-only'
import type { PatchPlan } from '#lib/core/repair/types'
import { CALCULATION_VERSION, type Outcome } from '#lib/core/result'
import type { PatchAnswer } from '#lib/schema/answers/patch'
import { answer, problem } from './route'

/** A plan as the API tells it; "no plan" is a problem with its reason. */
export function patchAnswer(outcome: Outcome<PatchPlan>): Response {
  if (!outcome.ok) return problem(422, 'No plan', outcome.reason, { findings: outcome.findings })
  const { value, ...result } = outcome.result
  return answer({ ...value, ...result, calculationVersion: CALCULATION_VERSION } satisfies PatchAnswer)
}
