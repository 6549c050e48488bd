import * as z from 'zod'
import { meanThicknessMm, stackUp } from '#lib/core/laminate/index'
import { pullStrokes } from '#lib/core/log/index'
import { paperNames } from '#lib/exchange/sheets/index'
import { mouldSheet } from '#lib/exchange/sheets/mould-sheet'
import { asked, choice } from '#lib/schema/fields'
import { Refusal } from '#lib/store/errors'
import { pointsBefore } from '#lib/store/face'
import { faceModelOf } from './face-model'
import { type MouldPage, readMouldPage } from './moulds'
import { readSettings } from './shop'
import { stackPlies } from './stores'
import { everyone, verb } from './verb'

const MouldSheetRequest = z.object({
  code: asked(),
  /** An area's id; left out or "all": all of them. */
  area: asked().prefault('all'),
  view: choice(['cavity', 'back']).prefault('cavity'),
  /** Whether places before a move stand on it. */
  old: choice(['yes', 'no']).prefault('yes'),
  paper: choice(paperNames).prefault('a4'),
})

/** The sheet of a mould as a PDF, with all of its areas or one of them. */
export const printMouldSheet = verb(
  'moulds.sheet',
  everyone,
  MouldSheetRequest,
  async (actor, { code, area, view, old, paper }) => {
    const page = await readMouldPage(actor, { code })
    const { seasons } = await readSettings(actor, {})
    const { mould, counts, standing, context, points } = page
    const areas = area === 'all' ? page.areas : page.areas.filter((one) => one.id === area)
    if (areas.length === 0) {
      throw new Refusal(
        area === 'all' ? `${mould.code} has no face area yet: its sheet shows one` : 'There is no such area',
        { status: 404 },
      )
    }
    const before = old === 'yes' && points ? await pointsBefore(mould.id, points.number) : null
    const faces = areas.map((one) =>
      faceModelOf(mould.code, one, points, page.plans, { before, entries: page.entries }),
    )
    const bytes = await mouldSheet({
      mould: { code: mould.code, name: mould.name, about: aboutOf(page) },
      state: { word: standing.state, reason: standing.reason },
      place: counts.place,
      heat: { inUseC: mould.heatInUseC, freeC: mould.heatFreeC, tgDryC: mould.tgDryC },
      stack: stackOf(page),
      pulls: counts.pulls,
      pullsThisSeason: counts.pullsThisSeason,
      issueNumber: points?.number ?? null,
      faces:
        old === 'yes'
          ? faces
          : faces.map((face) => ({
              ...face,
              dowels: face.dowels.map((dowel) => ({ ...dowel, oldPlace: null })),
            })),
      seenFrom: view,
      strokes: pullStrokes(page.strip, seasons),
      matters: page.matters,
      printedAt: context.now,
      timeZone: context.shop.timeZone,
      paper,
    })
    return { fileName: `${mould.code} mould sheet.pdf`, mediaType: 'application/pdf', bytes }
  },
)

function aboutOf({ mould }: MouldPage): readonly string[] {
  return [
    ...(mould.set ? [`piece ${mould.pieceNo} of ${mould.set.pieces}`] : []),
    ...(mould.pattern ? [`off pattern ${mould.pattern.code}`] : []),
  ]
}

function stackOf({ stack, areas }: MouldPage) {
  if (stack === null) return null
  const built = stackUp(stackPlies(stack))
  return {
    plies: `${built.plies.length} plies`,
    builtMm: built.thicknessMm,
    measuredMm: meanThicknessMm(areas.flatMap((one) => one.readings.map((reading) => reading.thicknessMm))),
  }
}
