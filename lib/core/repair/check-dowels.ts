import type { Finding } from '../result'
import { dowelsInOpening, type Ground } from './ground'

/** Locating points that go with what is cut out, through the face or by their bush on the back. */
export function checkDowels(ground: Ground): Finding[] {
  const gone = dowelsInOpening(ground)
  return ground.dowels
    .filter(({ thing }) => gone.includes(thing))
    .map(({ thing, mm, place }): Finding => {
      const kind = thing.isDatum ? 'datum' : 'dowel'
      const rimMm = mm - thing.diameterMm / 2
      const where =
        rimMm < 0
          ? `${thing.isDatum ? 'Datum' : 'Dowel'} ${thing.tag} stands in the opening`
          : `The bush of ${kind} ${thing.tag} reaches into the opening`
      return {
        code: `${kind}-in-opening`,
        severity: 'look',
        text: `${where}${thing.isDatum ? ': the frame of the area rests on it' : ' and goes with it'}.`,
        place,
        cure: thing.isDatum
          ? 'Measure the frame from datums that stay before the cut, and measure again after.'
          : 'Set it anew: off the pattern pin, or measured back from the datums.',
        figures: {
          distanceToRimMm: rimMm - (ground.faceMm ?? 0),
          marginMm: ground.input.rules.footprintToDowelRimMm,
        },
      }
    })
}
