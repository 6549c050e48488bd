import type { Loop, Region } from '#lib/core/geometry/types'
import { openingRegion } from '#lib/core/repair/opening'
import type { OldPatch, PatchArea, PatchInput, PatchPlan } from '#lib/core/repair/types'
import type { OpeningSource, PatchSketch } from '#lib/schema/patch'
import { Refusal } from '#lib/store/errors'
import { currentPoints, type PointIssue, readArea, type StoredArea } from '#lib/store/face'
import { readMould } from '#lib/store/moulds'
import { patchesOnMould } from '#lib/store/patches'
import { listMaterials, plyMaterial, readStack, stackPlies } from '#lib/store/stores'
import { shopContext } from './shop'

/** What the calculation is given: the sketch, and the mould as the book knows it. */
export async function inputOf(sketch: PatchSketch): Promise<PatchInput> {
  const [mould, area, points, materials, others, context] = await Promise.all([
    readMould(sketch.mouldId),
    readArea(sketch.areaId),
    currentPoints(sketch.mouldId),
    listMaterials(),
    patchesOnMould(sketch.mouldId),
    shopContext(),
  ])
  if (!mould) throw new Refusal('There is no such mould', { status: 404 })
  if (!area || area.mouldId !== mould.id) {
    throw new Refusal('Choose an area of this mould', { fields: { areaId: 'Choose an area of this mould' } })
  }
  const stackId = area.stackId ?? mould.stackId
  const stack = stackId ? await readStack(stackId) : null
  if (!stack) {
    throw new Refusal(
      `${mould.code} has no stack yet: give the mould or the area ${area.name} one, so that the plies are known`,
      {
        fields: { areaId: 'No stack known here' },
      },
    )
  }
  const plies = stackPlies(stack)
  const cured = stack.plies.map((ply) => ply.material)
  const removed = sketch.pliesFromFace ?? plies.length
  if (removed > plies.length) {
    throw new Refusal(`The stack has ${plies.length} plies`, {
      fields: { pliesFromFace: `At most ${plies.length}` },
    })
  }
  const readings = area.readings.map((reading) => reading.thicknessMm)
  return {
    side: sketch.side,
    edge: sketch.edge,
    opening: openingOf(sketch.opening),
    stack: plies,
    removedPlies: plies.slice(0, removed).map((_ply, index) => index + 1),
    measuredThicknessMm: sketch.measuredThicknessMm.length > 0 ? sketch.measuredThicknessMm : readings,
    taper: sketch.taper,
    coverPlies: sketch.coverPlies.map(({ materialId, directionDeg }, index) => {
      const material = materials.find((candidate) => candidate.id === materialId)
      if (!material)
        throw new Refusal('There is no such material', {
          fields: { [`coverPlies.${index}.materialId`]: 'Choose a material' },
        })
      return { material: plyMaterial(material), directionDeg }
    }),
    area: patchArea(area, points, others, sketch.patchId),
    rules: context.shop.rules.repair,
    heat: { inUseC: mould.heatInUseC, freeStandingC: mould.heatFreeC, bondedC: mould.heatBondedC },
    cure: cured.find((material) => material.cure)?.cure ?? null,
    postCure: cured.find((material) => material.postCure)?.postCure ?? null,
    nextPartCureC: sketch.nextPartCureC ?? mould.partCureC,
    patternAvailable: mould.pattern?.available ?? false,
  }
}

function openingOf(source: OpeningSource): Region {
  try {
    return openingRegion(source)
  } catch (error) {
    if (!(error instanceof RangeError)) throw error
    const field = source.kind === 'rounded-rectangle' ? 'opening.cornerRadiusMm' : 'opening.diameterMm'
    throw new Refusal(`The opening can't be drawn: ${error.message}`, { fields: { [field]: error.message } })
  }
}

function patchArea(
  area: StoredArea,
  points: PointIssue | null,
  others: Awaited<ReturnType<typeof patchesOnMould>>,
  ownPatchId: string,
): PatchArea {
  const inTheMould = others.filter(
    ({ patch, plan }) =>
      patch.areaId === area.id &&
      patch.id !== ownPatchId &&
      (plan.state === 'laid' || plan.state === 'proved'),
  )
  return {
    name: area.name,
    boundary: area.boundary,
    lines: area.lines,
    keepOuts: area.keepOuts,
    dowels: (points?.points ?? [])
      .filter((point) => point.areaId === area.id && !point.notYetFixed)
      .map((point) => ({
        tag: point.tag,
        at: [point.uMm, point.vMm] as const,
        diameterMm: point.diameterMm,
        bushDiameterMm: point.bushDiameterMm,
        through: point.through,
        isDatum: point.isDatum,
      })),
    oldPatches: inTheMould.flatMap(({ patch, plan }) =>
      pairs(plan.result.value).map(
        ({ face, footprint }): OldPatch => ({ name: `Patch ${patch.number}`, face, footprint }),
      ),
    ),
    grid: { originMm: area.gridOriginMm, cellMm: area.gridCellMm },
  }
}

/** The face and the footprint of a patch, piece by piece; a piece that has no partner is its own. */
function pairs(plan: PatchPlan): { face: Loop; footprint: Loop }[] {
  const count = Math.max(plan.face.length, plan.footprint.length)
  return Array.from({ length: count }, (_, index) => {
    const footprint = plan.footprint[index]?.outer ?? plan.face[index]?.outer ?? []
    return { face: plan.face[index]?.outer ?? footprint, footprint }
  })
}
