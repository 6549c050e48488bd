import { meanThicknessMm, type StackedPly, type StackUp, stackUp } from '../laminate'
import { figure } from '../units'
import type { PatchInput } from './types'

/** What is cut out of the parent, in the order in which it is laid again. */
export interface Recess {
  readonly parent: StackUp
  /** From the bottom of the recess up. */
  readonly plies: readonly StackedPly[]
  /** Ply 1 is out: the cut breaks the tool face. */
  readonly breaksFace: boolean
  /** The last ply is out: the cut breaks the back. */
  readonly breaksBack: boolean
  /** Mean of the measured places; null when nothing was measured. */
  readonly measuredMm: number | null
  /** Measured over nominal thickness, 1 when nothing was measured. */
  readonly scale: number
}

/**
 * Which plies are replaced and in which order. From the back the bottom of the recess is the ply nearest the tool
 * face; from the face it is the deepest ply taken out, and the surface ply comes last. The reason, in words, when
 * the plies can't be reached from that side or are not one block.
 */
export function recessOf(
  input: PatchInput,
): { readonly ok: true; readonly recess: Recess } | { readonly ok: false; readonly reason: string } {
  const { stack, removedPlies, side } = input
  if (stack.length === 0) return no('The parent stack has no plies. Give the stack of the area.')
  if (removedPlies.length === 0) return no('No ply is taken out. Name the plies that are cut.')
  const strange = removedPlies.find((ply) => !Number.isInteger(ply) || ply < 1 || ply > stack.length)
  if (strange !== undefined) {
    return no(
      `Ply ${strange} is not in the stack, which has plies 1 to ${stack.length}. Name plies of the stack.`,
    )
  }
  const numbers = [...removedPlies].sort((a, b) => a - b)
  const twice = numbers.find((ply, index) => ply === numbers[index + 1])
  if (twice !== undefined) return no(`Ply ${twice} is named twice. Name each ply once.`)
  const first = numbers[0]!
  const last = numbers[numbers.length - 1]!
  if (last - first + 1 !== numbers.length) {
    return no(`Plies ${numbers.join(', ')} are not one block. Take out every ply from ${first} to ${last}.`)
  }
  const fromFace = side === 'place-face'
  if (fromFace && first !== 1) {
    return no(
      `Worked from the face the cut begins with ply 1. Take out plies 1 to ${last}, or work from the back.`,
    )
  }
  if (!fromFace && last !== stack.length) {
    return no(
      `Worked from the back the cut begins with ply ${stack.length}, the last. ` +
        `Take out plies ${first} to ${stack.length}, or work in place from the face.`,
    )
  }
  const parent = stackUp(stack)
  const removed = parent.plies.slice(first - 1, last)
  const measuredMm = meanThicknessMm(input.measuredThicknessMm)
  return {
    ok: true,
    recess: {
      parent,
      plies: fromFace ? [...removed].reverse() : removed,
      breaksFace: first === 1,
      breaksBack: last === stack.length,
      measuredMm,
      scale: measuredMm === null ? 1 : measuredMm / parent.thicknessMm,
    },
  }
}

/** "plies 1 to 6", "plies 1 and 2", "ply 3". */
export function plyRange(recess: Recess): string {
  const numbers = recess.plies.map((ply) => ply.number)
  const first = Math.min(...numbers)
  const last = Math.max(...numbers)
  if (first === last) return `ply ${first}`
  return last === first + 1 ? `plies ${first} and ${last}` : `plies ${first} to ${last}`
}

/** "245 twill at 45°". */
export function plyText(ply: {
  readonly material: { readonly name: string }
  readonly directionDeg: number
}): string {
  return `${ply.material.name} at ${figure(ply.directionDeg)}°`
}

function no(reason: string): { readonly ok: false; readonly reason: string } {
  return { ok: false, reason }
}
