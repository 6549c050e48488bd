import { expect, test } from 'vitest'
import { joinedPaths } from '#lib/core/drawing/index'
import type { PathItem } from '#lib/core/drawing/types'

const line = (x: number, changes: Partial<PathItem> = {}): PathItem => ({
  kind: 'path',
  lines: [
    [
      [x, 0],
      [x, 5],
    ],
  ],
  closed: false,
  style: 'thin',
  role: 'ink',
  fill: 'none',
  ...changes,
})

test('neighbours of one look become one, in their order; another look begins a new one', () => {
  const items = [line(1), line(2), line(3, { role: 'due' }), line(4), line(5)]
  const joined = joinedPaths(items) as readonly PathItem[]
  expect(joined.map(({ role, lines }) => [role, lines.map(([start]) => start?.[0])])).toEqual([
    ['ink', [1, 2]],
    ['due', [3]],
    ['ink', [4, 5]],
  ])
})

test('filled shapes stay apart: where two overlap, one shape of both would have a hole', () => {
  const filled = [line(1, { fill: 'solid', closed: true }), line(2, { fill: 'solid', closed: true })]
  expect(joinedPaths(filled)).toEqual(filled)
})
