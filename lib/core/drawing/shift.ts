import type { Box, Item, Shape, Xy } from './types'

/** The same items moved by so many drawing mm. */
export function shiftItems(items: readonly Item[], by: Xy): readonly Item[] {
  return items.map((item) =>
    item.kind === 'group'
      ? {
          ...item,
          hit: shiftBox(item.hit, by),
          items: item.items.map((shape) => shiftShape(shape, by)),
        }
      : shiftShape(item, by),
  )
}

export function shiftBox(box: Box, [dx, dy]: Xy): Box {
  return { left: box.left + dx, top: box.top + dy, right: box.right + dx, bottom: box.bottom + dy }
}

function shiftShape(shape: Shape, by: Xy): Shape {
  const moved = ([x, y]: Xy): Xy => [x + by[0], y + by[1]]
  switch (shape.kind) {
    case 'path':
      return { ...shape, lines: shape.lines.map((line) => line.map(moved)) }
    case 'circle':
      return { ...shape, centre: moved(shape.centre) }
    case 'text':
    case 'centre-mark':
      return { ...shape, at: moved(shape.at) }
    case 'hatch':
      return {
        ...shape,
        loops: shape.loops.map((loop) => loop.map(moved)),
        segments: shape.segments.map(([a, b]) => [moved(a), moved(b)] as const),
      }
    case 'arrow':
    case 'dimension':
      return { ...shape, from: moved(shape.from), to: moved(shape.to) }
  }
}
