import { describe, expect, test } from 'vitest'
import { HomographyAnswer } from '#lib/schema/answers/homography'
import { homographyExample } from '#lib/web/openapi/examples'
import * as homographyRoute from '../../app/api/v1/compute/homography/route'
import { book } from './book'
import { answered, post, problem, tokens, withTokens } from './calls'

book()
withTokens()

const call = (value: unknown, token = tokens.laminator) =>
  homographyRoute.POST(post('/api/v1/compute/homography', value, { token }))

describe('POST compute/homography', () => {
  test('places what was traced, with residuals, findings and working; a viewer may ask', async () => {
    const fit = await answered(await call(homographyExample, tokens.viewer), HomographyAnswer)
    // The example is a rectangle of 160 by 120 mm at (120, 90), seen by an invented camera, with marks set within 2 pixels.
    const expected = [
      [120, 90],
      [280, 90],
      [280, 210],
      [120, 210],
    ] as const
    for (const [index, [u, v]] of expected.entries()) {
      const [placedU, placedV] = fit.outlineMm![index]!
      expect(Math.hypot(placedU - u, placedV - v)).toBeLessThan(1)
    }
    expect(fit.freedom).toBe(4)
    expect(fit.rmsMm).toBeLessThan(1)
    expect(fit.marks.map((mark) => mark.tag)).toEqual(['D01', 'D02', 'D03', 'D04', 'D05', 'D06'])
    expect(fit.placesPx).toHaveLength(1)
    expect(fit.findings.map((finding) => finding.code)).toEqual(['area-bent'])
    expect(fit.working.length).toBeGreaterThan(5)
    expect(fit.calculationVersion).toBe('1')
  })

  test('the marks alone: what is left out is nothing', async () => {
    const fit = await answered(await call({ marks: homographyExample.marks.slice(0, 4) }), HomographyAnswer)
    expect(fit).toMatchObject({ outlineMm: null, pointsMm: [], placesPx: [], rmsMm: null, outlineSlip: null })
    expect(fit.findings.map((finding) => finding.code)).toEqual(['no-residual'])
  })

  test('no fit: 422 with the reason and the finding', async () => {
    const mirrored = await problem(await call({ ...homographyExample, mirrored: true }), 422)
    expect(mirrored.title).toBe('No fit')
    expect(mirrored.findings?.map((finding) => finding.code)).toEqual(['picture-not-mirrored'])
    expect(mirrored.detail).toBe(mirrored.findings?.[0]?.text)
    const far = await problem(await call({ ...homographyExample, pointsPx: [[2016, -9000]] }), 422)
    expect(far.findings?.[0]).toMatchObject({ code: 'beyond-horizon', place: 'point of the picture no. 1' })
  })

  test('input that is not right: 422 with every field', async () => {
    const [first] = homographyExample.marks
    const three = await problem(await call({ marks: [first, first, { ...first, atPx: [1, 'x'] }] }), 422)
    expect(Object.keys(three.fields ?? {})).toEqual(expect.arrayContaining(['marks.2.atPx.1']))
    const twice = await problem(await call({ marks: [...homographyExample.marks, first] }), 422)
    expect(twice.fields).toEqual({ 'marks.6.tag': 'D01 is there twice' })
    const few = await problem(await call({ marks: homographyExample.marks.slice(0, 3) }), 422)
    expect(few.fields).toEqual({ marks: 'Give at least four marks' })
    const wrong = {
      ...homographyExample,
      outlinePx: [[0, 0]],
      mirrored: 'no',
      curvature: { kind: 'single', radiusMm: 0 },
    }
    const refused = await problem(await call(wrong), 422)
    expect(Object.keys(refused.fields ?? {}).sort()).toEqual(['curvature.radiusMm', 'mirrored', 'outlinePx'])
  })
})
