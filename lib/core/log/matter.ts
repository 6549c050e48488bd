import type { Finding, Severity } from '../result'
import type { LogKind } from './kinds'
import type { ReleaseCount } from './types'

/** One line of what must be settled before the next lay-up, with its cure. */
export interface Matter extends Finding {
  /** The word at the end of the line: "missing", "proof pull", "2 more coats". */
  readonly word: string
  /** The act that settles it; null when it is settled elsewhere. */
  readonly settledBy: LogKind | null
  readonly areaId: string | null
  readonly patchId: string | null
  /** The entry that it is about: an open matter, a repair. */
  readonly entryId: string | null
}

interface MatterParts {
  readonly code: string
  readonly severity: Severity
  readonly text: string
  readonly word: string
  readonly cure: string
  readonly settledBy: LogKind | null
  readonly target?: ReleaseCount
  readonly areaId?: string | null
  readonly patchId?: string | null
  readonly entryId?: string | null
}

/** A line with the place and the ids of what it is about. */
export function matter({ target, ...parts }: MatterParts): Matter {
  return {
    ...parts,
    place: target?.name ?? null,
    areaId: target?.target === 'area' ? target.areaId : (parts.areaId ?? null),
    patchId: target?.target === 'patch' ? target.patchId : (parts.patchId ?? null),
    entryId: parts.entryId ?? null,
  }
}
