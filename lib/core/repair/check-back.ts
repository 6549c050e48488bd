import type { Finding } from '../result'
import { figure } from '../units'
import { backRimMm, dowelsInOpening, type Ground } from './ground'
import { type Room, roomCure, roomFigures, roomFor, withoutCovers } from './room'
import type { KeepOut } from './types'

const fartherOff = 'draw the opening farther off, where the damage allows it'

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
        ? 'carry the plies up the flange and rebuild it'
        : 'take it off, lay, and set it anew'
    return [
      {
        code: `footprint-on-${thing.kind === 'other' ? 'keep-out' : thing.kind}`,
        severity: 'look',
        text: `The footprint runs ${figure(backMm - mm, 1)} mm on to ${keepOutWords[thing.kind]} "${thing.name}".`,
        place,
        cure: cureOf(ground, room, 0, [choice, fartherOff]),
        figures: {
          overrunMm: backMm - mm,
          roomMm: mm,
          ...roomFigures(room),
        },
      },
    ]
  })
}

function cureOf(ground: Ground, room: Room, marginMm: number, choices: readonly string[]): string {
  const { lapsMm } = ground
  return roomCure(ground, {
    room,
    marginMm,
    lapsMm,
    others: [withoutCovers(ground, room, lapsMm), ...choices],
  })
}

/** What is in the opening is set anew and told as that, so only those that stay are told here. */
function bushFindings(ground: Ground, backMm: number): Finding[] {
  const marginMm = ground.input.rules.footprintToDowelRimMm
  const setAnew = dowelsInOpening(ground)
  return ground.dowels.flatMap(({ thing, mm, place }): Finding[] => {
    const radius = backRimMm(thing)
    if (radius === null || setAnew.includes(thing)) return []
    const leftMm = mm - radius - backMm
    if (leftMm >= marginMm - 1e-9) return []
    const over = leftMm < 0
    const rim = `the ${thing.bushDiameterMm === null ? 'bore' : 'bush'} of ${thing.tag}`
    const room = roomFor(ground, over ? mm - radius : mm - radius - marginMm, ground.lapsMm)
    return [
      {
        code: over ? 'footprint-on-bush' : 'footprint-near-bush',
        severity: 'look',
        text: over
          ? `The footprint runs ${figure(-leftMm, 1)} mm past the near rim of ${rim}: ${underBush(-leftMm, 2 * radius)}.`
          : `The footprint comes within ${figure(leftMm, 1)} mm of ${rim}; ${figure(marginMm)} mm asked for.`,
        place,
        cure: over
          ? cureOf(ground, room, marginMm, ['take it out before the cut and set it anew after', fartherOff])
          : cureOf(ground, room, 0, [`measure ${thing.tag} before and after`, fartherOff]),
        figures: { distanceToRimMm: leftMm, marginMm },
      },
    ]
  })
}

function underBush(overMm: number, acrossMm: number): string {
  return overMm < acrossMm ? 'a taper must not end under it' : 'the plies run under the whole of it'
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
          : `The footprint comes within ${figure(leftMm, 1)} mm of that of ${thing.name}; ${figure(spacingMm)} mm asked for.`,
        place,
        cure: 'Draw one opening that holds both, and plan that; or draw it farther off, where the damage allows it.',
        figures: { distanceMm: leftMm, spacingMm },
      },
    ]
  })
}
