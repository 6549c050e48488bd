import type { Finding, Result, WorkingStep } from '../../result'
import { figure } from '../../units'
import { type PlateConstants, plateConstants } from './constants'
import { type Lamina, reducedStiffness } from './lamina'
import type { Row3 } from './matrix'
import { crossedLayers, type PlateLayer, type PlateStiffness, plateStiffness } from './stiffness'
import { plateExpansion, type ThermalAnswer, thermalAnswer } from './thermal'

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
  const expansionPerK = plateExpansion(thin)
  const thermal = changeK === null ? null : thermalAnswer(thin, changeK)
  return {
    value: { ...plate, constants, expansionPerK, thermal },
    method: 'classical laminate theory: sums over the layers, inverse of the 6 by 6 stiffness',
    working: [
      ...laminaLines(thin),
      ...plateLines(thin, plate),
      ...constantLines(plate, constants),
      expansionLine(expansionPerK),
      ...warpLines(thermal, changeK),
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

function plateLines(layers: readonly PlateLayer[], { a, b, d, thicknessMm }: PlateStiffness): WorkingStep[] {
  const plies = `${layers.length} ${layers.length === 1 ? 'layer' : 'layers'}, z from ${figure(-thicknessMm / 2, 3)} to ${figure(thicknessMm / 2, 3)}`
  const line = (symbol: string, label: string, power: string, value: number, unit: string): WorkingStep => ({
    symbol,
    label,
    formula: `sum of Qbar (z_k${power} - z_k-1${power})${power === '' ? '' : ` / ${power === '²' ? 2 : 3}`}`,
    numbers: plies,
    value,
    unit,
    ...kaw,
  })
  return [
    line('A11', 'stiffness in the plane along u', '', a[0][0], 'N/mm'),
    line('A22', 'stiffness in the plane along v', '', a[1][1], 'N/mm'),
    line('B11', 'coupling of pull and bending along u', '²', b[0][0], 'N'),
    line('D11', 'stiffness in bending along u', '³', d[0][0], 'N mm'),
    line('D22', 'stiffness in bending along v', '³', d[1][1], 'N mm'),
  ]
}

function constantLines({ thicknessMm }: PlateStiffness, constants: PlateConstants): WorkingStep[] {
  const h = figure(thicknessMm, 3)
  const line = (symbol: string, label: string, entry: string, value: number): WorkingStep => ({
    symbol,
    label,
    formula: `1 / (h ${entry})`,
    numbers: `1 / (${h} x ${(1 / (thicknessMm * value)).toExponential(4)})`,
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

function expansionLine([along, across]: Row3): WorkingStep {
  return {
    symbol: 'alpha_x',
    label: 'expansion along u',
    formula: 'a x (sum of Qbar alpha t) + b x (sum of Qbar alpha t z)',
    numbers: `along v ${(across * 1e6).toFixed(3)}e-6`,
    value: along,
    unit: '1/K',
    ...kaw,
  }
}

function warpLines(thermal: ThermalAnswer | null, changeK: number | null): WorkingStep[] {
  if (thermal === null || changeK === null) return []
  return [
    {
      symbol: 'k_x',
      label: 'curvature along u of the free plate',
      formula: "b' N_T + d M_T",
      numbers: `over ${figure(changeK)} K; along v ${thermal.curvaturesPerMm[1].toExponential(3)}`,
      value: thermal.curvaturesPerMm[0],
      unit: '1/mm',
      ...kaw,
    },
  ]
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
