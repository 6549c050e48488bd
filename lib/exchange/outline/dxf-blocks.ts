import type { Point } from '#lib/core/geometry/index'
import { type DxfInsert, insertOf } from './dxf-insert'
import { keyOf } from './dxf-layers'
import type { DxfEntity } from './dxf-sections'
import { type Treatment, treatment } from './dxf-treatment'
import { flagsOf, layerOf, nameOr, realOr } from './dxf-values'

/** One entity with what belongs to it. */
export interface DxfItem {
  readonly entity: DxfEntity
  readonly treatment: Exclude<Treatment, 'nothing'>
  /** As the entity itself says. */
  readonly layer: string
  /** The VERTEX entities of a POLYLINE. */
  readonly followers: readonly DxfEntity[]
  /** Null for all but an INSERT that is read. */
  readonly insert: DxfInsert | null
}

export interface DxfBlock {
  readonly name: string
  readonly base: Point
  readonly baseZ: number
  /** What it holds lies in another file. */
  readonly isElsewhere: boolean
  /** What it holds, sorted when it is first asked for: blocks that nothing inserts are never looked into. */
  readonly items: () => readonly DxfItem[]
}

/** Bits of group 70 of a BLOCK: a reference to another file, laid over or not. */
const elsewhereFlags = 4 | 8

/** Blocks by name as compared; of two that are named alike the first, as drawing programs keep it. */
export function blocksOf(records: readonly DxfEntity[]): ReadonlyMap<string, DxfBlock> {
  const blocks = new Map<string, DxfBlock>()
  for (let index = 0; index < records.length; index++) {
    const begin = records[index]!
    if (begin.type !== 'BLOCK') continue
    const inside: DxfEntity[] = []
    while (index + 1 < records.length && !isEdge(records[index + 1]!)) inside.push(records[++index]!)
    const key = keyOf(nameOr(begin, 2, ''))
    if (!blocks.has(key)) blocks.set(key, blockOf(begin, inside))
  }
  return blocks
}

function isEdge({ type }: DxfEntity): boolean {
  return type === 'BLOCK' || type === 'ENDBLK'
}

function blockOf(begin: DxfEntity, inside: readonly DxfEntity[]): DxfBlock {
  let items: readonly DxfItem[] | null = null
  return {
    name: nameOr(begin, 2, ''),
    base: [realOr(begin, 10, 0), realOr(begin, 20, 0)],
    baseZ: realOr(begin, 30, 0),
    isElsewhere: (flagsOf(begin) & elsewhereFlags) !== 0,
    items: () => {
      items ??= itemsOf(inside)
      return items
    },
  }
}

/** Entities with what follows them, without those that draw nothing. */
export function itemsOf(entities: readonly DxfEntity[]): readonly DxfItem[] {
  return entities.flatMap((entity, index): readonly DxfItem[] => {
    const treated = treatment(entity)
    if (treated === 'nothing') return []
    const isInsert = entity.type === 'INSERT' && treated === 'read'
    return [
      {
        entity,
        treatment: treated,
        layer: layerOf(entity),
        followers: verticesAfter(entities, index),
        insert: isInsert ? insertOf(entity) : null,
      },
    ]
  })
}

function verticesAfter(entities: readonly DxfEntity[], index: number): readonly DxfEntity[] {
  if (entities[index]!.type !== 'POLYLINE') return []
  let end = index + 1
  while (entities[end]?.type === 'VERTEX') end++
  return entities.slice(index + 1, end)
}
