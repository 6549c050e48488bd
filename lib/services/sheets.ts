import * as z from 'zod'
import { shopDay } from '#lib/core/dates'
import { benchSheet, type PatchSheet, plyTemplates } from '#lib/exchange/sheets/index'
import { Refusal } from '#lib/store/errors'
import { readPatch, type StoredPatch, type StoredPlan } from '#lib/store/patches'
import { shopContext } from './shop'
import { everyone, verb } from './verb'

const SheetRequest = z.object({
  patchId: z.uuid(),
  /** Null: the newest version. */
  versionNo: z.int().nullable(),
  /** Where the shop's pages are reached, for the QR code. */
  origin: z.url(),
})

export interface PrintedSheet {
  readonly fileName: string
  readonly bytes: Uint8Array
}

export const printBenchSheet = verb('patches.bench-sheet', everyone, SheetRequest, (_actor, request) =>
  print(request, 'bench sheet', benchSheet),
)

export const printTemplates = verb('patches.templates', everyone, SheetRequest, (_actor, request) =>
  print(request, 'ply templates', plyTemplates),
)

async function print(
  { patchId, versionNo, origin }: z.output<typeof SheetRequest>,
  what: string,
  make: (sheet: PatchSheet) => Promise<Uint8Array>,
): Promise<PrintedSheet> {
  const patch = await readPatch(patchId)
  const plan = patch?.plans.find((candidate) => versionNo === null || candidate.versionNo === versionNo)
  if (!patch || !plan) throw new Refusal('There is no such plan', { status: 404 })
  return {
    fileName: `${patch.mouldCode} patch ${patch.number} v${plan.versionNo} ${what}.pdf`,
    bytes: await make(await sheetOf(patch, plan, origin)),
  }
}

async function sheetOf(patch: StoredPatch, plan: StoredPlan, origin: string): Promise<PatchSheet> {
  const { shop, now } = await shopContext()
  const on = (moment: string) => shopDay(moment, shop.timeZone).day
  return {
    mould: { code: patch.mouldCode, name: patch.mouldName },
    plan: { name: patch.title, code: `Patch ${patch.number}`, version: plan.versionNo, state: plan.state },
    input: plan.input,
    patch: plan.result.value,
    findings: plan.result.findings,
    becauses: plan.becauses,
    sketched: { name: plan.createdByName, on: on(plan.createdAt) },
    signed:
      plan.signedAt && plan.signedByName
        ? [{ name: plan.signedByName, on: on(plan.signedAt), selfChecked: plan.selfChecked }]
        : [],
    address: `${origin}/patches/${patch.id}?v=${plan.versionNo}`,
    recordId: plan.id,
    calculationVersion: plan.calculationVersion,
    printedAt: now,
    timeZone: shop.timeZone,
    paper: 'A4',
  }
}
