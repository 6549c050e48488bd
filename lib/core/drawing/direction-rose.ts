import type { Drafting } from './drafting'
import { directionOnDrawing } from './placement'
import { baselineAbout, path, text } from './primitives'
import { findRoom } from './room'
import type { Box, FacePlacement, Shape, Xy } from './types'

/** Sizes in text heights: arms of the rose, and the room that its words take beyond them. */
const armLengths = [3, 2.2, 1.6] as const
const wordsRoom = 2.9
const inset = 1.3

/**
 * Where 0 and 90 degrees point on this drawing; in a view from the back the turn from one to the other is the
 * other way round, and the rose shows it. Stands in the corner that has room, the upper left if it can, with shorter
 * arms where there is little; on a patch of blank ground where there is none.
 */
export function directionRose(placement: FacePlacement, draft: Drafting): readonly Shape[] {
  const { sizes, area } = draft
  const t = sizes.textMm
  const near: Xy = [area.left, area.top]
  const places = armLengths.map((arm) => {
    const side = (arm + wordsRoom) * t
    const wish = { widthMm: side, heightMm: side, near, stepMm: t / 2 }
    return { arm, found: findRoom(wish, area, draft.taken, draft.lines) }
  })
  const place = places.find(({ found }) => found !== null)
  const found = place?.found ?? null
  const armLength = place?.arm ?? armLengths[armLengths.length - 1]!
  const side = (armLength + wordsRoom) * t
  const box: Box = found ?? {
    left: area.left,
    top: area.top,
    right: area.left + side,
    bottom: area.top + side,
  }
  draft.taken.push(box)
  const along = directionOnDrawing(placement, 0)
  const across = directionOnDrawing(placement, 90)
  const origin: Xy = [
    along[0] > 0 ? box.left + inset * t : box.right - inset * t,
    across[1] < 0 ? box.bottom - inset * t : box.top + inset * t,
  ]
  const tip = ([dx, dy]: Xy, reach: number): Xy => [origin[0] + dx * reach * t, origin[1] + dy * reach * t]
  const label = (direction: Xy, words: string) => {
    const [x, y] = tip(direction, armLength + 0.75)
    return text([x, baselineAbout(y, t)], words, t, { anchor: 'middle' })
  }
  const arrow = (direction: Xy, reach: number): Shape => ({
    kind: 'arrow',
    from: origin,
    to: tip(direction, reach),
    headMm: sizes.headMm,
    style: 'thin',
    role: 'ink',
  })
  return [
    ...(found === null ? [backing(box)] : []),
    arrow(along, armLength),
    arrow(across, armLength),
    label(along, '0°'),
    label(across, '90°'),
  ]
}

function backing(box: Box): Shape {
  const { left, top, right, bottom } = box
  const corners: readonly Xy[] = [
    [left, top],
    [right, top],
    [right, bottom],
    [left, bottom],
  ]
  return path([corners], true, 'hair', 'hair', 'sheet')
}
