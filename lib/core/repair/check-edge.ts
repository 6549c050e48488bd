import type { Finding } from '../result'
import { figure } from '../units'
import { edgePlace, type Ground } from './ground'
import { roomFor, roomWords } from './room'
import type { PlannedPly } from './types'
import { sum } from './working-line'

/** Areas below this are what flattening and cutting of outlines leave behind, mm2. */
const slightMm2 = 0.01

/** Opening, face and footprint against the boundary of the face area. */
export function checkEdge(
  ground: Ground,
  plies: readonly PlannedPly[],
  openingOutsideMm2: number,
): Finding[] {
  if (openingOutsideMm2 > slightMm2) return [openingOutside(ground, openingOutsideMm2)]
  const onBack = plies.filter((ply) => ground.input.side !== 'place-face' || ply.replaces === null)
  const onFace = plies.filter((ply) => ground.input.side === 'place-face' && ply.replaces !== null)
  return [...leaves(ground, onBack, 'footprint'), ...leaves(ground, onFace, 'face'), ...margins(ground)]
}

function openingOutside(ground: Ground, areaOutsideMm2: number): Finding {
  const overrunMm = -ground.edgeMm
  return {
    code: 'opening-leaves-area',
    severity: 'stop',
    text: `The opening leaves ${ground.input.area.name} by ${figure(overrunMm, 1)} mm (${figure(areaOutsideMm2, 0)} mm2 lie outside).`,
    place: edgePlace(ground),
    cure: 'Draw the opening inside the area, or give the area its right boundary.',
    figures: { areaOutsideMm2, overrunMm },
  }
}

function leaves(ground: Ground, plies: readonly PlannedPly[], what: 'footprint' | 'face'): Finding[] {
  const first = plies.find((ply) => ply.areaOutsideMm2 > slightMm2)
  if (first === undefined) return []
  const inside = plies.filter((ply) => ply.areaOutsideMm2 <= slightMm2)
  const outside = plies.filter((ply) => ply.areaOutsideMm2 > slightMm2)
  const lapsMm = what === 'footprint' ? ground.lapsMm : 0
  const room = roomFor(ground, ground.edgeMm, lapsMm)
  const runs = outside.map((ply) => `no. ${ply.layingOrder} by ${figure(-ply.distanceToEdgeMm, 1)} mm`)
  const fitsUpToMm = Math.max(0, ...inside.map((ply) => ply.growthMm))
  const words = what === 'footprint' ? 'The footprint on the back' : 'What breaks the tool face'
  return [
    {
      code: what === 'footprint' ? 'footprint-leaves-area' : 'face-plies-leave-area',
      severity: 'look',
      text:
        `${words} leaves ${ground.input.area.name}: plies fit up to ${figure(fitsUpToMm, 1)} mm beyond the opening; ` +
        `${runs.join(', ')} run off.`,
      place: edgePlace(ground),
      cure: `Choose: ${roomWords(ground, room, ground.input.rules.edgeMarginMm, lapsMm)} ${fewerPlies(ground, inside, outside)} Or carry the plies out over the edge and trim it anew.`,
      figures: {
        firstPlyOutside: first.layingOrder,
        fitsUpToMm,
        overrunMm: plies.map((ply) => Math.max(0, -ply.distanceToEdgeMm)),
        areaOutsideMm2: plies.map((ply) => ply.areaOutsideMm2),
        roomMm: ground.edgeMm,
        ...(room.largestStepMm === null
          ? {}
          : { largestStepThatFitsMm: room.largestStepMm, ratioThatFits: room.ratio }),
      },
    },
  ]
}

/** Fewer plies is a choice that breaks ply for ply: it is said what it costs. */
function fewerPlies(ground: Ground, inside: readonly PlannedPly[], outside: readonly PlannedPly[]): string {
  const missing = outside.filter((ply) => ply.replaces !== null)
  if (missing.length === 0) return 'Or leave out the cover ply on that side.'
  const thin = sum(missing.map((ply) => ply.thicknessMm))
  const kept = inside.filter((ply) => ply.replaces !== null).length
  const all = ground.recess.plies.length
  return `Or only ${kept} of ${all} plies on that side, which leaves it ${figure(thin)} mm thin and not ply for ply.`
}

/** Inside the area, but nearer to its boundary than the shop's margin. */
function margins(ground: Ground): Finding[] {
  const { edgeMarginMm } = ground.input.rules
  const findings: Finding[] = []
  for (const [what, growthMm] of [
    ['face', ground.faceMm],
    ['footprint', ground.backMm],
  ] as const) {
    if (growthMm === null) continue
    const leftMm = ground.edgeMm - growthMm
    if (leftMm < 0 || leftMm >= edgeMarginMm - 1e-9) continue
    const lapsMm = what === 'footprint' ? ground.lapsMm : 0
    const grows = growthMm > 0
    findings.push({
      code: `${what}-near-edge`,
      severity: 'look',
      text:
        `${what === 'face' ? 'What breaks the tool face' : 'The footprint on the back'} comes to ${figure(leftMm, 1)} mm of the edge of ` +
        `${ground.input.area.name}; the margin is ${figure(edgeMarginMm)} mm.`,
      place: edgePlace(ground),
      cure: grows
        ? roomWords(ground, roomFor(ground, ground.edgeMm - edgeMarginMm, lapsMm), 0, lapsMm)
        : null,
      figures: { distanceMm: leftMm, marginMm: edgeMarginMm },
    })
  }
  return findings
}
