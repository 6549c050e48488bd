import type { WorkingStep } from '../result'
import { figure } from '../units'
import type { PlyMaterial } from './types'

/**
 * Density of cured epoxy that is put in where a material gives its fibre content by volume, and so no resin
 * density: middle of 1.20 to 1.28 g/cm³, from memory. It only serves the mass of prepreg.
 */
export const assumedResinDensityGcm3 = 1.22

export interface CuredPly {
  readonly thicknessMm: number
  readonly fibreVolumeFraction: number
  /** Fibre and resin together, as it comes off the roll, g/m². */
  readonly prepregGsm: number
  readonly working: readonly WorkingStep[]
}

/**
 * Cured ply thickness, fibre volume fraction and areal mass of a prepreg. Sums of volumes per area, no voids:
 * t = FAW / rho_f + FAW (RC / (1 - RC)) / rho_r, or t = FAW / (rho_f Vf); g/m² over g/cm³ gives micrometres.
 * RangeError on weights, densities and contents that no ply can have.
 */
export function curedPly(material: PlyMaterial): CuredPly {
  const { fibreArealWeightGsm: faw, fibreDensityGcm3: rhoF, fibreContent, name } = material
  positive(faw, `fibre areal weight of ${name}`, 'g/m²')
  positive(rhoF, `fibre density of ${name}`, 'g/cm³')
  if (fibreContent.kind === 'fibre-volume')
    return plyByVolume(name, faw, rhoF, fibreContent.fibreVolumeFraction)
  const { resinMassFraction, resinDensityGcm3 } = fibreContent
  return plyByMass(name, faw, rhoF, resinMassFraction, resinDensityGcm3)
}

function plyByMass(name: string, faw: number, rhoF: number, rc: number, rhoR: number): CuredPly {
  inside(rc, `resin mass fraction of ${name}`)
  positive(rhoR, `resin density of ${name}`, 'g/cm³')
  const fibreUm = faw / rhoF
  const resinUm = (faw * (rc / (1 - rc))) / rhoR
  const thicknessMm = (fibreUm + resinUm) / 1000
  const vf = fibreUm / (fibreUm + resinUm)
  const prepregGsm = faw / (1 - rc)
  return {
    thicknessMm,
    fibreVolumeFraction: vf,
    prepregGsm,
    working: [
      {
        symbol: 't',
        label: `cured thickness of ${name}`,
        formula: '(FAW / rho_f + FAW x (RC / (1 - RC)) / rho_r) / 1000',
        numbers: `(${figure(faw)} / ${rhoF} + ${figure(faw)} x (${rc} / ${figure(1 - rc, 4)}) / ${rhoR}) / 1000`,
        value: thicknessMm,
        unit: 'mm',
        sourceId: 'derived',
      },
      {
        symbol: 'Vf',
        label: `fibre volume of ${name}`,
        formula: 'FAW / (1000 x rho_f x t)',
        numbers: `${figure(faw)} / (1000 x ${rhoF} x ${figure(thicknessMm, 4)})`,
        value: vf,
        unit: '1',
        sourceId: 'astm-d3171',
      },
      {
        symbol: 'm',
        label: `areal mass of ${name} with its resin`,
        formula: 'FAW / (1 - RC)',
        numbers: `${figure(faw)} / ${figure(1 - rc, 4)}`,
        value: prepregGsm,
        unit: 'g/m²',
        sourceId: 'derived',
      },
    ],
  }
}

function plyByVolume(name: string, faw: number, rhoF: number, vf: number): CuredPly {
  inside(vf, `fibre volume fraction of ${name}`)
  const thicknessMm = faw / (1000 * rhoF * vf)
  const prepregGsm = faw + 1000 * thicknessMm * (1 - vf) * assumedResinDensityGcm3
  return {
    thicknessMm,
    fibreVolumeFraction: vf,
    prepregGsm,
    working: [
      {
        symbol: 't',
        label: `cured thickness of ${name}`,
        formula: 'FAW / (1000 x rho_f x Vf)',
        numbers: `${figure(faw)} / (1000 x ${rhoF} x ${vf})`,
        value: thicknessMm,
        unit: 'mm',
        sourceId: 'astm-d3171',
      },
      {
        symbol: 'm',
        label: `areal mass of ${name} with its resin, resin density assumed`,
        formula: 'FAW + 1000 x t x (1 - Vf) x rho_r',
        numbers: `${figure(faw)} + 1000 x ${figure(thicknessMm, 4)} x ${figure(1 - vf, 4)} x ${assumedResinDensityGcm3}`,
        value: prepregGsm,
        unit: 'g/m²',
        sourceId: 'memory',
      },
    ],
  }
}

function positive(value: number, what: string, unit: string): void {
  if (!(value > 0 && Number.isFinite(value)))
    throw new RangeError(`${what} must be above 0 ${unit}, got ${value}`)
}

function inside(value: number, what: string): void {
  if (!(value > 0 && value < 1)) throw new RangeError(`${what} must lie between 0 and 1, got ${value}`)
}
