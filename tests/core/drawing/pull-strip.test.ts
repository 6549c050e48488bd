import { describe, expect, test } from 'vitest'
import {
  type DisplayList,
  type PathItem,
  type PullFate,
  type PullStrokes,
  primitives,
  pullFates,
  pullStrip,
} from '#lib/core/drawing/index'

const pull = (went: PullFate, cleared = true) => ({ day: '2026-04-01', went, cleared })

function strokes(fates: readonly PullFate[], more: Partial<PullStrokes> = {}): PullStrokes {
  return { pulls: fates.map((went) => pull(went)), coats: [], patches: [], seasons: [], ...more }
}

function pullsOf(list: DisplayList): readonly PathItem[] {
  return list.items.flatMap((item) => (item.kind === 'path' && item.style.startsWith('stroke') ? [item] : []))
}

describe('the pull strip', () => {
  test('has one stroke a pull, in their order', () => {
    const list = pullStrip(strokes(['usual', 'harder', 'usual', 'stuck', 'forced']), {
      kind: 'large',
      widthPx: 1300,
    })
    const x = pullsOf(list).map((item) => item.lines[0]![0]![0])
    expect(x).toHaveLength(5)
    expect(x).toEqual([...x].sort((a, b) => a - b))
  })

  test('the harder the taller, and the four differ in shape or width when colour is gone', () => {
    for (const kind of ['large', 'small'] as const) {
      const items = pullsOf(pullStrip(strokes(pullFates), { kind, widthPx: 400 }))
      const heights = items.map(({ lines }) => lines[0]![0]![1] - lines[0]![1]![1])
      expect(heights).toEqual([...heights].sort((a, b) => a - b))
      const looks = items.map(({ style, lines }) => `${style} ${lines.length}`)
      expect(new Set(looks).size).toBe(4)
    }
  })

  test('a coat is a triangle between its pulls, several at once are one', () => {
    const list = pullStrip(
      strokes(['usual', 'usual'], { coats: [0, 1, 1].map((afterPull) => ({ afterPull })) }),
      {
        kind: 'large',
        widthPx: 800,
      },
    )
    const triangles = list.items.flatMap((item) =>
      item.kind === 'path' && item.role === 'act' ? [item] : [],
    )
    const [first, second] = pullsOf(list).map((item) => item.lines[0]![0]![0])
    expect(triangles).toHaveLength(2)
    expect(triangles[0]!.lines[0]![0]![0]).toBeLessThan(first!)
    expect(triangles[1]!.lines[0]![0]![0]).toBeGreaterThan(first!)
    expect(triangles[1]!.lines[0]![0]![0]).toBeLessThan(second!)
  })

  test('patches that lie in the mould together stand above each other', () => {
    const patches = [
      { fromPull: 2, toPull: 5, label: 'Patch 1' },
      { fromPull: 4, toPull: null, label: 'Patch 2' },
      { fromPull: 6, toPull: null, label: 'Patch 3' },
    ]
    const list = pullStrip(strokes(Array<PullFate>(8).fill('usual'), { patches }), {
      kind: 'large',
      widthPx: 800,
    })
    const tops = list.items.flatMap((item) => (item.kind === 'hatch' ? [item.loops[0]![0]![1]] : []))
    expect(tops[1]).toBeLessThan(tops[0]!)
    expect(tops[2]).toBe(tops[0])
  })

  test('what no longer fits is left out from the old end, and is said', () => {
    const list = pullStrip(strokes(Array<PullFate>(400).fill('usual')), { kind: 'small', widthPx: 220 })
    const shown = pullsOf(list).length
    expect(shown).toBeLessThan(100)
    expect(list.description).toContain(`drawn are the last ${shown}`)
    const x = pullsOf(list).map((item) => item.lines[0]![0]![0])
    expect((x[1]! - x[0]!) * (96 / 25.4)).toBeGreaterThanOrEqual(2.4 - 1e-9)
    expect(Math.max(...x)).toBeLessThan(list.widthMm)
  })

  test('small has no words; large names seasons and patches', () => {
    const more = {
      seasons: [{ beforePull: 1, label: '2026' }],
      patches: [{ fromPull: 1, toPull: 2, label: 'Patch 3' }],
    }
    const words = (kind: 'large' | 'small') =>
      primitives(pullStrip(strokes(['usual', 'usual'], more), { kind, widthPx: 300 }).items).flatMap(
        (item) => (item.kind === 'text' ? [item.text] : []),
      )
    expect(words('small')).toEqual([])
    expect(words('large').sort()).toEqual(['2026', 'Patch 3'])
  })

  test('a season that begins at the end of a full strip is named left of its mark', () => {
    const fates = Array.from({ length: 60 }, () => 'usual' as const)
    const list = pullStrip(strokes(fates, { seasons: [{ beforePull: 60, label: '2026/27' }] }), {
      kind: 'large',
      widthPx: 356,
    })
    const [label] = list.items.flatMap((item) => (item.kind === 'text' ? [item] : []))
    expect(label).toMatchObject({ text: '2026/27', anchor: 'end' })
    expect(label!.at[0]).toBeLessThan(list.widthMm)
  })

  test('a pull that was not cleared is marked, and told to who can not see it', () => {
    const list = pullStrip(
      { ...strokes([]), pulls: [pull('usual'), pull('forced', false)] },
      { kind: 'large', widthPx: 300 },
    )
    expect(list.items.filter((item) => item.kind === 'circle')).toHaveLength(1)
    expect(list.description).toBe('1 usual, 1 forced; pull 2 forced; 1 not cleared.')
  })

  test('a mould without pulls has an empty strip that says so', () => {
    const list = pullStrip(strokes([]), { kind: 'small', widthPx: 220 })
    expect(pullsOf(list)).toEqual([])
    expect(list.description).toBe('No pull yet.')
  })
})
