import type { Finding } from '../result'
import { figure } from '../units'
import { edgePlace, type Ground } from './ground'
import { roomCure, roomFigures, roomFor, withoutCovers } from './room'
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
    text: `The opening leaves the area "${ground.input.area.name}" by ${figure(overrunMm, 1)} mm; ${figure(areaOutsideMm2, 0)} mm² of it lie outside.`,
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
  const [firstRun, ...otherRuns] = outside.map((ply) => [
    `no. ${ply.layingOrder}`,
    `by ${figure(-ply.distanceToEdgeMm, 1)} mm`,
  ])
  const runs = [firstRun!.join(' runs off '), ...otherRuns.map((run) => run.join(' '))].join(', ')
  const fitsUpToMm = Math.max(0, ...inside.map((ply) => ply.growthMm))
  const words = what === 'footprint' ? 'The footprint on the back' : 'What breaks the tool face'
  const fits =
    inside.length === 0
      ? 'no ply of it fits'
      : `plies fit up to ${figure(fitsUpToMm, 1)} mm beyond the opening`
  return [
    {
      code: what === 'footprint' ? 'footprint-leaves-area' : 'face-plies-leave-area',
      severity: 'look',
      text: `${words} leaves the area "${ground.input.area.name}": ${fits}; ${runs}.`,
      place: edgePlace(ground),
      cure: roomCure(ground, {
        room,
        marginMm: ground.input.rules.edgeMarginMm,
        lapsMm,
        others: [
          ...fewerPlies(ground, inside, outside, withoutCovers(ground, room, lapsMm)),
          'carry the plies out over the edge and trim it anew',
        ],
      }),
      figures: {
        firstPlyOutside: first.layingOrder,
        fitsUpToMm,
        overrunMm: plies.map((ply) => Math.max(0, -ply.distanceToEdgeMm)),
        areaOutsideMm2: plies.map((ply) => ply.areaOutsideMm2),
        roomMm: ground.edgeMm,
        ...roomFigures(room),
      },
    },
  ]
}

/** Fewer plies is a choice that breaks ply for ply: it is said what it costs. */
function fewerPlies(
  ground: Ground,
  inside: readonly PlannedPly[],
  outside: readonly PlannedPly[],
  bare: string | null,
): (string | null)[] {
  const missing = outside.filter((ply) => ply.replaces !== null)
  if (missing.length === 0) {
    return [`leave out the cover ${outside.length === 1 ? 'ply' : 'plies'} on that side`]
  }
  const thin = sum(missing.map((ply) => ply.thicknessMm))
  const kept = inside.filter((ply) => ply.replaces !== null).length
  const all = ground.recess.plies.length
  const fewer = `only ${kept} of ${all} plies on that side, which leaves it ${figure(thin)} mm thin and not ply for ply`
  return [bare, fewer]
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
    const room = roomFor(ground, ground.edgeMm - edgeMarginMm, lapsMm)
    const farther = 'draw the opening farther in, where the damage allows it'
    findings.push({
      code: `${what}-near-edge`,
      severity: 'look',
      text:
        `${what === 'face' ? 'What breaks the tool face' : 'The footprint on the back'} comes within ${figure(leftMm, 1)} mm of the edge of ` +
        `the area "${ground.input.area.name}"; the margin is ${figure(edgeMarginMm)} mm.`,
      place: edgePlace(ground),
      cure:
        growthMm === 0
          ? 'Draw the opening farther in, where the damage allows it.'
          : roomCure(ground, {
              room,
              marginMm: 0,
              lapsMm,
              others: [withoutCovers(ground, room, lapsMm), farther],
            }),
      figures: { distanceMm: leftMm, marginMm: edgeMarginMm },
    })
  }
  return findings
}
