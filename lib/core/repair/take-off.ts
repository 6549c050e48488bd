import { curedPly } from '../laminate'
import type { PlyMaterial } from '../laminate/types'
import type { WorkingStep } from '../result'
import { figure } from '../units'
import type { MaterialTakeOff, PlannedPly, RollStrip } from './types'
import { line, sum } from './working-line'

export interface TakeOff {
  readonly materials: readonly MaterialTakeOff[]
  /** Plies that are wider than the roll and so are cut in pieces of equal width, butted. */
  readonly spliced: readonly {
    readonly layingOrder: number
    readonly pieces: number
    readonly acrossMm: number
  }[]
  readonly working: readonly WorkingStep[]
}

type Piece = Omit<RollStrip['pieces'][number], 'offsetAcrossMm'>

/**
 * Material off the roll. Each ply counts as the box around it, turned so that its fibres run along the roll, with
 * the cutting allowance on every side. Boxes are laid side by side in strips across the roll, longest first, each
 * in the first strip that has room (first-fit decreasing: at worst about 1.7 times the least length, from
 * memory). RangeError when the allowance leaves nothing of the roll.
 */
export function takeOff(plies: readonly PlannedPly[], cuttingAllowanceMm: number): TakeOff {
  const groups = new Map<string, PlannedPly[]>()
  for (const ply of plies) {
    const key = JSON.stringify(ply.material)
    groups.set(key, [...(groups.get(key) ?? []), ply])
  }
  const spliced: TakeOff['spliced'][number][] = []
  const materials: MaterialTakeOff[] = []
  const working: WorkingStep[] = []
  for (const group of groups.values()) {
    const { material } = group[0]!
    const pieces = group.flatMap((ply) => {
      const cut = piecesOf(ply, material.rollWidthMm, cuttingAllowanceMm)
      if (cut.length > 1)
        spliced.push({ layingOrder: ply.layingOrder, pieces: cut.length, acrossMm: boxInFibres(ply)[1] })
      return cut
    })
    const one = materialTakeOff(
      material,
      sum(group.map((ply) => ply.areaMm2)),
      stripsOf(pieces, material.rollWidthMm),
    )
    materials.push(one)
    working.push(...takeOffLines(one, group))
  }
  return { materials, spliced, working }
}

function materialTakeOff(
  material: PlyMaterial,
  netMm2: number,
  strips: readonly RollStrip[],
): MaterialTakeOff {
  const rollLengthM = sum(strips.map((strip) => strip.lengthMm)) / 1000
  const grossAreaM2 = (rollLengthM * material.rollWidthMm) / 1000
  const netAreaM2 = netMm2 / 1e6
  return {
    material,
    netAreaM2,
    grossAreaM2,
    rollLengthM,
    massKg: (grossAreaM2 * curedPly(material).prepregGsm) / 1000,
    offcutShare: 1 - netAreaM2 / grossAreaM2,
    strips,
  }
}

/** Extent of a ply along and across its own fibres, mm. */
function boxInFibres(ply: PlannedPly): readonly [alongMm: number, acrossMm: number] {
  const turn = (ply.directionDeg * Math.PI) / 180
  const [cos, sin] = [Math.cos(turn), Math.sin(turn)]
  const least = [Number.POSITIVE_INFINITY, Number.POSITIVE_INFINITY] as [number, number]
  const most = [Number.NEGATIVE_INFINITY, Number.NEGATIVE_INFINITY] as [number, number]
  for (const { outer } of ply.outline) {
    for (const [u, v] of outer) {
      const along = u * cos + v * sin
      const across = v * cos - u * sin
      least[0] = Math.min(least[0], along)
      least[1] = Math.min(least[1], across)
      most[0] = Math.max(most[0], along)
      most[1] = Math.max(most[1], across)
    }
  }
  return [most[0] - least[0], most[1] - least[1]]
}

function piecesOf(ply: PlannedPly, rollWidthMm: number, allowanceMm: number): Piece[] {
  const usableMm = rollWidthMm - 2 * allowanceMm
  if (!(usableMm > 0)) {
    throw new RangeError(
      `a cutting allowance of ${allowanceMm} mm leaves nothing of a roll ${rollWidthMm} mm wide`,
    )
  }
  const [alongMm, acrossMm] = boxInFibres(ply)
  const count = Math.max(1, Math.ceil(acrossMm / usableMm - 1e-9))
  return Array.from({ length: count }, () => ({
    layingOrder: ply.layingOrder,
    alongMm: alongMm + 2 * allowanceMm,
    acrossMm: acrossMm / count + 2 * allowanceMm,
  }))
}

function stripsOf(pieces: readonly Piece[], rollWidthMm: number): RollStrip[] {
  const strips: { lengthMm: number; usedWidthMm: number; pieces: RollStrip['pieces'][number][] }[] = []
  const longestFirst = [...pieces].sort(
    (a, b) => b.alongMm - a.alongMm || b.acrossMm - a.acrossMm || a.layingOrder - b.layingOrder,
  )
  for (const piece of longestFirst) {
    let strip = strips.find((each) => each.usedWidthMm + piece.acrossMm <= rollWidthMm + 1e-9)
    if (strip === undefined) {
      strip = { lengthMm: piece.alongMm, usedWidthMm: 0, pieces: [] }
      strips.push(strip)
    }
    strip.pieces.push({ ...piece, offsetAcrossMm: strip.usedWidthMm })
    strip.usedWidthMm += piece.acrossMm
  }
  return strips
}

function takeOffLines(one: MaterialTakeOff, group: readonly PlannedPly[]): WorkingStep[] {
  const { name, rollWidthMm } = one.material
  const lengths = one.strips.map((strip) => figure(strip.lengthMm / 1000, 3))
  const { prepregGsm } = curedPly(one.material)
  return [
    line(
      'l_roll',
      `${name}: length off the roll`,
      'sum of strip lengths',
      lengths.join(' + '),
      one.rollLengthM,
      'm',
    ),
    line(
      'A_net',
      `${name}: area of the plies`,
      'sum of A_i / 1000000',
      `(${group.map((ply) => figure(ply.areaMm2, 0)).join(' + ')}) / 1000000`,
      one.netAreaM2,
      'm²',
    ),
    line(
      'A_gross',
      `${name}: area off the roll`,
      'l_roll x roll width',
      `${figure(one.rollLengthM, 3)} x ${figure(rollWidthMm / 1000, 3)}`,
      one.grossAreaM2,
      'm²',
    ),
    line(
      'm_roll',
      `${name}: prepreg off the roll, resin included`,
      'A_gross x m / 1000',
      `${figure(one.grossAreaM2, 4)} x ${figure(prepregGsm, 1)} / 1000`,
      one.massKg,
      'kg',
    ),
    line(
      'offcut',
      `${name}: share of offcut`,
      '1 - A_net / A_gross',
      `1 - ${figure(one.netAreaM2, 4)} / ${figure(one.grossAreaM2, 4)}`,
      one.offcutShare,
      '1',
    ),
  ]
}
