import type { Finding, Result, WorkingStep } from '../result'
import { figure } from '../units'
import { curedPly } from './ply'
import type { Ply, PlyMaterial } from './types'

/** Directions nearer than this are the same, degrees: well under what anybody can lay. */
const sameDirectionDeg = 0.01

/**
 * Is the stack mirrored about its mid-plane, by material and direction? One that is not warps as it cools
 * (B matrix not zero, classical laminate theory). Directions are compared modulo 180 degrees.
 */
export function isMirrored(plies: readonly Ply[]): Result<boolean> {
  const odd: [number, number][] = []
  for (let index = 0; index < Math.floor(plies.length / 2); index += 1) {
    const partner = plies.length - 1 - index
    if (
      !sameMaterial(plies[index]!.material, plies[partner]!.material) ||
      !sameDirection(plies[index]!, plies[partner]!)
    ) {
      odd.push([index + 1, partner + 1])
    }
  }
  return {
    value: odd.length === 0,
    method: 'ply by ply about the mid-plane, by material and direction',
    working: [mirrorLine(plies, odd)],
    findings: odd.length === 0 ? [] : [notMirrored(plies, odd)],
  }
}

function mirrorLine(plies: readonly Ply[], odd: readonly (readonly [number, number])[]): WorkingStep {
  const pairs = Math.floor(plies.length / 2)
  return {
    symbol: 'n_odd',
    label: 'pairs of plies that are not mirrored',
    formula: 'compare ply i with ply n + 1 - i',
    numbers:
      odd.length === 0
        ? `${pairs} pairs, all alike`
        : odd.map(([low, high]) => `${low} and ${high}`).join(', '),
    value: odd.length,
    unit: '1',
    sourceId: 'kaw-mechanics',
  }
}

function notMirrored(plies: readonly Ply[], odd: readonly (readonly [number, number])[]): Finding {
  const [low, high] = odd[0]!
  const more = odd.length > 1 ? `, and ${odd.length - 1} more` : ''
  return {
    code: 'stack-not-mirrored',
    severity: 'note',
    text:
      `The stack is not mirrored: ply ${low} (${plyName(plies[low - 1]!)}) against ply ${high} ` +
      `(${plyName(plies[high - 1]!)})${more}. Such a laminate warps as it cools. ` +
      'In a balanced weave 0 and 90, or +45 and -45, count as alike.',
    place: `ply ${low} and ply ${high}`,
    cure: 'Check the stack against the ply book. A patch copies its parent all the same.',
    figures: { notMirroredPlies: odd.flat() },
  }
}

function plyName(ply: Ply): string {
  return `${ply.material.name} at ${figure(ply.directionDeg)}°`
}

function sameDirection(a: Ply, b: Ply): boolean {
  const apart = Math.abs(a.directionDeg - b.directionDeg) % 180
  return Math.min(apart, 180 - apart) < sameDirectionDeg
}

function sameMaterial(a: PlyMaterial, b: PlyMaterial): boolean {
  if (a === b) return true
  return a.name === b.name && Math.abs(curedPly(a).thicknessMm - curedPly(b).thicknessMm) < 1e-9
}
