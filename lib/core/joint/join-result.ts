import type { Finding, Result, WorkingStep } from '../result'
import { figure } from '../units'
import {
  type Adherend,
  type BondLine,
  doubleLap,
  type LapShear,
  longDoubleLap,
  singleLap,
  type YieldingBond,
} from './lap'
import { neededRatio, scarfAngleDeg, scarfStress, stepShearMPa } from './scarf'

/** What can be asked about a bonded joint. */
export type JoinInput =
  | {
      readonly kind: 'scarf'
      readonly pullMPa: number
      readonly ratio: number
      readonly allowedShearMPa: number
    }
  | {
      readonly kind: 'steps'
      readonly pullMPa: number
      readonly plyThicknessMm: number
      readonly stepMm: number
      readonly allowedShearMPa: number
    }
  | {
      readonly kind: 'single lap'
      readonly loadNPerMm: number
      readonly lengthMm: number
      readonly sheets: readonly [Adherend, Adherend]
      readonly bond: BondLine
    }
  | {
      readonly kind: 'double lap'
      readonly loadNPerMm: number
      readonly lengthMm: number
      readonly outer: Adherend
      readonly inner: Adherend
      readonly bond: BondLine
      readonly changeK: number
    }
  | {
      readonly kind: 'long double lap'
      readonly outer: Adherend
      readonly inner: Adherend
      readonly bond: YieldingBond
    }

/** Named figures of the joint, unit in the name; null where a figure has no answer. */
export type JoinFigures = Readonly<Record<string, number | null>>

/** What is always to be said of these figures. */
const screen: Finding = {
  code: 'joint-screen',
  severity: 'note',
  text: 'A screen, never an approval: on a mould profile, leak-tightness, Tg and dowels govern, and elementary methods take laminates as alike in all directions.',
  place: null,
  cure: 'A part that carries people or flight and road loads is for a licensed or responsible engineer.',
}

/** Stresses of a joint by elementary methods. RangeError on figures that can't be. */
export function joinResult(input: JoinInput): Result<JoinFigures> {
  switch (input.kind) {
    case 'scarf':
      return scarf(input)
    case 'steps':
      return steps(input)
    case 'single lap':
      return single(input)
    case 'double lap':
      return double(input)
    case 'long double lap':
      return long(input)
  }
}

type Of<Kind extends JoinInput['kind']> = Extract<JoinInput, { kind: Kind }>

function scarf({ pullMPa, ratio, allowedShearMPa }: Of<'scarf'>): Result<JoinFigures> {
  const angleDeg = scarfAngleDeg(ratio)
  const { normalMPa, shearMPa } = scarfStress(pullMPa, angleDeg)
  const needed = neededRatio(pullMPa, allowedShearMPa)
  const at = `${figure(pullMPa)} MPa, ${figure(angleDeg, 3)}°`
  const line = step('gere-mechanics')
  return {
    value: { angleDeg, normalMPa, shearMPa, neededRatio: needed },
    method: 'mean stresses on the inclined plane',
    working: [
      line('theta', 'angle of the scarf', 'atan(1 / R)', `atan(1 / ${figure(ratio)})`, angleDeg, '°'),
      line('tau', 'mean shear', 'sigma sin(theta) cos(theta)', at, shearMPa, 'MPa'),
      line('sigma_n', 'mean peel', 'sigma sin²(theta)', at, normalMPa, 'MPa'),
      ...(needed === null
        ? []
        : [
            line(
              'R_min',
              'least ratio for the allowable shear',
              '1 / tan(asin(2 tau_a / sigma) / 2)',
              `tau_a ${figure(allowedShearMPa)} MPa, sigma ${figure(pullMPa)} MPa`,
              needed,
              '1',
            ),
          ]),
    ],
    findings: [screen, ...over(shearMPa, allowedShearMPa, needed)],
  }
}

function steps({ pullMPa, plyThicknessMm, stepMm, allowedShearMPa }: Of<'steps'>): Result<JoinFigures> {
  const shearMPa = stepShearMPa(pullMPa, plyThicknessMm, stepMm)
  return {
    value: { shearMPa },
    method: 'each ply hands its load over its own land, mean shear',
    working: [
      step('derived')(
        'tau',
        'mean shear over the land',
        'sigma t / step',
        `${figure(pullMPa)} x ${figure(plyThicknessMm, 3)} / ${figure(stepMm, 2)}`,
        shearMPa,
        'MPa',
      ),
    ],
    findings: [screen, ...over(shearMPa, allowedShearMPa, null)],
  }
}

function over(shearMPa: number, allowedMPa: number, needed: number | null): Finding[] {
  if (shearMPa <= allowedMPa) return []
  return [
    {
      code: 'joint-shear-over',
      severity: 'look',
      text: `Mean shear of ${figure(shearMPa, 2)} MPa is over the ${figure(allowedMPa, 2)} MPa that are allowed.`,
      place: null,
      cure: needed === null ? 'Lengthen the land.' : `Taper at ${figure(needed, 1)} to 1 or longer.`,
    },
  ]
}

function single({ loadNPerMm, lengthMm, sheets, bond }: Of<'single lap'>): Result<JoinFigures> {
  const shear = singleLap(loadNPerMm, lengthMm, sheets[0], sheets[1], bond)
  return {
    value: lapFigures(shear, lengthMm),
    method: 'shear lag, bending left out',
    working: lapLines(shear, 'volkersen', 'sqrt((G / eta) (1 / E1 t1 + 1 / E2 t2))'),
    findings: [screen, peel],
  }
}

/** Shear lag says nothing of peel, which governs a single lap. */
const peel: Finding = {
  code: 'joint-peel-unknown',
  severity: 'note',
  text: 'A single lap bends under its load; the peel at its ends is not in these figures and often governs.',
  place: null,
  cure: 'Taper the ends to 0.5 mm at 1 in 10, or join on both sides.',
}

function double({
  loadNPerMm,
  lengthMm,
  outer,
  inner,
  bond,
  changeK,
}: Of<'double lap'>): Result<JoinFigures> {
  const { all, byLoad, byHeat } = doubleLap(loadNPerMm, lengthMm, outer, inner, bond, changeK)
  return {
    value: {
      ...lapFigures(all, lengthMm),
      byLoadHighestMPa: byLoad.highestMPa,
      byHeatHighestMPa: byHeat.highestMPa,
    },
    method: 'shear lag of a double lap; the mismatch of expansion is balanced in itself and told apart',
    working: lapLines(all, 'shigley-design', 'sqrt((G / eta) (1 / Eo to + 2 / Ei ti))'),
    findings: [screen],
  }
}

function lapFigures(shear: LapShear, lengthMm: number) {
  return {
    wPerMm: shear.wPerMm,
    meanMPa: shear.meanMPa,
    highestMPa: shear.highestMPa,
    atStartMPa: shear.atMPa(-lengthMm / 2),
    middleMPa: shear.atMPa(0),
    atEndMPa: shear.atMPa(lengthMm / 2),
  }
}

function lapLines(shear: LapShear, sourceId: string, formula: string): WorkingStep[] {
  const line = step(sourceId)
  const lag = `w ${figure(shear.wPerMm, 5)} 1/mm`
  return [
    line('w', 'shear lag', formula, 'sheets and bond as given', shear.wPerMm, '1/mm'),
    line('tau_m', 'mean shear', 'load / bonded length', 'load and length as given', shear.meanMPa, 'MPa'),
    line(
      'tau_max',
      'highest shear, at an end',
      'even cosh(w l / 2) + odd sinh(w l / 2)',
      lag,
      shear.highestMPa,
      'MPa',
    ),
  ]
}

function long({ outer, inner, bond }: Of<'long double lap'>): Result<JoinFigures> {
  const found = longDoubleLap(outer, inner, bond)
  const line = step('hart-smith')
  return {
    value: {
      energyNPerMm: found.energyNPerMm,
      loadNPerMm: found.loadNPerMm,
      lambdaPerMm: found.lambdaPerMm,
      plasticMm: found.plasticMm,
      reachingMm: found.reachingMm,
      restingMm: found.restingMm,
    },
    method: `elastic and plastic shear of a long double lap; gives way at the end of the ${found.endsAt}`,
    working: [
      line(
        'U',
        'strain energy of the bond',
        'eta tau_p (gamma_e / 2 + gamma_p)',
        `${figure(bond.thicknessMm, 3)} x ${figure(bond.yieldMPa)} x (${figure(bond.elasticStrain, 3)} / 2 + ${figure(bond.plasticStrain, 3)})`,
        found.energyNPerMm,
        'N/mm',
      ),
      line(
        'P',
        'load a width',
        found.endsAt === 'inner sheet'
          ? 'sqrt(4 U Ei ti (1 + Ei ti / (2 Eo to)))'
          : 'sqrt(8 U Eo to (1 + 2 Eo to / (Ei ti)))',
        `U ${figure(found.energyNPerMm, 4)} N/mm`,
        found.loadNPerMm,
        'N/mm',
      ),
      line(
        'l',
        'lap with a trough that does not creep',
        'P / (2 tau_p) + 6 / lambda',
        `${figure(found.plasticMm, 2)} + 6 / ${figure(found.lambdaPerMm, 4)}`,
        found.restingMm,
        'mm',
      ),
    ],
    findings: [screen],
  }
}

const step =
  (sourceId: string) =>
  (
    symbol: string,
    label: string,
    formula: string,
    numbers: string,
    value: number,
    unit: string,
  ): WorkingStep => ({ symbol, label, formula, numbers, value, unit, sourceId })
