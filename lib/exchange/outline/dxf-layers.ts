import type { Finding } from '#lib/core/result'
import type { DxfEntity } from './dxf-sections'
import { flagsOf, nameOr, realOr } from './dxf-values'
import { note, stop } from './finding'
import { mostOfAKind } from './limits'
import type { LayerFound } from './types'

/** What becomes of what lies on a layer. */
export type LayerState = LayerFound['state']

/** Bit of group 70 of a LAYER. */
const frozenFlag = 1

/** How drawings compare names: without regard to case. */
export function keyOf(name: string): string {
  return name.toUpperCase()
}

/** The state of a layer by its name. Where layers are chosen, the choice holds, also for those that are off or frozen. */
export function layerStates(
  tables: readonly DxfEntity[],
  chosen: readonly string[] | null,
): (layer: string) => LayerState {
  if (chosen !== null) {
    const keys = new Set(chosen.map(keyOf))
    return (layer) => (keys.has(keyOf(layer)) ? 'read' : 'not-chosen')
  }
  const hidden = new Map<string, LayerState>()
  for (const record of tables) {
    if (record.type !== 'LAYER') continue
    const frozen = (flagsOf(record) & frozenFlag) !== 0
    // A negative colour is how a drawing says that a layer is off.
    if (frozen || realOr(record, 62, 7) < 0) {
      hidden.set(keyOf(nameOr(record, 2, '')), frozen ? 'frozen' : 'off')
    }
  }
  return (layer) => hidden.get(keyOf(layer)) ?? 'read'
}

/** What was left out by its layer, and layers chosen that nothing lies on. */
export function layerFindings(
  found: readonly LayerFound[],
  chosen: readonly string[] | null,
): readonly Finding[] {
  const keys = new Set(found.map(({ name }) => keyOf(name)))
  const missing = (chosen ?? []).filter((name) => !keys.has(keyOf(name)))
  const left = found.filter(({ state }) => state !== 'read')
  return [
    ...(missing.length === 0 ? [] : [notThere(missing, found)]),
    ...(left.length === 0 ? [] : [onOthers(left)]),
  ]
}

function notThere(missing: readonly string[], found: readonly LayerFound[]): Finding {
  const there = found.length === 0 ? 'It has none with anything on it.' : `It has ${names(found)}.`
  return stop(
    'layer-missing',
    `Nothing is drawn on layer ${some(missing.map(shortName))}. ${there}`,
    null,
    'Choose among the layers of the drawing.',
    { count: missing.length },
  )
}

const stateNames = { off: 'off', frozen: 'frozen', 'not-chosen': 'not chosen', read: 'read' } as const

function onOthers(left: readonly LayerFound[]): Finding {
  const count = left.reduce((sum, { pieces }) => sum + pieces, 0)
  const named = left.map(
    ({ name, pieces, state }) => `${pieces} on layer ${shortName(name)} (${stateNames[state]})`,
  )
  return note('layers-left-out', `Left out by their layer: ${some(named)}.`, null, { count })
}

function names(found: readonly LayerFound[]): string {
  return some(found.map(({ name, pieces }) => `${shortName(name)} (${pieces})`))
}

function some(words: readonly string[]): string {
  const more = words.length - mostOfAKind
  return `${words.slice(0, mostOfAKind).join(', ')}${more > 0 ? ` and ${more} more` : ''}`
}

function shortName(name: string): string {
  return name.slice(0, 60)
}
