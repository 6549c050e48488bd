import type { Finding } from '../result'
import { figure } from '../units'
import { dowelsInOpening, type Ground } from './ground'

/** What breaks the tool face against lines, datums, dowels and old patches on it that stay. Nothing when it stays whole. */
export function checkFace(ground: Ground): Finding[] {
  const { faceMm } = ground
  if (faceMm === null) return []
  return [
    ...lineFindings(ground, faceMm),
    ...dowelFindings(ground, faceMm),
    ...oldPatchFindings(ground, faceMm),
  ]
}

function cutName(ground: Ground): string {
  return ground.input.side === 'place-face' ? 'The largest ply' : 'The opening'
}

function lineFindings(ground: Ground, faceMm: number): Finding[] {
  const marginMm = ground.input.rules.edgeMarginMm
  return ground.lines.flatMap(({ thing, mm, place }): Finding[] => {
    const leftMm = mm - faceMm
    const name = `${thing.kind} line "${thing.name}"`
    const note = `Note its place against two dowels before the cut and scribe it anew`
    if (leftMm <= 0) {
      return [
        {
          code: `${thing.kind}-line-in-face`,
          severity: 'look',
          text: `${cutName(ground)} cuts through ${name}: that stretch of it goes.`,
          place,
          cure: `${note}, or keep the cut off it.`,
          figures: { distanceMm: leftMm },
        },
      ]
    }
    if (leftMm >= marginMm - 1e-9) return []
    return [
      {
        code: `${thing.kind}-line-near-face`,
        severity: 'look',
        text: `${cutName(ground)} comes within ${figure(leftMm, 1)} mm of ${name}; the margin is ${figure(marginMm)} mm.`,
        place,
        cure: `${note} if the dressing takes it; or draw the opening farther off, where the damage allows it.`,
        figures: { distanceMm: leftMm, marginMm },
      },
    ]
  })
}

function dowelFindings(ground: Ground, faceMm: number): Finding[] {
  const marginMm = ground.input.rules.footprintToDowelRimMm
  const gone = dowelsInOpening(ground)
  return ground.dowels.flatMap(({ thing, mm, place }): Finding[] => {
    if (gone.includes(thing)) return []
    const rimMm = mm - thing.diameterMm / 2
    const kind = thing.isDatum ? 'datum' : 'dowel'
    const figures = { distanceToRimMm: rimMm - faceMm, marginMm }
    if (rimMm < faceMm) {
      return [
        {
          code: `${kind}-in-face-plies`,
          severity: 'look',
          text: `The face plies run over ${kind} ${thing.tag}.`,
          place,
          cure: 'Take it out before the cut and set it anew after; or keep the taper off it.',
          figures,
        },
      ]
    }
    if (rimMm - faceMm >= marginMm - 1e-9) return []
    return [
      {
        code: `${kind}-near-face`,
        severity: 'look',
        text: `${cutName(ground)} comes within ${figure(rimMm - faceMm, 1)} mm of the rim of ${kind} ${thing.tag}; ${figure(marginMm)} mm asked for.`,
        place,
        cure: `Measure ${thing.tag} before and after.`,
        figures,
      },
    ]
  })
}

function oldPatchFindings(ground: Ground, faceMm: number): Finding[] {
  const spacingMm = ground.input.rules.patchSpacingMm
  return ground.oldFaces.flatMap(({ thing, mm, place }): Finding[] => {
    const leftMm = mm - faceMm
    if (leftMm >= spacingMm - 1e-9) return []
    const over = leftMm <= 0
    return [
      {
        code: over ? 'face-on-old-patch' : 'face-near-old-patch',
        severity: 'look',
        text: over
          ? `${cutName(ground)} cuts into the face of ${thing.name}.`
          : `${cutName(ground)} comes within ${figure(leftMm, 1)} mm of the face of ${thing.name}; ${figure(spacingMm)} mm asked for.`,
        place,
        cure: over
          ? 'Draw one opening that holds both, and plan that.'
          : 'Draw one opening that holds both, and plan that; or draw it farther off, where the damage allows it.',
        figures: { distanceMm: leftMm, spacingMm },
      },
    ]
  })
}
