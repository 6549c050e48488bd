import * as z from 'zod'
import { angleDeg, choice, lengthMm, plainNumber } from './fields'

const modulusMPa = () => plainNumber({ min: 1, max: 2e6 })
const thicknessMm = (least = 0.001) => lengthMm({ min: least, max: 1000 })
const perK = () => plainNumber({ min: -1e-3, max: 1e-3 })
const changeK = () => plainNumber({ min: -500, max: 500 })

const Layer = z.object({
  lamina: z.object({
    e1MPa: modulusMPa(),
    e2MPa: modulusMPa(),
    g12MPa: modulusMPa(),
    nu12: plainNumber({ min: -1, max: 5 }),
    alpha1PerK: perK().prefault(0),
    alpha2PerK: perK().prefault(0),
  }),
  directionDeg: angleDeg(),
  thicknessMm: thicknessMm(),
  weave: choice(['as measured', 'two crossed layers']).prefault('as measured'),
})

/** A stack for plate mechanics, ply 1 first; `changeK` asks what a change of temperature does. */
export const PlateRequest = z.object({
  layers: z.array(Layer).min(1).max(200),
  changeK: changeK().nullable().prefault(null),
})

const Sheet = z.object({
  eMPa: modulusMPa(),
  thicknessMm: thicknessMm(),
  alphaPerK: perK().prefault(0),
})

const Bond = z.object({ gMPa: modulusMPa(), thicknessMm: thicknessMm() })
const stress = () => plainNumber({ min: 0.001, max: 1e5 })
const load = () => plainNumber({ min: 0.001, max: 1e6 })

/** What is asked about a bonded joint. */
export const JoinRequest = z.discriminatedUnion('kind', [
  z.object({
    kind: z.literal('scarf'),
    pullMPa: stress(),
    ratio: plainNumber({ min: 0.1, max: 1000 }),
    allowedShearMPa: stress(),
  }),
  z.object({
    kind: z.literal('steps'),
    pullMPa: stress(),
    plyThicknessMm: thicknessMm(),
    stepMm: thicknessMm(),
    allowedShearMPa: stress(),
  }),
  z.object({
    kind: z.literal('single lap'),
    loadNPerMm: load(),
    lengthMm: thicknessMm(0.1),
    sheets: z.tuple([Sheet, Sheet]),
    bond: Bond,
  }),
  z.object({
    kind: z.literal('double lap'),
    loadNPerMm: load(),
    lengthMm: thicknessMm(0.1),
    outer: Sheet,
    inner: Sheet,
    bond: Bond,
    changeK: changeK().prefault(0),
  }),
  z.object({
    kind: z.literal('long double lap'),
    outer: Sheet,
    inner: Sheet,
    bond: z.object({
      yieldMPa: stress(),
      elasticStrain: plainNumber({ min: 1e-6, max: 10 }),
      plasticStrain: plainNumber({ min: 0, max: 10 }),
      thicknessMm: thicknessMm(),
    }),
  }),
])
