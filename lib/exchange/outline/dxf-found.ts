import type { DxfItem } from './dxf-blocks'
import { keyOf, type LayerState } from './dxf-layers'
import type { DxfEntity } from './dxf-sections'
import type { LeftOut } from './dxf-unread'
import type { LayerFound } from './types'

/** What a drawing holds, counted on the way through it. */
export interface Found {
  readonly layers: () => readonly LayerFound[]
  readonly leftOut: LeftOut
  /** Whether a piece on that layer, in that state, is to be drawn; counts it either way. */
  readonly draws: (item: DxfItem, layer: string, state: LayerState) => boolean
}

export function counter(): Found {
  const layers = new Map<string, { name: string; pieces: number; state: LayerState }>()
  const leftOut = {
    unread: new Set<DxfEntity>(),
    lettering: new Set<DxfEntity>(),
    sheet: new Set<DxfEntity>(),
    invisible: new Set<DxfEntity>(),
  }
  const count = (name: string, state: LayerState) => {
    // Blocks in a frozen INSERT may hold what is drawn elsewhere on the same layer: these are told apart.
    const key = `${keyOf(name)}\n${state}`
    const known = layers.get(key)
    if (known === undefined) layers.set(key, { name, pieces: 1, state })
    else known.pieces += 1
  }
  return {
    layers: () => [...layers.values()],
    leftOut,
    draws({ entity, treatment }, layer, state) {
      if (treatment === 'sheet' || treatment === 'invisible') {
        leftOut[treatment].add(entity)
        return false
      }
      if (treatment !== 'lettering') count(layer, state)
      if (state !== 'read') return false
      if (treatment !== 'read') leftOut[treatment].add(entity)
      return treatment === 'read'
    },
  }
}
