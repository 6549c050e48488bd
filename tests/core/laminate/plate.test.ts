import fc from 'fast-check'
import { expect, test } from 'vitest'
import {
  crossedLayers,
  type Lamina,
  type Matrix3,
  type PlateLayer,
  plateCompliance,
  plateConstants,
  plateStiffness,
  thermalAnswer,
  turnedStiffness,
} from '#lib/core/laminate/plate/index'

const lamina: fc.Arbitrary<Lamina> = fc
  .record({
    e1MPa: fc.double({ min: 5000, max: 400_000, noNaN: true }),
    ratio: fc.double({ min: 1, max: 30, noNaN: true }),
    g12MPa: fc.double({ min: 1000, max: 40_000, noNaN: true }),
    nu12: fc.double({ min: 0.02, max: 0.45, noNaN: true }),
    alpha1PerK: fc.double({ min: -1e-6, max: 2e-5, noNaN: true }),
    alpha2PerK: fc.double({ min: 0, max: 6e-5, noNaN: true }),
  })
  .map(({ ratio, ...rest }) => ({ ...rest, e2MPa: rest.e1MPa / ratio }))

const layer: fc.Arbitrary<PlateLayer> = fc.record({
  lamina,
  directionDeg: fc.double({ min: -180, max: 180, noNaN: true }),
  thicknessMm: fc.double({ min: 0.1, max: 5, noNaN: true }),
})

const layers = fc.array(layer, { minLength: 1, maxLength: 12 })

const flat = (matrix: Matrix3) => matrix.flat()

/** Of a free plate, along u, along v and in shear, 1/K. */
const expansionOf = (layers: readonly PlateLayer[]) => thermalAnswer(layers, 1).strains

function close(found: Matrix3, expected: Matrix3, scale: number): void {
  for (const [index, each] of flat(expected).entries())
    expect(Math.abs((flat(found)[index] ?? Number.NaN) - each)).toBeLessThanOrEqual(1e-9 * scale)
}

test('A does not depend on the order of the layers', () => {
  fc.assert(
    fc.property(layers, (stack) => {
      const { a } = plateStiffness(stack)
      close(plateStiffness([...stack].reverse()).a, a, a[0][0] + a[1][1])
    }),
  )
})

test('B of a mirrored stack is nought, and it does not warp', () => {
  fc.assert(
    fc.property(layers, (half) => {
      const stack = [...half, ...[...half].reverse()]
      const { a, b, thicknessMm } = plateStiffness(stack)
      const size = (a[0][0] + a[1][1]) * thicknessMm
      for (const each of flat(b)) expect(Math.abs(each)).toBeLessThanOrEqual(1e-9 * size)
      const { strains, curvaturesPerMm } = thermalAnswer(stack, -150)
      const most = Math.max(...strains.map(Math.abs), 1e-9)
      for (const each of curvaturesPerMm)
        expect(Math.abs(each) * thicknessMm).toBeLessThanOrEqual(1e-6 * most)
    }),
  )
})

test('D is positive definite: no bending costs nothing', () => {
  fc.assert(
    fc.property(
      layers,
      fc.tuple(
        fc.double({ min: -1, max: 1, noNaN: true }),
        fc.double({ min: -1, max: 1, noNaN: true }),
        fc.double({ min: -1, max: 1, noNaN: true }),
      ),
      (stack, k) => {
        fc.pre(Math.hypot(...k) > 0.01)
        const { d } = plateStiffness(stack)
        const moment = d.map((row) => row[0] * k[0] + row[1] * k[1] + row[2] * k[2])
        expect(k.reduce((sum, each, index) => sum + each * (moment[index] ?? 0), 0)).toBeGreaterThan(0)
      },
    ),
  )
})

test('turning the whole stack by 90 degrees changes u and v round', () => {
  fc.assert(
    fc.property(layers, (stack) => {
      const turned = stack.map((each) => ({ ...each, directionDeg: each.directionDeg + 90 }))
      const [one, other] = [plateConstants(plateStiffness(stack)), plateConstants(plateStiffness(turned))]
      expect(other.exMPa / one.eyMPa).toBeCloseTo(1, 6)
      expect(other.eyMPa / one.exMPa).toBeCloseTo(1, 6)
      expect(other.exBendingMPa / one.eyBendingMPa).toBeCloseTo(1, 6)
      expect(other.gxyMPa / one.gxyMPa).toBeCloseTo(1, 6)
    }),
  )
})

test('the inverse undoes the stiffness', () => {
  fc.assert(
    fc.property(layers, (stack) => {
      const { a, b, d, thicknessMm } = plateStiffness(stack)
      const inverse = plateCompliance({ a, b, d, thicknessMm })
      const product = (x: Matrix3, y: Matrix3, row: number, column: number) =>
        [0, 1, 2].reduce((sum, k) => sum + (x[row]?.[k] ?? 0) * (y[k]?.[column] ?? 0), 0)
      for (const row of [0, 1, 2])
        for (const column of [0, 1, 2]) {
          const one = row === column ? 1 : 0
          expect(product(a, inverse.a, row, column) + product(b, inverse.bTurned, row, column)).toBeCloseTo(
            one,
            6,
          )
          expect(product(b, inverse.b, row, column) + product(d, inverse.d, row, column)).toBeCloseTo(one, 6)
        }
    }),
  )
})

test('CL-23: of isotropic layers any stack is that material: 70 GPa, 26.92 GPa, B nought; exact', () => {
  const metal: Lamina = {
    e1MPa: 70_000,
    e2MPa: 70_000,
    g12MPa: 70_000 / 2.6,
    nu12: 0.3,
    alpha1PerK: 23e-6,
    alpha2PerK: 23e-6,
  }
  const stack = [0, 30, -45, 90].map((directionDeg, index) => ({
    lamina: metal,
    directionDeg,
    thicknessMm: 0.5 + index,
  }))
  const { exMPa, eyMPa, gxyMPa } = plateConstants(plateStiffness(stack))
  expect(exMPa / 70_000).toBeCloseTo(1, 9)
  expect(eyMPa / 70_000).toBeCloseTo(1, 9)
  expect(gxyMPa / (70_000 / 2.6)).toBeCloseTo(1, 9)
  expect(expansionOf(stack)[0] / 23e-6).toBeCloseTo(1, 9)
})

test('a weave as two crossed half layers is alike both ways, and turned with its warp', () => {
  const warp: Lamina = {
    e1MPa: 130_000,
    e2MPa: 9000,
    g12MPa: 4500,
    nu12: 0.3,
    alpha1PerK: 0,
    alpha2PerK: 3e-5,
  }
  const weave = (directionDeg: number) => crossedLayers({ lamina: warp, directionDeg, thicknessMm: 0.6 })
  const { a } = plateStiffness(weave(0))
  expect(a[0][0]).toBeCloseTo(a[1][1], 6)
  const turned = plateStiffness(weave(45)).a
  expect(turned[2][2]).toBeGreaterThan(a[2][2])
})

test('what no layer can be is refused with the figure', () => {
  const good: Lamina = {
    e1MPa: 130_000,
    e2MPa: 9000,
    g12MPa: 4500,
    nu12: 0.3,
    alpha1PerK: 0,
    alpha2PerK: 3e-5,
  }
  expect(() => turnedStiffness({ ...good, e2MPa: 0 }, 0)).toThrow(/E2 must be above 0 MPa, got 0/)
  expect(() => turnedStiffness({ ...good, nu12: 4 }, 0)).toThrow(RangeError)
  expect(() => turnedStiffness(good, Number.NaN)).toThrow(/degrees/)
  expect(() => plateStiffness([])).toThrow(/at least one layer/)
  expect(() => plateStiffness([{ lamina: good, directionDeg: 0, thicknessMm: -1 }])).toThrow(/-1/)
  expect(() => thermalAnswer([{ lamina: good, directionDeg: 0, thicknessMm: 1 }], Number.NaN)).toThrow(
    /kelvin/,
  )
})
