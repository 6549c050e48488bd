import type { FieldErrors } from '#lib/schema/form'

/** 503: not now, sent again later it may do; 507: there is no room. */
type RefusalStatus = 403 | 404 | 409 | 422 | 503 | 507

/** What a refusal tells beside its words. */
interface RefusalDetail {
  readonly status?: RefusalStatus
  readonly fields?: FieldErrors
  /** On a conflict: what is stored now, and its version. */
  readonly current?: { readonly version: number; readonly values: Readonly<Record<string, unknown>> }
  /** When an id comes again with other content: what was stored under it first. */
  readonly stored?: Readonly<Record<string, unknown>>
}

/** Something that is not done, said in words for the one who asked. Nothing was written. */
export class Refusal extends Error {
  readonly status: RefusalStatus
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

/** Code of a failure: five signs of Postgres (from either client), or the system's name such as ENOSPC. */
function failureCode(error: unknown): string | null {
  if (typeof error !== 'object' || error === null) return null
  const { code, cause, meta } = error as {
    code?: unknown
    cause?: unknown
    meta?: { driverAdapterError?: { cause?: { originalCode?: unknown } } }
  }
  const original =
    meta?.driverAdapterError?.cause?.originalCode ?? (cause as { originalCode?: unknown })?.originalCode
  if (typeof original === 'string') return original
  return typeof code === 'string' ? code : null
}

/** 53100 is disk_full in Postgres' table of error codes; the others are the system's own names. */
const diskFull = new Set(['53100', 'ENOSPC', 'EDQUOT'])

/** Shutting down or starting up (57P0x), a connection that broke or was never made (08xxx, by system, by client). */
const databaseAway =
  /^(57P0[123]|08\w{3}|ECONNREFUSED|ECONNRESET|EPIPE|CONNECTION_(CLOSED|ENDED|DESTROYED)|CONNECT_TIMEOUT|P1001|P1017)$/

/**
 * What a failed act says to the one who asked, where there is something to say: a refusal as it is, a full disk
 * or a database that is away in words with the cure. Null for anything else, which is a fault of ours.
 */
export function refusalOf(error: unknown): Refusal | null {
  if (error instanceof Refusal) return error
  const code = failureCode(error) ?? ''
  if (databaseAway.test(code)) {
    return new Refusal(
      'The database does not answer just now. Send it again in a minute: it is stored once, also if it did get through.',
      { status: 503 },
    )
  }
  if (!diskFull.has(code)) return null
  return new Refusal(
    'The disk of the database is full: nothing of this was saved, what stood there before is whole. ' +
      'Make room on the machine that runs the shop, then send it again.',
    { status: 507 },
  )
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
