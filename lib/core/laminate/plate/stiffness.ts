import { type Lamina, type PlaneStiffness, turnedStiffness } from './lamina'
import { inverseOfBlocks, type Matrix3 } from './matrix'

/** One layer of a plate; layer 1 is the surface ply. */
export interface PlateLayer {
  readonly lamina: Lamina
  /** Degrees from u, positive towards v. */
  readonly directionDeg: number
  readonly thicknessMm: number
}

/** Stiffness of a plate: N = A e + B k, M = B e + D k, with N in N/mm, M in N (N mm per mm), k in 1/mm. */
export interface PlateStiffness {
  readonly thicknessMm: number
  /** N/mm. */
  readonly a: Matrix3
  /** N. */
  readonly b: Matrix3
  /** N mm. */
  readonly d: Matrix3
}

/** The inverse: e = a N + b M, k = b' N + d M. */
export interface PlateCompliance {
  /** mm/N. */
  readonly a: Matrix3
  /** 1/N. */
  readonly b: Matrix3
  /** b turned over: 1/N. */
  readonly bTurned: Matrix3
  /** 1/(N mm). */
  readonly d: Matrix3
}

/** A layer with where it lies: z from -h/2 at the face of ply 1 to +h/2. */
export interface PlacedLayer extends PlateLayer {
  readonly fromMm: number
  readonly toMm: number
}

/** Where the layers lie. RangeError when there are none or a thickness isn't positive. */
export function placedLayers(layers: readonly PlateLayer[]): readonly PlacedLayer[] {
  if (layers.length === 0) throw new RangeError('a plate needs at least one layer')
  for (const { thicknessMm } of layers) {
    if (!(thicknessMm > 0 && Number.isFinite(thicknessMm)))
      throw new RangeError(`the thickness of a layer must be above 0 mm, got ${thicknessMm}`)
  }
  let z = -layers.reduce((sum, layer) => sum + layer.thicknessMm, 0) / 2
  return layers.map((layer) => {
    const fromMm = z
    z += layer.thicknessMm
    return { ...layer, fromMm, toMm: z }
  })
}

/** A, B and D by classical laminate theory (Kaw, chapter 4): sums over the layers of Qbar times z, z²/2 and z³/3. */
export function plateStiffness(layers: readonly PlateLayer[]): PlateStiffness {
  const placed = placedLayers(layers)
  const stiff = placed.map((layer) => turnedStiffness(layer.lamina, layer.directionDeg))
  const sum = (power: 1 | 2 | 3): Matrix3 => {
    const of = (entry: keyof PlaneStiffness) =>
      placed.reduce(
        (total, { fromMm, toMm }, index) =>
          total + ((stiff[index]?.[entry] ?? 0) * (toMm ** power - fromMm ** power)) / power,
        0,
      )
    const [q11, q12, q16, q22, q26, q66] = [of('q11'), of('q12'), of('q16'), of('q22'), of('q26'), of('q66')]
    return [
      [q11, q12, q16],
      [q12, q22, q26],
      [q16, q26, q66],
    ]
  }
  return {
    thicknessMm: placed.reduce((total, { thicknessMm }) => total + thicknessMm, 0),
    a: sum(1),
    b: sum(2),
    d: sum(3),
  }
}

/** The inverse of the 6 by 6 matrix of A, B and D. */
export function plateCompliance({ a, b, d }: PlateStiffness): PlateCompliance {
  const inverted = inverseOfBlocks({ a, b, c: b, d })
  return { a: inverted.a, b: inverted.b, bTurned: inverted.c, d: inverted.d }
}

/** A weave as two crossed unidirectional layers of half the thickness; the warp lies in the layer's direction. */
export function crossedLayers(layer: PlateLayer): readonly [PlateLayer, PlateLayer] {
  const half = { lamina: layer.lamina, thicknessMm: layer.thicknessMm / 2 }
  return [
    { ...half, directionDeg: layer.directionDeg },
    { ...half, directionDeg: layer.directionDeg + 90 },
  ]
}
