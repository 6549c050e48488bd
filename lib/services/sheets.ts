import * as z from 'zod'
import { shopDay } from '#lib/core/dates'
import {
  type OutlineView,
  outlineViews,
  writeOutlinesDxf,
  writeOutlinesSvg,
} from '#lib/exchange/outline-out/index'
import { benchSheet, type PatchSheet, paperNames, paperSizes, plyTemplates } from '#lib/exchange/sheets/index'
import { choice } from '#lib/schema/fields'
import { Refusal } from '#lib/store/errors'
import { readPatch, type StoredPatch, type StoredPlan } from '#lib/store/patches'
import { shopContext } from './shop'
import { everyone, verb } from './verb'

const PlanRequest = z.object({
  patchId: z.uuid(),
  /** Null: the newest version. */
  versionNo: z.int().nullable(),
  /** Where the shop's pages are reached, for the QR code. */
  origin: z.url(),
})

const SheetRequest = PlanRequest.safeExtend({ paper: choice(paperNames).prefault('a4') })

const OutlinesRequest = PlanRequest.safeExtend({ view: choice(outlineViews).prefault('laid') })

/** Papers that sheets can be printed on, for a choice. */
export const papers = paperNames.map((paper) => ({ paper, name: paperSizes[paper].name }))

export interface PrintedSheet {
  readonly fileName: string
  readonly mediaType: string
  readonly bytes: Uint8Array
}

export const printBenchSheet = verb('patches.bench-sheet', everyone, SheetRequest, (_actor, request) =>
  print(request, 'bench sheet', benchSheet),
)

export const printTemplates = verb('patches.templates', everyone, SheetRequest, (_actor, request) =>
  print(request, 'ply templates', plyTemplates),
)

/** The plan's outlines for other programs. */
export const writeDxf = verb('patches.outlines-dxf', everyone, OutlinesRequest, (_actor, request) =>
  write(request, 'dxf', 'image/vnd.dxf', writeOutlinesDxf),
)

export const writeSvg = verb('patches.outlines-svg', everyone, OutlinesRequest, (_actor, request) =>
  write(request, 'svg', 'image/svg+xml', writeOutlinesSvg),
)

async function print(
  request: z.output<typeof SheetRequest>,
  what: string,
  make: (sheet: PatchSheet) => Promise<Uint8Array>,
): Promise<PrintedSheet> {
  const { patch, plan } = await planOf(request)
  return {
    fileName: `${patch.mouldCode} patch ${patch.number} v${plan.versionNo} ${what}.pdf`,
    mediaType: 'application/pdf',
    bytes: await make(await sheetOf(patch, plan, request.origin, request.paper)),
  }
}

async function write(
  request: z.output<typeof OutlinesRequest>,
  ending: string,
  mediaType: string,
  make: (sheet: PatchSheet, view: OutlineView) => string,
): Promise<PrintedSheet> {
  const { patch, plan } = await planOf(request)
  const view = request.view === 'laid' ? 'as laid' : 'from the cavity'
  return {
    fileName: `${patch.mouldCode} patch ${patch.number} v${plan.versionNo} outlines ${view}.${ending}`,
    mediaType,
    bytes: new TextEncoder().encode(make(await sheetOf(patch, plan, request.origin, 'a4'), request.view)),
  }
}

async function planOf({ patchId, versionNo }: z.output<typeof PlanRequest>) {
  const patch = await readPatch(patchId)
  const plan = patch?.plans.find((candidate) => versionNo === null || candidate.versionNo === versionNo)
  if (!patch || !plan) throw new Refusal('There is no such plan', { status: 404 })
  return { patch, plan }
}

async function sheetOf(
  patch: StoredPatch,
  plan: StoredPlan,
  origin: string,
  paper: PatchSheet['paper'],
): Promise<PatchSheet> {
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
    paper,
  }
}
