import { figure } from '../units'
import type { Ground } from './ground'
import { sum } from './working-line'

/** What taper fits between the opening and something at `freeMm` from it. */
export interface Room {
  readonly freeMm: number
  /** The same step for every ply, mm; null when none fits. */
  readonly largestStepMm: number | null
  /** Ratio that the whole taper has then. */
  readonly ratio: number
  /** Neither the ratio asked for nor the surface ply's least step is broken. */
  readonly withinRules: boolean
  /** The surface ply keeps its least step while the others get `largestStepMm`. */
  readonly surfaceKeepsLeast: boolean
}

/**
 * Smaller outlines can't reach anything that larger ones did not, so a smaller step has only to be checked against
 * the ratio asked for and the least step of the surface ply. `lapsMm` is what cover plies take of the room.
 */
export function roomFor(ground: Ground, freeMm: number, lapsMm: number): Room {
  const { recess, input } = ground
  const lands = input.edge === 'scarf' ? recess.plies : recess.plies.slice(0, -1)
  const judgedMm = sum(lands.map((ply) => ply.thicknessMm)) * recess.scale
  const tapersMm = freeMm - lapsMm
  const least = lands.some((ply) => ply.number === 1) ? input.rules.leastSurfaceStepMm : 0
  const even = tapersMm / lands.length
  const surfaceKeepsLeast = even < least
  const step = surfaceKeepsLeast ? (tapersMm - least) / (lands.length - 1) : even
  if (lands.length === 0 || !(tapersMm > 0) || !(step > 0) || !Number.isFinite(step)) {
    return { freeMm, largestStepMm: null, ratio: 0, withinRules: false, surfaceKeepsLeast: false }
  }
  const ratio = tapersMm / judgedMm
  return {
    freeMm,
    largestStepMm: step,
    ratio,
    withinRules: ratio >= input.taper.ratio - 1e-9,
    surfaceKeepsLeast,
  }
}

/** The smaller step as a cure, or why it is none. Says what would be left of a margin where one is asked for. */
export function roomWords(ground: Ground, room: Room, marginMm: number, lapsMm: number): string {
  const asked = ground.input.taper.ratio
  if (room.largestStepMm === null)
    return `No taper fits on that side.${withoutCovers(ground, room.freeMm, lapsMm)}`
  const surface = room.surfaceKeepsLeast
    ? `, the surface ply ${figure(ground.input.rules.leastSurfaceStepMm)} mm`
    : ''
  const words = `${figure(room.largestStepMm, 1)} mm a ply fits on that side${surface}; that is ${figure(room.ratio, 1)}:1`
  if (!room.withinRules) {
    return `${words}, below the ${figure(asked)}:1 asked for, so it is no cure.${withoutCovers(ground, room.freeMm, lapsMm)}`
  }
  if (marginMm === 0) return `${words}, not below the ${figure(asked)}:1 asked for.`
  const kept = roomFor(ground, room.freeMm - marginMm, lapsMm)
  const margin =
    kept.largestStepMm !== null && kept.withinRules
      ? `${figure(kept.largestStepMm, 1)} mm a ply also keeps the margin of ${figure(marginMm)} mm (${figure(kept.ratio, 1)}:1)`
      : `nothing that keeps ${figure(asked)}:1 also keeps the margin of ${figure(marginMm)} mm`
  return `${words}, not below the ${figure(asked)}:1 asked for; ${margin}.`
}

/** Cover plies are extra: where they take the room that the taper needs, that is said. */
function withoutCovers(ground: Ground, freeMm: number, lapsMm: number): string {
  if (lapsMm === 0) return ''
  const bare = roomFor(ground, freeMm, 0)
  if (bare.largestStepMm === null || !bare.withinRules) return ''
  return ` Without cover plies on that side ${figure(bare.largestStepMm, 1)} mm a ply fits: ${figure(bare.ratio, 1)}:1.`
}
