import type { MaterialInput, StackInput } from '#lib/schema/material'
import { idOf } from '../base/ids'

const figuresFrom =
  'Invented system. Weight, resin content and cured thickness are usual figures of the trade, from memory; ' +
  'cure, Tg and out life from memory as well. Not a data sheet.'

const cure: MaterialInput['cure'] = {
  name: 'First cure, 8 h at 60 °C on the pattern',
  segments: [
    { rampCPerMin: 0.5, toC: 60, holdMin: 480 },
    { rampCPerMin: 0.5, toC: 40, holdMin: 0 },
  ],
  tgAfterC: 78,
}

/** Free-standing: holds on the way up, so that the air does not get ahead of the present Tg. */
function postCure(topC: number, tgAfterC: number): MaterialInput['postCure'] {
  const steps = [60, 80, 100, 120, 140, 160].map((toC) => ({ rampCPerMin: 0.3, toC, holdMin: 60 }))
  return {
    name: `Post-cure, free-standing, to ${topC} °C`,
    segments: [
      ...steps,
      { rampCPerMin: 0.3, toC: topC, holdMin: 360 },
      { rampCPerMin: 1, toC: 60, holdMin: 0 },
    ],
    tgAfterC,
  }
}

type Figures = Pick<MaterialInput, 'code' | 'name' | 'role' | 'fibreArealWeightGsm' | 'lowBelowM2'> & {
  readonly resinMassFraction: number
  readonly thickestCureMm: number | null
  readonly postCure: MaterialInput['postCure']
}

function carbon({ resinMassFraction, ...figures }: Figures): MaterialInput {
  return {
    id: idOf(`material/${figures.code}`),
    ...figures,
    fibreDensityGcm3: 1.78,
    fibreContent: { kind: 'resin-mass', resinMassFraction, resinDensityGcm3: 1.22 },
    rollWidthMm: 1250,
    cure,
    // 10 days at room temperature: usual for tooling prepreg, from memory.
    outLifeH: 240,
    sourceNote: figuresFrom,
    retired: false,
  }
}

export const materials: readonly MaterialInput[] = [
  carbon({
    code: 'S200',
    name: 'Surface twill 200',
    role: 'surface',
    fibreArealWeightGsm: 200,
    resinMassFraction: 0.42,
    lowBelowM2: 10,
    thickestCureMm: null,
    postCure: postCure(180, 195),
  }),
  carbon({
    code: 'S245',
    name: 'Surface twill 245',
    role: 'surface',
    fibreArealWeightGsm: 245,
    resinMassFraction: 0.42,
    lowBelowM2: null,
    thickestCureMm: null,
    postCure: postCure(180, 195),
  }),
  carbon({
    code: 'B416',
    name: 'Bulk twill 416',
    role: 'bulk',
    fibreArealWeightGsm: 416,
    resinMassFraction: 0.4,
    lowBelowM2: 15,
    thickestCureMm: 10,
    postCure: postCure(190, 203),
  }),
  carbon({
    code: 'B650',
    name: 'Bulk twill 650',
    role: 'bulk',
    fibreArealWeightGsm: 650,
    resinMassFraction: 0.38,
    lowBelowM2: 30,
    thickestCureMm: 10,
    postCure: postCure(180, 195),
  }),
]

interface StackWords {
  readonly code: string
  readonly name: string
  readonly note: string
  readonly surface: string
  readonly bulk: string
  /** Directions of the bulk plies down to the mid-plane; the other half mirrors them. */
  readonly half: readonly number[]
}

function mirrored({ surface, bulk, half, ...words }: StackWords): StackInput {
  const ply = (code: string, directionDeg: number) => ({ materialId: idOf(`material/${code}`), directionDeg })
  const bulks = [...half, ...[...half].reverse()].map((directionDeg) => ply(bulk, directionDeg))
  return { id: idOf(`stack/${words.code}`), ...words, plies: [ply(surface, 0), ...bulks, ply(surface, 0)] }
}

const flipped = 'Bulk plies flipped at the mid-plane. Butt joints staggered 25 mm, none in the surface ply.'

export const stacks: readonly StackInput[] = [
  mirrored({
    code: 'M181',
    name: '1-8-1, large moulds',
    note: flipped,
    surface: 'S200',
    bulk: 'B650',
    half: [0, 45, 0, 45],
  }),
  mirrored({
    code: 'M161',
    name: '1-6-1, middling moulds',
    note: flipped,
    surface: 'S200',
    bulk: 'B650',
    half: [0, 45, 0],
  }),
  mirrored({
    code: 'M141',
    name: '1-4-1, small moulds',
    note: flipped,
    surface: 'S200',
    bulk: 'B650',
    half: [0, 45],
  }),
  mirrored({
    code: 'M121',
    name: '1-2-1, pods',
    note: 'Small deep moulds only.',
    surface: 'S200',
    bulk: 'B650',
    half: [45],
  }),
  mirrored({
    code: 'L161',
    name: '1-6-1 in 416, light',
    note: `Drapes better in tight corners. ${flipped}`,
    surface: 'S200',
    bulk: 'B416',
    half: [0, 45, 45],
  }),
  mirrored({
    code: 'M161-245',
    name: '1-6-1 as built in 2021',
    note: 'Surface ply of 245; not laid any more since the weave printed through.',
    surface: 'S245',
    bulk: 'B650',
    half: [0, 45, 0],
  }),
]
