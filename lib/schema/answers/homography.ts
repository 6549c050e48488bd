import * as z from 'zod'
import type { PictureToFace } from '#lib/core/geometry/homography/index'
import type { Result } from '#lib/core/result'
import { FindingAnswer, LoopAnswer, PointAnswer, WorkingAnswer } from './shared'

const row = () => z.tuple([z.number(), z.number(), z.number()])
const matrix = (description: string) => z.tuple([row(), row(), row()]).meta({ description })
const pixel = () => z.tuple([z.number(), z.number()]).meta({ description: '[x, y] in pixels' })

const notWithFour = (description: string) =>
  z
    .number()
    .nullable()
    .meta({ description: `${description}; null with four marks, which fit whatever they are` })

/** The fit with its working and findings in one object. */
export const HomographyAnswer = z.object({
  toFace: matrix('[x, y, 1] times this is w times [u, v, 1]; w is above 0 on all that is seen'),
  toPicture: matrix('The inverse of toFace'),
  marks: z.array(
    z.object({
      tag: z.string(),
      atPx: pixel(),
      atMm: PointAnswer,
      fittedMm: PointAnswer,
      residualMm: notWithFour('From its known place to where the fit puts it'),
      fromOthersMm: z
        .number()
        .nullable()
        .meta({ description: 'From its known place to where all the other marks put it' }),
    }),
  ),
  freedom: z.int().meta({ description: 'Figures that the marks give beyond the eight that the fit takes' }),
  rmsMm: notWithFour('Root mean square of the residuals'),
  largestMm: notWithFour('The largest residual'),
  spreadMm: notWithFour('Standard deviation of a mark along u or v'),
  outlineMm: LoopAnswer.nullable().meta({ description: 'Counter-clockwise on the face' }),
  outlineSlip: z
    .number()
    .nullable()
    .meta({ description: 'mm that the worst point of the outline is out for 1 mm in the marks' }),
  outlineSpreadMm: notWithFour('Standard deviation of the worst point of the outline'),
  pointsMm: z.array(PointAnswer),
  placesPx: z.array(pixel()),
  mmPerPixel: z.object({ least: z.number(), most: z.number() }),
  viewDeg: z.number().meta({ description: 'About how far from square on the face is seen' }),
  method: z.string(),
  working: z.array(WorkingAnswer),
  findings: z.array(FindingAnswer),
  calculationVersion: z.string(),
}) satisfies z.ZodType<HomographyAnswer>
export type HomographyAnswer = PictureToFace &
  Omit<Result<PictureToFace>, 'value'> & { readonly calculationVersion: string }
