import type { Finding } from '../../result'
import { figure } from '../../units/figure'
import type { Bent } from './bent'
import { convexHull, reachBeyond, spanOf } from './hull'
import type { LeftOut } from './left-out'
import { narrowRatio, type Straightness } from './straightness'
import type { PictureToFace } from './types'

/**
 * An outline that reaches out of its marks by more than this share of their span, or slips by more than this factor there, is
 * looked at and not only noted. Chosen here: amid four corners the factor is sqrt(1/2), on them 1.
 */
const farShare = 0.1
const farSlip = 2

/** A mark stands out where chance does as much to one photo in twenty or fewer. */
const unlikely = 0.05

export function warnings(
  value: PictureToFace,
  known: {
    readonly line: Straightness
    readonly others: readonly LeftOut[]
    readonly bend: Bent | null
  },
): readonly Finding[] {
  return [
    ...unchecked(value),
    ...narrow(known.line, value),
    ...outsideMarks(value),
    ...standsOut(value, known.others),
    ...bent(known.bend, value),
  ]
}

function unchecked({ freedom, marks }: PictureToFace): readonly Finding[] {
  if (freedom > 0) return []
  return [
    {
      code: 'no-residual',
      severity: 'look',
      text: 'Four marks fit whatever they are: nothing tells how well they were set.',
      place: null,
      cure: 'Mark a fifth point to see how far it is off; a sixth and more tell which one is.',
      figures: { marks: marks.length },
    },
  ]
}

function narrow(line: Straightness, { outlineSlip }: PictureToFace): readonly Finding[] {
  if (line.ratio >= narrowRatio) return []
  const unit = line.where === 'face' ? 'mm' : 'pixels'
  const which = line.without === null ? 'The marks' : `All marks but ${line.without}`
  const slip =
    outlineSlip === null ? '' : ` 1 mm in the marks moves the outline by up to ${figure(outlineSlip, 1)} mm.`
  return [
    {
      code: 'marks-nearly-in-line',
      severity: 'look',
      text: `${which} lie within ${figure(line.acrossMost, 1)} ${unit} of one line of ${figure(line.alongWhole, 0)} ${unit} ${line.where === 'face' ? 'on the face' : 'in the picture'}.${slip}`,
      place: line.without,
      cure: 'Mark a further point well off that line.',
      figures: { widthToLength: line.ratio, ...(outlineSlip === null ? {} : { outlineSlip }) },
    },
  ]
}

function outsideMarks({ marks, outlineMm, outlineSlip, outlineSpreadMm }: PictureToFace): readonly Finding[] {
  if (outlineMm === null || outlineSlip === null) return []
  const places = marks.map((mark) => mark.atMm)
  const beyondMm = reachBeyond(outlineMm, convexHull(places))
  if (beyondMm === 0) return []
  const spanMm = spanOf(places)
  const spread =
    outlineSpreadMm === null
      ? ''
      : `, here a standard deviation of ${figure(outlineSpreadMm)} mm at its worst point`
  return [
    {
      code: 'outline-outside-marks',
      severity: beyondMm > farShare * spanMm || outlineSlip > farSlip ? 'look' : 'note',
      text: `The outline reaches ${figure(beyondMm, 1)} mm out of the marks, which span ${figure(spanMm, 0)} mm. 1 mm in the marks moves it by up to ${figure(outlineSlip, 1)} mm${spread}.`,
      place: null,
      cure: 'Mark points round the outline, so that it lies between them.',
      figures: { beyondMm, spanMm, outlineSlip, ...(outlineSpreadMm === null ? {} : { outlineSpreadMm }) },
    },
  ]
}

/** The worst one only: it draws the others along, so that what stands out beside it may not once it is put right. */
function standsOut({ marks, rmsMm }: PictureToFace, others: readonly LeftOut[]): readonly Finding[] {
  const tested = others.flatMap((other) =>
    other.chance === null || other.othersRmsMm === null
      ? []
      : [{ ...other, chance: other.chance, othersRmsMm: other.othersRmsMm }],
  )
  if (tested.length === 0 || rmsMm === null) return []
  const worst = tested.reduce((a, b) => (b.chance < a.chance ? b : a))
  if (worst.chance > unlikely) return []
  const percent = worst.chance * 100
  return [
    {
      code: 'mark-stands-out',
      severity: 'look',
      text: `${worst.tag} lies ${figure(worst.fromOthersMm)} mm from where the other ${marks.length - 1} marks put it; by chance so far in ${percent < 0.1 ? 'fewer than 0.1' : figure(percent, 1)} % of pictures.`,
      place: worst.tag,
      cure: `Look at it in the picture and at its place on the face, and mark it again. Without it the others agree within ${figure(worst.othersRmsMm)} mm (root mean square; ${figure(rmsMm)} mm with it).`,
      figures: {
        fromOthersMm: worst.fromOthersMm,
        othersRmsMm: worst.othersRmsMm,
        rmsMm,
        chance: worst.chance,
      },
    },
  ]
}

function bent(bend: Bent | null, { viewDeg }: PictureToFace): readonly Finding[] {
  if (bend === null) return []
  const { kind, radiusMm, spanMm, sagittaMm, longerMm, sidewaysMm } = bend
  const way = kind === 'single' ? 'one way, radius' : 'two ways, the smaller radius'
  return [
    {
      code: 'area-bent',
      severity: 'look',
      text: `The area is bent (${way} ${figure(radiusMm, 1)} mm) and is taken for a plane: over ${figure(spanMm, 0)} mm it stands off by ${figure(sagittaMm)} mm. Seen ${figure(viewDeg, 0)}° from square on, as in the middle here, that puts a point about ${figure(sidewaysMm)} mm sideways; along the face the way is ${figure(longerMm)} mm longer.`,
      place: null,
      cure: 'Take the picture squarely and from far off, with marks close round the outline, or trace it on film laid on the face.',
      figures: { radiusMm, spanMm, sagittaMm, longerMm, sidewaysMm, viewDeg },
    },
  ]
}
