import type { WorkingStep } from '../result'
import { figure } from '../units'
import { type CuredPly, curedPly } from './ply'
import type { Ply, PlyMaterial } from './types'

export interface StackedPly extends Ply {
  /** Counted from 1, the surface ply. */
  readonly number: number
  readonly thicknessMm: number
  readonly prepregGsm: number
  /** z of its lower and upper face; the middle of the stack is 0 and ply 1 begins at -h/2. */
  readonly fromZMm: number
  readonly toZMm: number
}

export interface StackUp {
  readonly plies: readonly StackedPly[]
  readonly thicknessMm: number
  /** A line for each material, then the sum. */
  readonly working: readonly WorkingStep[]
}

/** Thickness of a stack and where each ply lies in it. RangeError when it has no plies or a ply is nonsense. */
export function stackUp(plies: readonly Ply[]): StackUp {
  if (plies.length === 0) throw new RangeError('a stack needs at least one ply')
  const cured = new Map<PlyMaterial, CuredPly>()
  for (const { material, directionDeg } of plies) {
    if (!Number.isFinite(directionDeg))
      throw new RangeError(`direction must be a number of degrees, got ${directionDeg}`)
    if (!cured.has(material)) cured.set(material, curedPly(material))
  }
  const thicknesses = plies.map((ply) => cured.get(ply.material)!.thicknessMm)
  const thicknessMm = thicknesses.reduce((sum, each) => sum + each, 0)
  const stacked: StackedPly[] = []
  let z = -thicknessMm / 2
  for (const [index, ply] of plies.entries()) {
    const ownMm = thicknesses[index]!
    stacked.push({
      material: ply.material,
      directionDeg: ply.directionDeg,
      number: index + 1,
      thicknessMm: ownMm,
      prepregGsm: cured.get(ply.material)!.prepregGsm,
      fromZMm: z,
      toZMm: z + ownMm,
    })
    z += ownMm
  }
  return {
    plies: stacked,
    thicknessMm,
    working: [...materialLines(cured), sumLine(thicknesses, thicknessMm)],
  }
}

/** Plies of equal materials that came in as separate objects give one line, not one each. */
function materialLines(cured: ReadonlyMap<PlyMaterial, CuredPly>): WorkingStep[] {
  const lines = new Map<string, WorkingStep>()
  for (const { working } of cured.values()) {
    for (const line of working) lines.set(`${line.label} ${line.numbers}`, line)
  }
  return [...lines.values()]
}

function sumLine(thicknesses: readonly number[], thicknessMm: number): WorkingStep {
  const counts = new Map<string, number>()
  for (const each of thicknesses) {
    const text = figure(each, 4)
    counts.set(text, (counts.get(text) ?? 0) + 1)
  }
  return {
    symbol: 't_nom',
    label: 'thickness of the stack',
    formula: 'sum of n_i x t_i',
    numbers: [...counts].map(([text, count]) => `${count} x ${text}`).join(' + '),
    value: thicknessMm,
    unit: 'mm',
    sourceId: 'derived',
  }
}
