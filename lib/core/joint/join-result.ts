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

/** Figures of the joint by name, unit in the name; null where a figure has no answer. */
export interface JoinFigures {
  readonly figures: Readonly<Record<string, number | null>>
}

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
  const [sine, cosine] = [`sin(${figure(angleDeg, 3)}°)`, `cos(${figure(angleDeg, 3)}°)`]
  const line = step('gere-mechanics')
  return {
    value: { figures: { angleDeg, normalMPa, shearMPa, neededRatio: needed } },
    method: 'mean stresses on the inclined plane',
    working: [
      line('theta', 'angle of the scarf', 'atan(1 / R)', `atan(1 / ${figure(ratio)})`, angleDeg, '°'),
      line(
        'tau',
        'mean shear',
        'sigma sin(theta) cos(theta)',
        `${figure(pullMPa)} x ${sine} x ${cosine}`,
        shearMPa,
        'MPa',
      ),
      line('sigma_n', 'mean peel', 'sigma sin²(theta)', `${figure(pullMPa)} x ${sine}²`, normalMPa, 'MPa'),
      ...(needed === null
        ? []
        : [
            line(
              'R_min',
              'least ratio for the allowable shear',
              '1 / tan(asin(2 tau_a / sigma) / 2)',
              `1 / tan(asin(2 x ${figure(allowedShearMPa)} / ${figure(pullMPa)}) / 2)`,
              needed,
              '1',
            ),
          ]),
    ],
    findings: [screen, ...overstressed(shearMPa, allowedShearMPa, needed)],
  }
}

function steps({ pullMPa, plyThicknessMm, stepMm, allowedShearMPa }: Of<'steps'>): Result<JoinFigures> {
  const shearMPa = stepShearMPa(pullMPa, plyThicknessMm, stepMm)
  return {
    value: { figures: { shearMPa } },
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
    findings: [screen, ...overstressed(shearMPa, allowedShearMPa, null)],
  }
}

function overstressed(shearMPa: number, allowedMPa: number, needed: number | null): Finding[] {
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
    value: { figures: lapFigures(shear, lengthMm) },
    method: 'shear lag, bending left out',
    working: lapLines(shear, lengthMm, 'volkersen', {
      lag: 'sqrt((G / eta) (1 / (E1 t1) + 1 / (E2 t2)))',
      lagNumbers: `sqrt(${over(bond)} x (1 / ${stiff(sheets[0])} + 1 / ${stiff(sheets[1])}))`,
      mean: 'P / l',
      meanNumbers: `${figure(loadNPerMm)} / ${figure(lengthMm)}`,
    }),
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
      figures: {
        ...lapFigures(all, lengthMm),
        byLoadHighestMPa: byLoad.highestMPa,
        byHeatHighestMPa: byHeat.highestMPa,
      },
    },
    method: 'shear lag of a double lap; the mismatch of expansion is balanced in itself and told apart',
    working: lapLines(all, lengthMm, 'shigley-design', {
      lag: 'sqrt((G / eta) (1 / (Eo to) + 2 / (Ei ti)))',
      lagNumbers: `sqrt(${over(bond)} x (1 / ${stiff(outer)} + 2 / ${stiff(inner)}))`,
      mean: 'P / (2 l)',
      meanNumbers: `${figure(loadNPerMm)} / (2 x ${figure(lengthMm)})`,
    }),
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

interface LapWords {
  readonly lag: string
  readonly lagNumbers: string
  readonly mean: string
  readonly meanNumbers: string
}

/** Shear lag, mean, and the highest at an end: what is even about the middle, and what is odd, there. */
function lapLines(shear: LapShear, lengthMm: number, sourceId: string, words: LapWords): WorkingStep[] {
  const line = step(sourceId)
  const [start, end] = [shear.atMPa(-lengthMm / 2), shear.atMPa(lengthMm / 2)]
  const half = figure((shear.wPerMm * lengthMm) / 2, 4)
  return [
    line('w', 'shear lag', words.lag, words.lagNumbers, shear.wPerMm, '1/mm'),
    line('tau_m', 'mean shear', words.mean, words.meanNumbers, shear.meanMPa, 'MPa'),
    line(
      'tau_max',
      'highest shear, at an end',
      'tau(0) cosh(w l / 2) + the odd part at the ends',
      `${figure(shear.atMPa(0), 3)} x cosh(${half}) + ${figure(Math.abs(end - start) / 2, 3)}`,
      shear.highestMPa,
      'MPa',
    ),
  ]
}

const over = ({ gMPa, thicknessMm }: BondLine) => `(${figure(gMPa)} / ${figure(thicknessMm, 3)})`
const stiff = ({ eMPa, thicknessMm }: Adherend) => `(${figure(eMPa)} x ${figure(thicknessMm, 3)})`

function long({ outer, inner, bond }: Of<'long double lap'>): Result<JoinFigures> {
  const { endsAt, ...figures } = longDoubleLap(outer, inner, bond)
  const [so, si] = [stiff(outer), stiff(inner)]
  const energy = figure(figures.energyNPerMm, 4)
  const line = step('hart-smith')
  return {
    value: { figures },
    method: `elastic and plastic shear of a long double lap; gives way at the end of the ${endsAt}`,
    working: [
      line(
        'U',
        'strain energy of the bond',
        'eta tau_p (gamma_e / 2 + gamma_p)',
        `${figure(bond.thicknessMm, 3)} x ${figure(bond.yieldMPa)} x (${figure(bond.elasticStrain, 3)} / 2 + ${figure(bond.plasticStrain, 3)})`,
        figures.energyNPerMm,
        'N/mm',
      ),
      line(
        'P',
        'load a width',
        endsAt === 'inner sheet'
          ? 'sqrt(4 U Ei ti (1 + Ei ti / (2 Eo to)))'
          : 'sqrt(8 U Eo to (1 + 2 Eo to / (Ei ti)))',
        endsAt === 'inner sheet'
          ? `sqrt(4 x ${energy} x ${si} x (1 + ${si} / (2 x ${so})))`
          : `sqrt(8 x ${energy} x ${so} x (1 + 2 x ${so} / ${si}))`,
        figures.loadNPerMm,
        'N/mm',
      ),
      line(
        'l',
        'lap with a trough that does not creep',
        'P / (2 tau_p) + 6 / lambda',
        `${figure(figures.plasticMm, 2)} + 6 / ${figure(figures.lambdaPerMm, 4)}`,
        figures.restingMm,
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
