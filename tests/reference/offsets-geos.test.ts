import { readFileSync } from 'node:fs'
import { describe, expect, test } from 'vitest'
import { area, grow, growSteps, type Loop, perimeter } from '#lib/core/geometry/index'

/**
 * Source: the GEOS library (geometry engine, open source) through shapely; version and command stand in
 * offsets-geos.json, made by offsets-geos.py beside it. All outlines are invented.
 */
interface Reference {
  readonly source: string
  readonly cases: readonly {
    readonly name: string
    readonly outer: Loop
    readonly holes: readonly Loop[]
    readonly offsets: readonly {
      readonly growMm: number
      readonly pieces: number
      readonly holes: number
      readonly areaMm2: number
      readonly perimeterMm: number
    }[]
  }[]
}

const reference: Reference = JSON.parse(readFileSync('tests/reference/offsets-geos.json', 'utf8'))

/** Relative, for areas and perimeters alike. */
const tolerance = 1e-3

const relative = (ours: number, theirs: number) => Math.abs(ours / theirs - 1)

describe.each(reference.cases)(`${reference.source}: $name`, ({ outer, holes, offsets }) => {
  const region = { outer, holes }

  test.each(offsets)('grown by $growMm mm', ({ growMm, pieces, holes: holesLeft, areaMm2, perimeterMm }) => {
    const grown = grow([region], growMm)
    expect(grown).toHaveLength(pieces)
    expect(grown.flatMap((piece) => piece.holes)).toHaveLength(holesLeft)
    expect(relative(area(grown), areaMm2)).toBeLessThan(tolerance)
    expect(relative(perimeter(grown), perimeterMm)).toBeLessThan(tolerance)
  })

  test('grown step by step through the same growths', () => {
    const growths = offsets.filter(({ growMm }) => growMm > 0)
    const stepsMm = growths.map(({ growMm }, index) => growMm - (growths[index - 1]?.growMm ?? 0))
    for (const [index, grown] of growSteps([region], stepsMm).entries()) {
      expect(grown).toHaveLength(growths[index]!.pieces)
      expect(relative(area(grown), growths[index]!.areaMm2)).toBeLessThan(tolerance)
      expect(relative(perimeter(grown), growths[index]!.perimeterMm)).toBeLessThan(tolerance)
    }
  })
})
