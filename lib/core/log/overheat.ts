import { shortDate } from '../dates'
import type { Hottest, MouldCounts } from './types'

/**
 * Why a mould is held for heat: hotter than one of its three limits since the whole face was last found sound. With a
 * part in it the limit in use counts, standing free the free-standing one; bonded bushes and backing always. A limit
 * that nobody knows holds nothing.
 */
export function overheatReasons({ heat, heatLimits }: Pick<MouldCounts, 'heat' | 'heatLimits'>): string[] {
  return [
    reason(heat.hottestWithPart, 'with a part in it', [
      ['in use', heatLimits.inUseC],
      ['of bonded bushes', heatLimits.bondedC],
    ]),
    reason(heat.hottestFree, 'standing free', [
      ['standing free', heatLimits.freeC],
      ['of bonded bushes', heatLimits.bondedC],
    ]),
  ].filter((text): text is string => text !== null)
}

function reason(
  hottest: Hottest | null,
  how: string,
  limits: readonly (readonly [name: string, limitC: number | null])[],
): string | null {
  if (!hottest) return null
  const over = limits.filter(([, limitC]) => limitC !== null && hottest.toC > limitC)
  if (over.length === 0) return null
  const told = over.map(([name, limitC]) => `${name} ${limitC} °C`).join(', ')
  return `overheated: ${hottest.toC} °C ${how} on ${shortDate(hottest.doneOn, '')}; limit ${told}`
}
