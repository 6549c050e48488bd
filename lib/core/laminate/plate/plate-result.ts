import type { Finding, Result, WorkingStep } from '../../result'
import { figure } from '../../units'
import { type PlateConstants, plateConstants } from './constants'
import { type Lamina, reducedStiffness, turnedStiffness } from './lamina'
import type { Row3 } from './matrix'
import {
  crossedLayers,
  type PlateLayer,
  type PlateStiffness,
  placedLayers,
  plateCompliance,
  plateStiffness,
} from './stiffness'
import { type ThermalAnswer, thermalAnswer } from './thermal'

/** A layer as it is entered: a weave as measured, or as two crossed layers of half the thickness. */
export interface EnteredLayer extends PlateLayer {
  readonly weave: 'as measured' | 'two crossed layers'
}

export interface PlateInput {
  /** Ply 1, the surface ply, first. */
  readonly layers: readonly EnteredLayer[]
  /** From the temperature without stress; null where nobody asks. */
  readonly changeK: number | null
}

export interface PlateFigures extends PlateStiffness {
  readonly constants: PlateConstants
  /** Along u, along v and in shear, 1/K. */
  readonly expansionPerK: Row3
  readonly thermal: ThermalAnswer | null
}

/** Curvature, of a thickness, under which a plate counts as flat. */
const flat = 1e-9

/**
 * Stiffness, constants, expansion and warp of a stack by classical laminate theory. RangeError on layers that can't be; plies
 * are taken as linear, perfectly bonded and thin.
 */
export function plateResult({ layers, changeK }: PlateInput): Result<PlateFigures> {
  const thin = layers.flatMap(({ weave, ...layer }) =>
    weave === 'two crossed layers' ? crossedLayers(layer) : [layer],
  )
  const plate = plateStiffness(thin)
  const constants = plateConstants(plate)
  const perKelvin = thermalAnswer(thin, 1)
  const thermal = changeK === null ? null : thermalAnswer(thin, changeK)
  return {
    value: { ...plate, constants, expansionPerK: perKelvin.strains, thermal },
    method: 'classical laminate theory: sums over the layers, inverse of the 6 by 6 stiffness',
    working: [
      ...laminaLines(thin),
      ...plateLines(thin, plate),
      ...constantLines(plate, constants),
      ...heatLines(plate, perKelvin, thermal),
    ],
    findings: warps(plate),
  }
}

const kaw = { sourceId: 'kaw-mechanics' } as const

function laminaLines(layers: readonly PlateLayer[]): WorkingStep[] {
  const kinds = new Map<string, Lamina>()
  for (const { lamina } of layers) kinds.set(JSON.stringify(lamina), lamina)
  return [...kinds.values()].flatMap((lamina, index) => {
    const { q11, q12, q22 } = reducedStiffness(lamina)
    const nu21 = (lamina.nu12 * lamina.e2MPa) / lamina.e1MPa
    const of = kinds.size > 1 ? ` of material ${index + 1}` : ''
    const below = `(1 - ${figure(lamina.nu12, 4)} x ${figure(nu21, 5)})`
    return [
      {
        symbol: 'Q11',
        label: `stiffness along the fibre${of}`,
        formula: 'E1 / (1 - nu12 nu21)',
        numbers: `${figure(lamina.e1MPa, 0)} / ${below}`,
        value: q11,
        unit: 'MPa',
        ...kaw,
      },
      {
        symbol: 'Q22',
        label: `stiffness across${of}`,
        formula: 'E2 / (1 - nu12 nu21)',
        numbers: `${figure(lamina.e2MPa, 0)} / ${below}`,
        value: q22,
        unit: 'MPa',
        ...kaw,
      },
      {
        symbol: 'Q12',
        label: `coupling${of}`,
        formula: 'nu12 E2 / (1 - nu12 nu21)',
        numbers: `${figure(lamina.nu12, 4)} x ${figure(lamina.e2MPa, 0)} / ${below}`,
        value: q12,
        unit: 'MPa',
        ...kaw,
      },
    ]
  })
}

/** More layers than these are not written out one by one. */
const mostWritten = 12

/** What each layer gives to a sum, from ply 1 on; of a long stack the first and how many follow. */
function terms(values: readonly number[], unitFigures: number): string {
  const written = values.slice(0, mostWritten).map((value) => figure(value, unitFigures))
  const rest = values.length - written.length
  return `${written.join(' + ')}${rest > 0 ? ` + ${rest} more` : ''}`
}

function plateLines(layers: readonly PlateLayer[], plate: PlateStiffness): WorkingStep[] {
  const placed = placedLayers(layers)
  const turned = placed.map((layer) => turnedStiffness(layer.lamina, layer.directionDeg))
  const line = (
    symbol: string,
    label: string,
    entry: 'q11' | 'q22',
    power: 1 | 2 | 3,
    value: number,
    unit: string,
  ): WorkingStep => ({
    symbol,
    label,
    formula: [
      'sum of Qbar (z_k - z_k-1)',
      'sum of Qbar (z_k² - z_k-1²) / 2',
      'sum of Qbar (z_k³ - z_k-1³) / 3',
    ][power - 1]!,
    numbers: terms(
      placed.map(
        ({ fromMm, toMm }, index) => (turned[index]![entry] * (toMm ** power - fromMm ** power)) / power,
      ),
      0,
    ),
    value,
    unit,
    ...kaw,
  })
  const { a, b, d } = plate
  return [
    line('A11', 'stiffness in the plane along u', 'q11', 1, a[0][0], 'N/mm'),
    line('A22', 'stiffness in the plane along v', 'q22', 1, a[1][1], 'N/mm'),
    line('B11', 'coupling of pull and bending along u', 'q11', 2, b[0][0], 'N'),
    line('D11', 'stiffness in bending along u', 'q11', 3, d[0][0], 'N mm'),
    line('D22', 'stiffness in bending along v', 'q22', 3, d[1][1], 'N mm'),
  ]
}

function constantLines({ thicknessMm }: PlateStiffness, constants: PlateConstants): WorkingStep[] {
  const h = figure(thicknessMm, 3)
  const line = (symbol: string, label: string, entry: string, value: number): WorkingStep => ({
    symbol,
    label,
    formula: `1 / (h ${entry})`,
    numbers: `1 / (${h} x ${small(1 / (thicknessMm * value))})`,
    value,
    unit: 'MPa',
    ...kaw,
  })
  return [
    line('Ex', 'modulus along u', 'a11', constants.exMPa),
    line('Ey', 'modulus along v', 'a22', constants.eyMPa),
    line('Gxy', 'shear modulus', 'a66', constants.gxyMPa),
  ]
}

/** Expansion along u and v, and where a change is asked for the warp: rows of the inverse times forces and moments. */
function heatLines(
  plate: PlateStiffness,
  perKelvin: ThermalAnswer,
  thermal: ThermalAnswer | null,
): WorkingStep[] {
  const { a, b, bTurned, d } = plateCompliance(plate)
  const line = (
    symbol: string,
    label: string,
    formula: string,
    rows: readonly [Row3, Row3],
    { forcesNPerMm, momentsN }: ThermalAnswer,
    value: number,
    unit: string,
  ): WorkingStep => ({
    symbol,
    label,
    formula,
    numbers: `${product(rows[0], forcesNPerMm)} + ${product(rows[1], momentsN)}`,
    value,
    unit,
    ...kaw,
  })
  const growth = 'a N + b M of a change by 1 K'
  const bending = "b' N + d M of the change"
  return [
    line('alpha_x', 'expansion along u', growth, [a[0], b[0]], perKelvin, perKelvin.strains[0], '1/K'),
    line('alpha_y', 'expansion along v', growth, [a[1], b[1]], perKelvin, perKelvin.strains[1], '1/K'),
    ...(thermal === null
      ? []
      : [
          line(
            'k_x',
            'curvature along u, free',
            bending,
            [bTurned[0], d[0]],
            thermal,
            thermal.curvaturesPerMm[0],
            '1/mm',
          ),
          line(
            'k_y',
            'curvature along v, free',
            bending,
            [bTurned[1], d[1]],
            thermal,
            thermal.curvaturesPerMm[1],
            '1/mm',
          ),
        ]),
  ]
}

function product(row: Row3, column: Row3): string {
  return row.map((value, index) => `(${small(value)} x ${small(column[index as 0 | 1 | 2])})`).join(' + ')
}

/** A figure of any size with five places. */
function small(value: number): string {
  return value === 0 ? '0' : value.toExponential(4)
}

function warps({ a, b, thicknessMm }: PlateStiffness): Finding[] {
  const most = Math.max(...b.flat().map(Math.abs)) / ((a[0][0] + a[1][1]) * thicknessMm)
  if (most <= flat) return []
  return [
    {
      code: 'plate-not-mirrored',
      severity: 'note',
      text: 'Pull and bending are coupled (B is not nought): the stack warps as it cools, and its constants hold only where it may bend freely.',
      place: null,
      cure: 'Mirror the stack about its middle plane, by material, thickness and direction.',
    },
  ]
}
