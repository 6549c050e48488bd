import { isMirrored } from '../laminate'
import type { Finding } from '../result'
import { figure } from '../units'
import type { Recess } from './recess'
import type { PatchInput } from './types'
import { sum } from './working-line'

/** Is the stack what is really there, and does what is built come to the same thickness? */
export function checkThickness(input: PatchInput, recess: Recess, builtMm: number, place: string): Finding[] {
  const mirror = isMirrored(input.stack).findings.map((finding) => ({
    ...finding,
    place: `${place}, ${finding.place}`,
  }))
  return [...mirror, ...measuredFindings(input, recess, builtMm, place)]
}

function measuredFindings(input: PatchInput, recess: Recess, builtMm: number, place: string): Finding[] {
  const { measuredMm, parent } = recess
  const places = input.measuredThicknessMm
  const tolerance = input.rules.thicknessTolerance
  if (measuredMm === null) {
    return [
      {
        code: 'thickness-not-measured',
        severity: 'look',
        text: `Nothing was measured near the opening, so the taper rests on the nominal ${figure(parent.thicknessMm)} mm.`,
        place,
        cure: 'Measure the thickness at three places or more round the opening.',
      },
    ]
  }
  const findings: Finding[] = []
  if (places.length === 1) {
    findings.push({
      code: 'thickness-measured-once',
      severity: 'note',
      text: `${figure(measuredMm)} mm was measured at one place: that says nothing of how even the mould is.`,
      place,
      cure: 'Measure at three places or more round the opening.',
    })
  }
  const [thinnestMm, thickestMm] = [Math.min(...places), Math.max(...places)]
  if (thickestMm - thinnestMm > tolerance * measuredMm) {
    const lengths = [thinnestMm, thickestMm].map((each) => input.taper.ratio * each * outShare(recess))
    findings.push({
      code: 'thickness-uneven',
      severity: 'look',
      text:
        `Measured between ${figure(thinnestMm)} and ${figure(thickestMm)} mm, unevenly by more than ${figure(tolerance * 100)} %. By ratio the taper would be ` +
        `${figure(lengths[0]!, 1)} mm on the thin side and ${figure(lengths[1]!, 1)} mm on the thick one.`,
      place,
      cure: 'Look for a step or an old patch in the laminate; or plan with the thickest place.',
      figures: { thinnestMm, thickestMm },
    })
  }
  if (Math.abs(parent.thicknessMm - measuredMm) > tolerance * measuredMm * (1 + 1e-9)) {
    const percent = ((measuredMm - parent.thicknessMm) / parent.thicknessMm) * 100
    findings.push({
      code: 'thickness-off',
      severity: 'look',
      text:
        `Nominal ${figure(parent.thicknessMm)} mm, measured ${figure(measuredMm)} mm (${percent > 0 ? '+' : ''}${figure(percent, 1)} %): ` +
        `more than the ${figure(tolerance * 100)} % allowed. Built it comes to ${figure(builtMm)} mm.`,
      place,
      cure:
        'Count plies at a cut edge or trim: the stack in the book may not be the one that is there. ' +
        (measuredMm > parent.thicknessMm
          ? 'If it is, bring the patch to thickness with cover plies or fill.'
          : 'If it is, the patch stands proud on the back: see that nothing there minds.'),
      figures: { nominalMm: parent.thicknessMm, measuredMm, builtMm, differencePercent: percent },
    })
  }
  return findings
}

/** Share of the parent's thickness that is taken out. */
function outShare(recess: Recess): number {
  return sum(recess.plies.map((ply) => ply.thicknessMm)) / recess.parent.thicknessMm
}
