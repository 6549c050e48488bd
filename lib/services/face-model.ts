import * as z from 'zod'
import { dowelPlaces, type FaceModel } from '#lib/core/drawing/index'
import type { LogEntry } from '#lib/core/log/index'
import { type PointIssue, pointsBefore, type StoredArea } from '#lib/store/face'
import type { StoredPatch, StoredPlan } from '#lib/store/patches'
import { everyone, verb } from './verb'

/** The issue of a mould's locating points before the one of a number; null when there is none. */
export const readPointsBefore = verb(
  'points.before',
  everyone,
  z.object({ mouldId: z.uuid(), number: z.int() }),
  (_actor, { mouldId, number }) => pointsBefore(mouldId, number),
)

/** Where points stood before, and what the log has done to them since. */
export interface PointChanges {
  readonly before: PointIssue | null
  readonly entries: readonly LogEntry[]
}

const noChanges: PointChanges = { before: null, entries: [] }

/**
 * A face area with its points, its patches and its planned openings, as a drawing takes it. Old places stand on it when the changes
 * are given.
 */
export function faceModelOf(
  mouldCode: string,
  area: StoredArea,
  points: PointIssue | null,
  plans: readonly { readonly patch: StoredPatch; readonly plan: StoredPlan }[],
  { before, entries }: PointChanges = noChanges,
): FaceModel {
  const here = plans.filter(({ patch }) => patch.areaId === area.id)
  const inTheMould = here.filter(({ plan }) => plan.state === 'laid' || plan.state === 'proved')
  const planned = here.filter(
    ({ patch, plan }) =>
      plan.state !== 'laid' &&
      plan.state !== 'proved' &&
      // Of several versions the newest stands on the drawing.
      here.every((other) => other.patch.id !== patch.id || other.plan.versionNo <= plan.versionNo),
  )
  return {
    mouldCode,
    areaName: area.name,
    boundary: area.boundary,
    grid: { originMm: area.gridOriginMm, cellMm: area.gridCellMm },
    lines: area.lines,
    keepOuts: area.keepOuts,
    dowels: points === null ? [] : dowelPlaces(area.id, points, before, entries),
    patches: inTheMould.map(({ patch, plan }) => ({
      name: `Patch ${patch.number}`,
      face: plan.result.value.face.map((region) => region.outer),
      footprint: plan.result.value.footprint.map((region) => region.outer),
    })),
    openings: planned.map(({ patch, plan }) => ({
      name: `Patch ${patch.number}`,
      regions: [plan.result.value.opening],
    })),
  }
}
