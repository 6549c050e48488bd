import 'server-only'
import { CALCULATION_VERSION, type Outcome, type Result } from '#lib/core/result'
import { answer, problem } from './route'

/** A computed result as the API tells it: its figures, working and findings in one object. */
export function resultAnswer({ value, ...result }: Result<object>): Response {
  return answer({ ...value, ...result, calculationVersion: CALCULATION_VERSION })
}

/** An outcome as the API tells it; no answer is a problem, called `without`, with its reason. */
export function outcomeAnswer(without: string): (outcome: Outcome<object>) => Response {
  return (outcome) =>
    outcome.ok
      ? resultAnswer(outcome.result)
      : problem(422, without, outcome.reason, { findings: outcome.findings })
}
