/**
 * The envelope of every computed answer. A figure never comes alone: it carries the lines that a person would
 * write on paper to get it, and what the computation found worth saying about it.
 */

/** One line of hand calculation. `numbers` is the formula with the figures put in. */
export interface WorkingStep {
  readonly symbol: string
  readonly label: string
  readonly formula: string
  readonly numbers: string
  readonly value: number
  /** Unit of `value` as written on paper: "mm", "g/m2", "1" for a pure number. */
  readonly unit: string
  /** Id of an entry of `sources`. */
  readonly sourceId: string
}

/** stop: can't be signed; look: signed with a because; note: worth knowing. */
export type Severity = 'stop' | 'look' | 'note'

export interface Finding {
  /** Stable kebab-case name of the kind of finding, e.g. "opening-leaves-area". */
  readonly code: string
  readonly severity: Severity
  /** What is so, in plain words with the figures. */
  readonly text: string
  /** Where: a ply, a dowel tag, a file line, a place on the location grid. */
  readonly place: string | null
  /** What to do about it. A cure offered here has itself been checked against the rules. */
  readonly cure: string | null
  /** Figures behind the words, unit in the name, for scripts and tests. */
  readonly figures?: Readonly<Record<string, number | readonly number[]>>
}

export interface Result<Value> {
  readonly value: Value
  /** Name of the method in a few words. */
  readonly method: string
  readonly working: readonly WorkingStep[]
  readonly findings: readonly Finding[]
}

/** "No answer" is a value that the screen explains, not an exception. */
export type Outcome<Value> =
  | { readonly ok: true; readonly result: Result<Value> }
  | { readonly ok: false; readonly reason: string; readonly findings: readonly Finding[] }

/** Version of the calculations as a whole; stored with every plan so that a sheet can be defended later. */
export const CALCULATION_VERSION = '1'

export function worst(findings: readonly Finding[]): Severity | null {
  for (const severity of ['stop', 'look', 'note'] as const) {
    if (findings.some((finding) => finding.severity === severity)) return severity
  }
  return null
}
