import type { Finding } from '../result'
import type { Ground } from './ground'
import { plyRange } from './recess'

/** What follows from the side that is worked from. */
export function checkSide({ input, recess, place }: Ground): Finding[] {
  const findings: Finding[] = []
  if (input.side === 'pattern-back' && !input.patternAvailable) {
    findings.push({
      code: 'pattern-missing',
      severity: recess.breaksFace ? 'look' : 'note',
      text: `It is to be laid against the pattern, and there is none: a splash takes its place${recess.breaksFace ? ', and the patch takes on the faults of the splash' : ''}.`,
      place,
      cure: recess.breaksFace
        ? 'Take a splash off the tool face before anything is cut, and check it on two locating points.'
        : 'Work in place from the back: the face stays whole and holds the shape.',
    })
  }
  if (input.side === 'place-back' && recess.breaksFace && !input.patternAvailable) {
    findings.push({
      code: 'caul-needs-splash',
      severity: 'note',
      text: 'The caul has to hold the shape of the face, and there is no pattern to make it from.',
      place,
      cure: 'Take a splash off the face before the cut and use it as the caul.',
    })
  }
  if (input.side === 'place-face') {
    findings.push({
      code: 'join-on-face',
      severity: 'note',
      text: 'Worked from the face, the join of every ply shows on the tool face and is dressed back.',
      place,
      cure: null,
    })
  }
  if (input.side === 'place-face' && recess.breaksBack) {
    findings.push({
      code: 'recess-without-bottom',
      severity: 'look',
      text: 'All plies are taken out from the face: the recess has no bottom to lay on.',
      place,
      cure: 'Clamp a released backing plate on the back, without a gap; or work from the back.',
    })
  }
  if (!recess.breaksFace) {
    findings.push({
      code: 'face-stays-whole',
      severity: 'note',
      text: `Only ${plyRange(recess)} ${recess.plies.length === 1 ? 'is' : 'are'} taken out from the back: the recess does not reach the tool face, and nothing breaks it.`,
      place,
      cure: null,
    })
  }
  return findings
}
