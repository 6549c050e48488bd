import { backRimMm, dowelsInOpening, type Ground } from './ground'

interface Thing {
  readonly name: string
  /** Distance from the opening that must stay free. */
  readonly mm: number
}

/** Does nothing lie nearer to the planned outlines than the rules allow? */
export function clearNow(ground: Ground): boolean {
  const { faceMm, backMm, input } = ground
  const fromFace = input.side === 'place-face'
  const face = faceMm === null || !fromFace ? [] : faceThings(ground).filter(({ mm }) => mm < faceMm)
  const back = backMm === null || fromFace ? [] : backThings(ground).filter(({ mm }) => mm < backMm)
  return face.length + back.length === 0
}

/** Names of what outlines that are `moreMm` larger would come too near to, and the planned ones do not. */
export function reachedAt(ground: Ground, moreMm: number): string[] {
  const { faceMm, backMm, input } = ground
  const fromFace = input.side === 'place-face'
  const face = faceMm === null || !fromFace ? [] : newly(faceThings(ground), faceMm, moreMm)
  const back = backMm === null || fromFace ? [] : newly(backThings(ground), backMm, moreMm)
  return [...new Set([...face, ...back])].sort()
}

function newly(things: readonly Thing[], growthMm: number, moreMm: number): string[] {
  return things.filter(({ mm }) => mm >= growthMm && mm < growthMm + moreMm).map(({ name }) => name)
}

function faceThings({ edgeMm, lines, dowels, oldFaces, input }: Ground): Thing[] {
  const { rules, area } = input
  return [
    { name: `the edge of ${area.name}`, mm: edgeMm - rules.edgeMarginMm },
    ...lines.map(({ thing, mm }) => ({
      name: `${thing.kind} line ${thing.name}`,
      mm: mm - rules.edgeMarginMm,
    })),
    ...dowels.map(({ thing, mm }) => ({
      name: thing.tag,
      mm: mm - thing.diameterMm / 2 - rules.footprintToDowelRimMm,
    })),
    ...oldFaces.map(({ thing, mm }) => ({ name: thing.name, mm: mm - rules.patchSpacingMm })),
  ]
}

function backThings(ground: Ground): Thing[] {
  const { edgeMm, keepOuts, dowels, oldFootprints, input } = ground
  const { rules, area } = input
  const setAnew = dowelsInOpening(ground)
  return [
    { name: `the edge of ${area.name}`, mm: edgeMm - rules.edgeMarginMm },
    ...keepOuts.map(({ thing, mm }) => ({ name: thing.name, mm })),
    ...dowels
      .filter(({ thing }) => backRimMm(thing) !== null && !setAnew.includes(thing))
      .map(({ thing, mm }) => ({
        name: thing.tag,
        mm: mm - backRimMm(thing)! - rules.footprintToDowelRimMm,
      })),
    ...oldFootprints.map(({ thing, mm }) => ({ name: thing.name, mm: mm - rules.patchSpacingMm })),
  ]
}
