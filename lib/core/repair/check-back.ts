import type { Finding } from '../result'
import { figure } from '../units'
import { backRimMm, dowelsInOpening, type Ground } from './ground'
import { roomFor, roomWords } from './room'
import type { KeepOut } from './types'

/** The footprint against what stands on the back. Nothing when the plan puts nothing there. */
export function checkBack(ground: Ground): Finding[] {
  const { backMm } = ground
  if (backMm === null) return []
  return [
    ...keepOutFindings(ground, backMm),
    ...bushFindings(ground, backMm),
    ...oldPatchFindings(ground, backMm),
  ]
}

const keepOutWords = {
  flange: 'the flange',
  'seal-land': 'the seal land',
  backing: 'the backing',
  other: 'the keep-out',
} as const satisfies Record<KeepOut['kind'], string>

function keepOutFindings(ground: Ground, backMm: number): Finding[] {
  return ground.keepOuts.flatMap(({ thing, mm, place }): Finding[] => {
    if (mm > 0 && mm >= backMm - 1e-9) return []
    const room = roomFor(ground, mm, ground.lapsMm)
    const choice =
      thing.kind === 'flange'
        ? 'Or carry the plies up the flange and rebuild it.'
        : 'Or take it off, lay, and set it anew.'
    return [
      {
        code: `footprint-on-${thing.kind === 'other' ? 'keep-out' : thing.kind}`,
        severity: 'look',
        text: `The footprint runs ${figure(backMm - mm, 1)} mm on to ${keepOutWords[thing.kind]} ${thing.name}.`,
        place,
        cure: `Choose: ${roomWords(ground, room, 0, ground.lapsMm)} ${choice}`,
        figures: {
          overrunMm: backMm - mm,
          roomMm: mm,
          ...(room.largestStepMm === null
            ? {}
            : { largestStepThatFitsMm: room.largestStepMm, ratioThatFits: room.ratio }),
        },
      },
    ]
  })
}

/** A bush in the opening is set anew anyway, so only those that stay are told. */
function bushFindings(ground: Ground, backMm: number): Finding[] {
  const marginMm = ground.input.rules.footprintToDowelRimMm
  const setAnew = dowelsInOpening(ground)
  return ground.dowels.flatMap(({ thing, mm, place }): Finding[] => {
    const radius = backRimMm(thing)
    if (radius === null || setAnew.includes(thing)) return []
    const leftMm = mm - radius - backMm
    if (leftMm >= marginMm - 1e-9) return []
    const over = leftMm < 0
    return [
      {
        code: over ? 'footprint-on-bush' : 'footprint-near-bush',
        severity: 'look',
        text: over
          ? `The footprint runs ${figure(-leftMm, 1)} mm under the bush of ${thing.tag}: a taper must not end under a bush.`
          : `The footprint comes to ${figure(leftMm, 1)} mm of the bush of ${thing.tag}; ${figure(marginMm)} mm asked for.`,
        place,
        cure: over
          ? `Choose: ${roomWords(ground, roomFor(ground, mm - radius, ground.lapsMm), marginMm, ground.lapsMm)} Or take the bush out and set it anew.`
          : roomWords(ground, roomFor(ground, mm - radius - marginMm, ground.lapsMm), 0, ground.lapsMm),
        figures: { distanceToRimMm: leftMm, marginMm },
      },
    ]
  })
}

function oldPatchFindings(ground: Ground, backMm: number): Finding[] {
  const spacingMm = ground.input.rules.patchSpacingMm
  return ground.oldFootprints.flatMap(({ thing, mm, place }): Finding[] => {
    const leftMm = mm - backMm
    if (leftMm >= spacingMm - 1e-9) return []
    const over = leftMm <= 0
    return [
      {
        code: over ? 'footprint-on-old-patch' : 'footprint-near-old-patch',
        severity: 'look',
        text: over
          ? `The footprint runs ${figure(-leftMm, 1)} mm into that of ${thing.name}.`
          : `The footprint comes to ${figure(leftMm, 1)} mm of that of ${thing.name}; ${figure(spacingMm)} mm asked for.`,
        place,
        cure: 'Draw one opening that holds both, and plan that; or keep them apart.',
        figures: { distanceMm: leftMm, spacingMm },
      },
    ]
  })
}
