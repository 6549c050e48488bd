import type { Point } from '#lib/core/geometry/index'
import type { Finding, Severity } from '#lib/core/result'
import { figure } from '#lib/core/units'
import { mostOfAKind } from './limits'

type Figures = NonNullable<Finding['figures']>

/** What can't be used: the reading is refused. */
export function stop(
  code: string,
  text: string,
  place: string | null,
  cure: string,
  figures?: Figures,
): Finding {
  return finding('stop', code, text, place, cure, figures)
}

/** What a person must choose or confirm: the reading asks. */
export function look(
  code: string,
  text: string,
  place: string | null,
  cure: string,
  figures?: Figures,
): Finding {
  return finding('look', code, text, place, cure, figures)
}

/** What was done in reading and is worth knowing: accepted with a notice. */
export function note(code: string, text: string, place: string | null, figures?: Figures): Finding {
  return finding('note', code, text, place, null, figures)
}

function finding(
  severity: Severity,
  code: string,
  text: string,
  place: string | null,
  cure: string | null,
  figures: Figures | undefined,
): Finding {
  return { code, severity, text, place, cure, ...(figures === undefined ? {} : { figures }) }
}

/** The first faults in full, the rest as a count. */
export function someOf(faults: readonly Finding[]): readonly Finding[] {
  const more = faults.length - mostOfAKind
  if (more <= 0) return faults
  const text = `${more} more values can't be read.`
  return [
    ...faults.slice(0, mostOfAKind),
    stop('more-faults', text, null, 'Correct those named, and read it again.', { count: more }),
  ]
}

/** A damaged or foreign file: caught once, where the reading begins, and answered as a refusal. */
export class Refused extends Error {
  readonly findings: readonly Finding[]

  constructor(...findings: readonly Finding[]) {
    super(findings.map(({ text }) => text).join(' '))
    this.name = 'Refused'
    this.findings = findings
  }
}

export function lineName(line: number): string {
  return `line ${line}`
}

export function placeName([u, v]: Point): string {
  return `u ${figure(u, 3)}, v ${figure(v, 3)} mm`
}

/** "1 hole", "3 holes" */
export function counted(count: number, one: string, many: string): string {
  return `${count} ${count === 1 ? one : many}`
}
