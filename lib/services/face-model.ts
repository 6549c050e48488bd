import type { FaceModel } from '#lib/core/drawing/index'
import type { PointIssue, StoredArea } from '#lib/store/face'
import type { StoredPatch, StoredPlan } from '#lib/store/patches'

/** A face area with its points, its patches and its planned openings, as a drawing takes it. */
export function faceModelOf(
  mouldCode: string,
  area: StoredArea,
  points: PointIssue | null,
  plans: readonly { readonly patch: StoredPatch; readonly plan: StoredPlan }[],
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
    dowels: (points?.points ?? [])
      .filter((point) => point.areaId === area.id)
      .map((point) => ({
        tag: point.tag,
        at: [point.uMm, point.vMm] as const,
        diameterMm: point.diameterMm,
        isDatum: point.isDatum,
        oldPlace: null,
      })),
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
