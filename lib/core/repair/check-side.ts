import type { Finding } from '../result'
import type { Ground } from './ground'
import { plyRange } from './recess'

/** What follows from the side that is worked from. */
export function checkSide({ input, recess, place }: Ground): Finding[] {
  const findings: Finding[] = []
  if (input.side === 'pattern-back' && !input.patternAvailable) {
    findings.push({
      code: 'pattern-missing',
      severity: 'look',
      text: 'It is to be laid against the pattern, and there is none: the splash takes its place and its faults.',
      place,
      cure: 'A splash off the tool face first, before anything is cut; check it on two locating points.',
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
      cure: 'A released backing plate on the back, clamped without a gap; or work from the back.',
    })
  }
  if (!recess.breaksFace) {
    findings.push({
      code: 'face-stays-whole',
      severity: 'note',
      text: `Only ${plyRange(recess)} are taken out from the back: the recess does not reach the tool face, and nothing breaks it.`,
      place,
      cure: null,
    })
  }
  return findings
}
