import type { Finding, Outcome } from '../../result'
import { figure } from '../../units/figure'
import type { Point } from '../types'
import type { Straightness } from './straightness'

/** Why a picture can't be placed on the face, in words: each an answer that is none. */
type Refused = Extract<Outcome<never>, { readonly ok: false }>

export function inALine({ ratio, without, acrossMost, alongWhole, where }: Straightness): Refused {
  const unit = where === 'face' ? 'mm' : 'pixels'
  const which = without === null ? 'The marks' : `All marks but ${without}`
  return refused({
    code: 'marks-in-line',
    text: `${which} lie within ${figure(acrossMost)} ${unit} of one line of ${figure(alongWhole, 1)} ${unit} ${where === 'face' ? 'on the face' : 'in the picture'}: they leave open how the rest of the face is seen.`,
    place: without,
    cure: 'Mark four points of which no three lie in a line, best near the corners of what is traced.',
    figures: { widthToLength: ratio },
  })
}

export function beyondHorizon(): Refused {
  return refused({
    code: 'marks-beyond-horizon',
    text: 'No view of a flat face shows the marks as they were set: some would lie beyond its horizon.',
    place: null,
    cure: 'Look whether two marks were swapped, and whether each stands beside its own place.',
  })
}

export function notConverged(): Refused {
  return refused({
    code: 'fit-not-converged',
    text: 'The fit of the marks did not come to rest.',
    place: null,
    cure: 'Look whether two marks were swapped, or mark other points.',
  })
}

export function mirroredOtherwise(saidMirrored: boolean): Refused {
  return refused(
    saidMirrored
      ? {
          code: 'picture-not-mirrored',
          text: 'The picture shows the face the right way round; it was said to be mirrored.',
          place: null,
          cure: 'Say that it is not mirrored, or look whether two marks were swapped.',
        }
      : {
          code: 'picture-mirrored',
          text: 'The picture shows the face mirrored: it was taken from the back, or turned over, or two marks were swapped.',
          place: null,
          cure: 'Look at the marks; if the picture is meant to be mirrored, say so.',
        },
  )
}

export function throughInfinity(lost: {
  readonly what: string
  readonly number: number
  readonly at: Point
}): Refused {
  return refused({
    code: 'beyond-horizon',
    text: `The ${lost.what} no. ${lost.number} (${figure(lost.at[0], 1)}, ${figure(lost.at[1], 1)}) lies at or beyond the horizon of the face: it would go through infinity.`,
    place: `${lost.what} no. ${lost.number}`,
    cure: 'Leave it out, or mark points nearer to it; a picture taken more squarely shows more of the face.',
    figures: { number: lost.number },
  })
}

function refused(finding: Omit<Finding, 'severity'>): Refused {
  return { ok: false, reason: finding.text, findings: [{ ...finding, severity: 'stop' }] }
}
