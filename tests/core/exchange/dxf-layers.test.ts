import { describe, expect, test } from 'vitest'
import { readLoops, readOutline } from '#lib/exchange/outline/index'
import { block, insert, layerTable } from './draw-blocks'
import { circle, codes, dxf, entity, polyline, read, square } from './draw-dxf'

const tables = layerTable({
  CUT: { flags: 0, colour: 7 },
  OFF: { flags: 0, colour: -3 },
  ICE: { flags: 1, colour: 3 },
  LOCKED: { flags: 4, colour: 3 },
})
const frame = polyline(square(100))
const at = (layer: string) => circle([50, 50], 20, layer)

describe('layers', () => {
  test('off and frozen ones are left out and told; all are listed with their pieces', () => {
    const reading = read(
      dxf([frame, at('OFF'), at('Ice'), circle([9, 9], 2, 'ICE'), entity('TEXT')], 4, { tables }),
    )
    expect(reading).toMatchObject({
      verdict: 'accept-with-notice',
      loops: [{ areaMm2: 10_000 }],
      layers: [
        { name: 'CUT', pieces: 1, state: 'read' },
        { name: 'OFF', pieces: 1, state: 'off' },
        { name: 'Ice', pieces: 2, state: 'frozen' },
      ],
    })
    expect(reading.findings[1]).toMatchObject({ code: 'layers-left-out', figures: { count: 3 } })
    expect(reading.findings[1]!.text).toContain('1 on layer OFF (off), 2 on layer Ice (frozen)')
  })

  test('a locked one is drawn as any other', () => {
    const { loops } = readLoops({
      name: 'a.dxf',
      text: dxf([frame, at('LOCKED')], 4, { tables }),
      unit: null,
    })
    expect(loops).toHaveLength(2)
  })

  test('what could not be read does not matter on a layer that is not shown', () => {
    const hidden = entity('HATCH').map((pair) => (pair[0] === 8 ? ([8, 'ICE'] as const) : pair))
    expect(codes(read(dxf([frame, hidden], 4, { tables })))).toEqual(['layers-left-out'])
  })

  test('chosen ones alone are read, also a frozen one', () => {
    const text = dxf([frame, at('ICE'), circle([300, 0], 5, 'CENTRE')], 4, { tables })
    const ice = readOutline({ name: 'a.dxf', text, unit: null, layers: ['ice'] })
    expect(ice.loops).toHaveLength(1)
    expect(ice.loops[0]!.boundsMm).toEqual([30, 30, 70, 70])
    expect(ice.layers).toEqual([
      { name: 'CUT', pieces: 1, state: 'not-chosen' },
      { name: 'ICE', pieces: 1, state: 'read' },
      { name: 'CENTRE', pieces: 1, state: 'not-chosen' },
    ])
    expect(codes(ice)).toEqual(['layers-left-out'])
  })

  test('one chosen that nothing lies on is refused with those that there are', () => {
    const reading = readOutline({ name: 'a.dxf', text: dxf([frame]), unit: null, layers: ['CUTT'] })
    expect(reading.verdict).toBe('refuse')
    expect(codes(reading)).toContain('layer-missing')
    expect(reading.findings.find(({ code }) => code === 'layer-missing')!.text).toContain('It has CUT (1)')
  })

  test('layers of other files are not looked at', () => {
    const reading = readOutline({ name: 'a', text: '0;0\n9;0\n9;9\n', unit: 'mm', layers: ['CUT'] })
    expect(reading.layers).toBeUndefined()
    expect(reading.loops).toHaveLength(1)
  })
})

describe('layers of blocks', () => {
  const blocks = block('B', [circle([0, 0], 10, '0'), circle([0, 0], 3, 'CUT')])
  const readOn = (layer: string) =>
    readLoops({
      name: 'a.dxf',
      text: dxf([polyline(square(100, [-50, -50])), insert('B', [0, 0], { layer })], 4, { tables, blocks }),
      unit: null,
    })

  test('layer 0 in a block is the layer of its INSERT', () => {
    expect(readOn('PART').layers).toEqual([
      { name: 'CUT', pieces: 2, state: 'read' },
      { name: 'PART', pieces: 1, state: 'read' },
    ])
  })

  test('an INSERT whose layer is off keeps what lies on other layers', () => {
    expect(readOn('OFF').loops.map(({ boundsMm }) => boundsMm[2])).toEqual([50, 3])
  })

  test('a frozen INSERT hides all that it holds', () => {
    const reading = readOn('ICE')
    expect(reading.loops).toHaveLength(1)
    expect(reading.layers).toEqual([
      { name: 'CUT', pieces: 1, state: 'read' },
      { name: 'ICE', pieces: 1, state: 'frozen' },
      { name: 'CUT', pieces: 1, state: 'frozen' },
    ])
  })
})

test('what is marked as not shown is left out and told', () => {
  const reading = read(dxf([frame, [...at('CUT'), [60, 1]]]))
  expect(reading).toMatchObject({ verdict: 'accept-with-notice', findings: [{ code: 'invisible-left-out' }] })
  expect(reading.loops).toHaveLength(1)
})
