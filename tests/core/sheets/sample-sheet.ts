import { becauseKey } from '#lib/core/repair/index'
import type { PatchSheet } from '#lib/exchange/sheets/types'
import { sampleFindings, sampleInput, samplePlan } from './sample-plan'

/** A sheet of the invented scenario with its plan. */
export function sampleSheet(changes: Partial<PatchSheet> = {}): PatchSheet {
  const input = changes.input ?? sampleInput()
  return {
    mould: { code: 'LH-P2', name: 'Lower hull, port' },
    plan: { name: 'Opening round D02', code: 'Patch 9, way 2 of 3', version: 3, state: 'signed' },
    input,
    patch: samplePlan(input),
    findings: sampleFindings(input),
    becauses: Object.fromEntries(
      sampleFindings(input)
        .filter((finding) => finding.severity === 'look')
        .slice(1)
        .map((finding) => [becauseKey(finding), 'the lead has looked at it on the mould']),
    ),
    sketched: { name: 'Sam Lark', on: '2026-10-18' },
    signed: [{ name: 'Mo Olsen', on: '2026-10-19', selfChecked: false }],
    address: 'http://workshop.local:3000/patches/0190a5c2-7a31-4c3e-9f0b-2b6f9d1f4e10',
    recordId: '0190a5c2-7a31-4c3e-9f0b-2b6f9d1f4e10',
    calculationVersion: '1',
    printedAt: '2026-10-21T12:05:00Z',
    timeZone: 'Europe/Berlin',
    paper: 'a4',
    ...changes,
  }
}
