import { figure } from '../units'
import type { Ground } from './ground'
import { capital } from './words'
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

/** Figures of a room for the finding that it belongs to. */
export function roomFigures({ largestStepMm, ratio }: Room): Record<string, number> {
  return largestStepMm === null ? {} : { largestStepThatFitsMm: largestStepMm, ratioThatFits: ratio }
}

interface Offer {
  readonly room: Room
  /** Margin that is asked for beyond the room; 0 where the room already keeps it. */
  readonly marginMm: number
  /** What cover plies take of the room. */
  readonly lapsMm: number
  /** What else may be done, each as the end of "Choose: ..."; null where something is no choice here. */
  readonly others: readonly (string | null)[]
}

/**
 * The cure as a choice. A smaller step is among it only where it keeps the ratio asked for, and then says whether it
 * keeps the margin too; else it is said why it is none.
 */
export function roomCure(ground: Ground, { room, marginMm, lapsMm, others }: Offer): string {
  const asked = figure(ground.input.taper.ratio)
  const step = room.withinRules
    ? [
        `${stepWords(ground, room)}, not below the ${asked}:1 asked for${marginWords(ground, room, marginMm, lapsMm)}`,
      ]
    : []
  const offered = [...step, ...others.filter((each) => each !== null)]
  const none = room.withinRules
    ? ''
    : room.largestStepMm === null
      ? ' No taper fits on that side.'
      : ` ${stepWords(ground, room)}, below the ${asked}:1 asked for, so it is no cure.`
  const [only, ...more] = offered
  if (only !== undefined && more.length === 0) return `${capital(only)}.${none}`
  return `Choose: ${offered.join('. Or ')}.${none}`
}

function stepWords(ground: Ground, { largestStepMm, ratio, surfaceKeepsLeast }: Room): string {
  const surface = surfaceKeepsLeast
    ? `, the surface ply ${figure(ground.input.rules.leastSurfaceStepMm)} mm`
    : ''
  return `${figure(largestStepMm ?? 0, 1)} mm a ply fits on that side${surface}; that is ${figure(ratio, 1)}:1`
}

/** What would be left of a margin where one is asked for. */
function marginWords(ground: Ground, room: Room, marginMm: number, lapsMm: number): string {
  if (marginMm === 0) return ''
  const kept = roomFor(ground, room.freeMm - marginMm, lapsMm)
  return kept.largestStepMm !== null && kept.withinRules
    ? `; ${figure(kept.largestStepMm, 1)} mm a ply also keeps the margin of ${figure(marginMm)} mm (${figure(kept.ratio, 1)}:1)`
    : `; nothing that keeps ${figure(ground.input.taper.ratio)}:1 also keeps the margin of ${figure(marginMm)} mm`
}

/** Cover plies are extra: where they take the room that the taper needs, leaving them out is a choice. */
export function withoutCovers(ground: Ground, room: Room, lapsMm: number): string | null {
  if (lapsMm === 0) return null
  if (ground.input.side === 'place-face') return 'leave out the cover plies on that side'
  const bare = roomFor(ground, room.freeMm, 0)
  if (room.withinRules) return null
  if (bare.largestStepMm === null || !bare.withinRules) return null
  return `without cover plies on that side ${figure(bare.largestStepMm, 1)} mm a ply fits: ${figure(bare.ratio, 1)}:1`
}
