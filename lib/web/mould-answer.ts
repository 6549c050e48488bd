import 'server-only'
import type * as z from 'zod'
import type { MouldAnswer, MouldListAnswer, MouldRowAnswer } from '#lib/schema/answers/mould'
import type { MouldPage } from '#lib/services/moulds'
import type { Rack, RackRow } from '#lib/services/rack'

/** A mould of the rack as the API tells it. */
function rowAnswer({ mould, counts, standing, matters }: RackRow): z.input<typeof MouldRowAnswer> {
  const {
    pulls,
    pullsThisSeason,
    pullsNotCleared,
    lastPullOn,
    lastPullWent,
    clearedOn,
    clearedForProof,
    lastRepairOn,
  } = counts
  return {
    id: mould.id,
    code: mould.code,
    name: mould.name,
    version: mould.version,
    partCode: mould.part?.code ?? null,
    patternCode: mould.pattern?.code ?? null,
    state: standing.state,
    reason: standing.reason,
    also: [...standing.also],
    place: counts.place,
    counts: {
      pulls,
      pullsThisSeason,
      pullsNotCleared,
      lastPullOn,
      lastPullWent,
      clearedOn,
      clearedForProof,
      lastRepairOn,
    },
    release: counts.release.map((target) => ({ ...target })),
    matters: matters.map(({ figures: _figures, ...matter }) => matter),
  }
}

export function rackAnswer({
  rows,
  matching,
  total,
  page,
  pages,
  context,
}: Rack): z.input<typeof MouldListAnswer> {
  return { today: context.today, matching, total, page, pages, moulds: rows.map(rowAnswer) }
}

/** A mould with its face, its points, its patches as the API tells it. */
export function mouldAnswer(page: MouldPage): z.input<typeof MouldAnswer> {
  const { part, pattern, set: _set, stackCode, ...mould } = page.mould
  return {
    ...rowAnswer(page),
    today: page.context.today,
    mould,
    part,
    pattern,
    stackCode,
    areas: page.areas.map(
      ({ mouldId: _mould, position: _position, readings, struckReadings: _struck, ...area }) => ({
        ...area,
        readings: [...readings],
      }),
    ),
    points: page.points && { ...page.points, points: [...page.points.points] },
    patches: page.patches.map(({ id, number, title, areaName, place, state, planId, versionNo }) => ({
      id,
      number,
      title,
      areaName,
      place,
      state,
      planId,
      versionNo,
    })),
  }
}
