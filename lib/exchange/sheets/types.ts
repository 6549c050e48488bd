import type { PlanState } from '#lib/core/repair/index'
import type { PatchInput, PatchPlan } from '#lib/core/repair/types'
import type { Finding } from '#lib/core/result'
import type { PaperName } from './paper-sizes'

/** Who did what on which day of the shop. */
export interface SheetSignature {
  readonly name: string
  /** YYYY-MM-DD. */
  readonly on: string
}

/** Everything that the sheets of a patch plan say. The caller reads it from the stored record. */
export interface PatchSheet {
  readonly mould: { readonly code: string; readonly name: string }
  /** Name for people ("Opening round D02"), its number ("Patch 9"), and the version that is printed. */
  readonly plan: {
    readonly name: string
    readonly code: string
    readonly version: number
    readonly state: PlanState
  }
  readonly input: PatchInput
  readonly patch: PatchPlan
  readonly findings: readonly Finding[]
  /** Reasons given for the looks, filed under the finding's code and place (`becauseKey` of the core). */
  readonly becauses: Readonly<Record<string, string>>
  readonly sketched: SheetSignature | null
  /** One signature by the one who sketched is allowed and marked as self-checked. */
  readonly signed: readonly (SheetSignature & { readonly selfChecked: boolean })[]
  /** Address of the plan's page, for the QR code. */
  readonly address: string
  /** Id of the stored record that the figures come from. */
  readonly recordId: string
  readonly calculationVersion: string
  /** Moment of printing, ISO 8601 with an offset; the sheet has no clock of its own. */
  readonly printedAt: string
  /** The shop's zone, e.g. "Europe/Berlin". */
  readonly timeZone: string
  readonly paper: PaperName
}
