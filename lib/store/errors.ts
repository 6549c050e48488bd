import type { FieldErrors } from '#lib/schema/form'

/** What a refusal tells beside its words. */
interface RefusalDetail {
  readonly status?: 403 | 404 | 409 | 422
  readonly fields?: FieldErrors
  /** On a conflict: what is stored now, and its version. */
  readonly current?: { readonly version: number; readonly values: Readonly<Record<string, unknown>> }
  /** When an id comes again with other content: what was stored under it first. */
  readonly stored?: Readonly<Record<string, unknown>>
}

/** Something that is not done, said in words for the one who asked. Nothing was written. */
export class Refusal extends Error {
  readonly status: 403 | 404 | 409 | 422
  readonly fields: FieldErrors
  readonly current: RefusalDetail['current']
  readonly stored: RefusalDetail['stored']

  constructor(message: string, detail: RefusalDetail = {}) {
    super(message)
    this.name = 'Refusal'
    this.status = detail.status ?? 422
    this.fields = detail.fields ?? {}
    this.current = detail.current
    this.stored = detail.stored
  }
}

/** Name of the constraint that a failed write ran into, from either client; null when it was something else. */
export function violatedConstraint(error: unknown): string | null {
  if (typeof error !== 'object' || error === null) return null
  const byPostgres = (error as { constraint_name?: unknown }).constraint_name
  if (typeof byPostgres === 'string') return byPostgres
  const cause = (error as { meta?: { driverAdapterError?: { cause?: unknown } } }).meta?.driverAdapterError
    ?.cause
  if (typeof cause !== 'object' || cause === null) return null
  const { constraint, originalMessage } = cause as {
    constraint?: { index?: string; fields?: string[]; foreignKey?: object }
    originalMessage?: string
  }
  if (constraint?.index) return constraint.index
  return /constraint "([^"]+)"/.exec(originalMessage ?? '')?.[1] ?? null
}
