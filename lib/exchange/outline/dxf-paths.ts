import type { Finding } from '#lib/core/result'
import { blocksOf, type DxfBlock, type DxfItem, itemsOf } from './dxf-blocks'
import { counter, type Found } from './dxf-found'
import { copiesOf, type DxfInsert } from './dxf-insert'
import { keyOf, layerStates } from './dxf-layers'
import { assertBlocksFit } from './dxf-nesting'
import { placedPath } from './dxf-place'
import { inUnit, type Placing, placedIn } from './dxf-placing'
import { tooManyPoints } from './dxf-room'
import type { DxfContents, DxfEntity } from './dxf-sections'
import type { DxfShape } from './dxf-shape'
import { closedApart, givenPoints, shapeOf, vertexCount } from './dxf-shapes'
import { lineName, stop } from './finding'
import { mostOfAKind, mostVertices } from './limits'
import type { Path } from './path'

export interface DxfPaths extends Pick<Found, 'leftOut'> {
  readonly paths: readonly Path[]
  readonly layers: ReturnType<Found['layers']>
  readonly findings: readonly Finding[]
}

/** Where a block is looked into: how it lies, on which layer its INSERT stands, and whether that one is frozen. */
interface Within {
  readonly placing: Placing
  readonly layer: string | null
  readonly frozen: boolean
}

/**
 * All that the model draws as paths in mm, blocks placed. What a block holds on layer 0 lies on the layer of its INSERT;
 * a frozen INSERT hides all that it holds, one whose layer is off only what lies on that layer. Throws Refused on values
 * that can't be used.
 */
export function dxfPaths(
  contents: Pick<DxfContents, 'tables' | 'blocks' | 'entities'>,
  mmPerUnit: number,
  chosenLayers: readonly string[] | null,
): DxfPaths {
  const blocks = blocksOf(contents.blocks)
  const stateOf = layerStates(contents.tables, chosenLayers)
  const found = counter()
  const shapes = new Map<DxfEntity, DxfShape>()
  const findings: Finding[] = []
  const missing = new Map<number, Finding>()
  const paths: Path[] = []
  let vertices = 0

  const model = itemsOf(contents.entities)
  assertBlocksFit(model, blocks)
  walk(model, { placing: inUnit(mmPerUnit), layer: null, frozen: false })
  return {
    paths,
    layers: found.layers(),
    leftOut: found.leftOut,
    findings: [...[...missing.values()].slice(0, mostOfAKind), ...findings],
  }

  function walk(items: readonly DxfItem[], within: Within): void {
    for (const item of items) {
      const layer = item.layer === '0' && within.layer !== null ? within.layer : item.layer
      const state = within.frozen ? 'frozen' : stateOf(layer)
      if (item.insert !== null) {
        insert(item.insert, { placing: within.placing, layer, frozen: state === 'frozen' }, state === 'read')
      } else if (found.draws(item, layer, state)) draw(item, layer, within.placing)
    }
  }

  function insert(placed: DxfInsert, within: Within, isShown: boolean): void {
    const block = blocks.get(keyOf(placed.block))
    if (block === undefined || block.isElsewhere) {
      if (isShown) missing.set(placed.line, notThere(placed, block))
      return
    }
    for (const copy of copiesOf(placed, block)) {
      walk(block.items(), { ...within, placing: placedIn(within.placing, copy) })
    }
  }

  function draw(item: DxfItem, layer: string, placing: Placing): void {
    const known = shapes.get(item.entity)
    const shape = known ?? shapeOf(item)
    const path = placedPath(shape, layer, placing, mostVertices - vertices)
    if (known === undefined) {
      shapes.set(item.entity, shape)
      findings.push(...vertexCount(item.entity, shape), ...closedApart(shape, path))
    }
    if (path.vertices.length > 0) paths.push(path)
    vertices += Math.max(path.vertices.length, givenPoints(shape))
    if (vertices > mostVertices) throw tooManyPoints()
  }
}

function notThere({ block, line }: DxfInsert, found: DxfBlock | undefined): Finding {
  const name = block.slice(0, 60)
  if (found === undefined) {
    return stop(
      'block-missing',
      `Block "${name}" is inserted here, but the file doesn't hold it.`,
      lineName(line),
      'The file is damaged or was shortened: save it again as DXF.',
      { line },
    )
  }
  return stop(
    'block-elsewhere',
    `Block "${name}" lies in another file (an external reference), which is not read.`,
    lineName(line),
    'Bind the reference into the drawing, or delete it, and save the DXF again.',
    { line },
  )
}
