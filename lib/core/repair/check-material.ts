import { assumedResinDensityGcm3 } from '../laminate'
import type { Finding } from '../result'
import { figure } from '../units'
import type { TakeOff } from './take-off'
import type { PlannedPly } from './types'
import { sum } from './working-line'

/** Does the material fit the roll, and does the stack cure without running hot? */
export function checkMaterial(plies: readonly PlannedPly[], off: TakeOff, place: string): Finding[] {
  return [...splices(plies, off, place), ...overheating(plies, place), ...assumedResin(plies, place)]
}

function splices(plies: readonly PlannedPly[], off: TakeOff, place: string): Finding[] {
  if (off.spliced.length === 0) return []
  const each = off.spliced.map(({ layingOrder, pieces, acrossMm }) => {
    const ply = plies[layingOrder - 1]!
    return `${plyTitle(ply)}: ${figure(acrossMm, 0)} mm across its fibres off a roll of ${figure(ply.material.rollWidthMm, 0)} mm, in ${pieces} pieces`
  })
  const surface = off.spliced.some(({ layingOrder }) => plies[layingOrder - 1]!.replaces === 1)
  return [
    {
      code: 'ply-wider-than-roll',
      severity: 'look',
      text: `Wider than the roll, so cut in pieces of equal width: ${each.join('; ')}.`,
      place,
      cure: `Butt the pieces and stagger splices of neighbouring plies by 25 mm or more.${surface ? ' A splice in the surface ply shows on the face: find a wider roll for it.' : ''}`,
      figures: {
        layingOrders: off.spliced.map(({ layingOrder }) => layingOrder),
        pieces: off.spliced.map(({ pieces }) => pieces),
        acrossMm: off.spliced.map(({ acrossMm }) => acrossMm),
      },
    },
  ]
}

function overheating(plies: readonly PlannedPly[], place: string): Finding[] {
  const thicknessMm = sum(plies.map((ply) => ply.thicknessMm))
  const said = plies.filter((ply) => ply.material.thickestCureMm !== null)
  if (said.length === 0) {
    return [
      {
        code: 'thickest-cure-not-said',
        severity: 'note',
        text: `Nobody has said how thick a stack of these materials cures safely in one go; this one is ${figure(thicknessMm)} mm.`,
        place,
        cure: 'Ask for it on the data sheet and put it on the material.',
      },
    ]
  }
  const least = said.reduce((a, b) =>
    b.material.thickestCureMm! < a.material.thickestCureMm! ? b : a,
  ).material
  const limitMm = least.thickestCureMm!
  if (thicknessMm <= limitMm) return []
  return [
    {
      code: 'stack-may-overheat',
      severity: 'look',
      text: `${figure(thicknessMm)} mm in one cure; ${least.name} is known to cure safely up to ${figure(limitMm)} mm. The stack may overheat.`,
      place,
      cure: `Lay and cure in ${Math.ceil(thicknessMm / limitMm)} goes; or hold at a step on the way up, with a thermocouple in the thickest place.`,
      figures: { thicknessMm, limitMm },
    },
  ]
}

function assumedResin(plies: readonly PlannedPly[], place: string): Finding[] {
  const names = new Set(
    plies.filter((ply) => ply.material.fibreContent.kind === 'fibre-volume').map((ply) => ply.material.name),
  )
  if (names.size === 0) return []
  return [
    {
      code: 'resin-density-assumed',
      severity: 'note',
      text: `${[...names].sort().join(', ')}: fibre content by volume gives no resin density; ${assumedResinDensityGcm3} g/cm³ was put in for the mass.`,
      place,
      cure: 'Give the resin mass fraction and resin density from the data sheet.',
    },
  ]
}

/** "Ply 3, laid no. 2" or "Cover ply, laid no. 9". */
export function plyTitle(ply: PlannedPly): string {
  return ply.replaces === null
    ? `Cover ply, laid no. ${ply.layingOrder}`
    : `Ply ${ply.replaces}, laid no. ${ply.layingOrder}`
}
