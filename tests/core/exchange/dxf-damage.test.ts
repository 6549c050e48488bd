import { describe, expect, test } from 'vitest'
import { arc, circle, codes, dxf, entity, line, polyline, read, square } from './draw-dxf'

const whole = dxf([polyline([...square(100)])])

/** Line on which the text stands, from 1. */
function lineOf(text: string, wanted: string): number {
  return text.split('\n').indexOf(wanted) + 1
}

describe('damaged drawings are refused with the line', () => {
  test.each(['1e400', '-1e999', 'NaN', 'inf', '12,5', '0x10', '', '1.2.3', 'abc'])(
    'coordinate "%s"',
    (value) => {
      const text = dxf([line([0, 0], [7777, 0])]).replace('7777', value)
      const reading = read(text)
      expect(reading).toMatchObject({ verdict: 'refuse', loops: [], findings: [{ code: 'dxf-number' }] })
      expect(reading.findings[0]!.place).toBe(`line ${lineOf(dxf([line([0, 0], [7777, 0])]), '7777')}`)
      expect(reading.findings[0]!.text).toContain(`"${value}"`)
    },
  )

  test('a group code that is none', () => {
    const reading = read(whole.replace('\n90\n', '\nninety\n'))
    expect(reading).toMatchObject({
      verdict: 'refuse',
      findings: [{ code: 'dxf-code', place: `line ${lineOf(whole, '90')}` }],
    })
    expect(reading.findings[0]!.text).toContain('"ninety"')
  })

  test('a line lost, so that codes and values change places', () => {
    const lines = whole.split('\n')
    lines.splice(lineOf(whole, 'LWPOLYLINE') + 1, 1)
    expect(read(lines.join('\n')).verdict).toBe('refuse')
  })

  test('a missing coordinate', () => {
    const lame = line([0, 0], [10, 0]).filter(([code]) => code !== 21)
    expect(read(dxf([lame]))).toMatchObject({
      findings: [{ code: 'dxf-value-missing', figures: { code: 21 } }],
    })
  })

  test('wherever it breaks off before its last section is whole', () => {
    const end = whole.indexOf('ENDSEC', whole.indexOf('ENTITIES'))
    for (let length = whole.indexOf('SECTION') + 8; length < end; length++) {
      const reading = read(whole.slice(0, length))
      expect(reading.verdict).toBe('refuse')
      expect(reading.loops).toEqual([])
    }
    const reading = read(whole.slice(0, whole.indexOf('20\n100')))
    expect(reading.findings[0]).toMatchObject({ code: 'file-broken-off' })
    expect(reading.findings[0]!.place).toMatch(/^line \d+$/)
  })

  test('only the mark at the end is missing: read, and told', () => {
    const reading = read(whole.replace('0\nEOF\n', ''))
    expect(reading).toMatchObject({ verdict: 'accept-with-notice', findings: [{ code: 'no-end-mark' }] })
  })

  test('something else than a section', () => {
    expect(codes(read(`999\nremark\n${whole}`))).toEqual([])
    expect(codes(read('0\nSECTION\n0\nEOF\n'))).toEqual(['dxf-order'])
    expect(codes(read('0\nSECTION\n2\nENTITIES\n8\nCUT\n0\nENDSEC\n0\nEOF\n'))).toEqual(['dxf-order'])
    expect(codes(read('0\nSECTION\n2\nHEADER\n0\nENDSEC\n0\nLINE\n0\nEOF\n'))).toEqual(['dxf-order'])
  })

  test.each([
    ['no entities', dxf([])],
    ['lettering only', dxf([entity('TEXT')])],
    ['no section of entities', '0\nSECTION\n2\nHEADER\n0\nENDSEC\n0\nEOF\n'],
    ['a polyline without vertices', dxf([polyline([])])],
  ])('%s', (_, text) => {
    expect(read(text).verdict).toBe('refuse')
    expect(codes(read(text))).toContain('nothing-drawn')
  })

  test.each([
    ['radius 0', circle([0, 0], 0), 'radius'],
    ['radius below 0', arc([0, 0], -5, 0, 90), 'radius'],
    [
      'a bulge beyond all arcs',
      polyline([
        [0, 0, 1e9],
        [10, 0],
        [10, 10],
      ]),
      'bulge',
    ],
    ['a circle as large as a town', circle([0, 0], 1e9), 'too-far'],
    ['a place off the map', line([1e300, 0], [0, 0]), 'too-far'],
  ])('%s', (_, pairs, code) => {
    const reading = read(dxf([pairs]))
    expect(reading).toMatchObject({ verdict: 'refuse', findings: [{ code }] })
    expect(reading.findings[0]!.place).toMatch(/^line \d+$/)
  })

  test('one line, one point, nothing but a closed line there and back', () => {
    expect(codes(read(dxf([line([0, 0], [10, 0])])))).toEqual(['outline-open'])
    expect(codes(read(dxf([line([5, 5], [5, 5])])))).toContain('nothing-drawn')
    expect(
      codes(
        read(
          dxf([
            polyline([
              [0, 0],
              [10, 0],
            ]),
          ]),
        ),
      ),
    ).toEqual(['too-few-points'])
  })
})

describe('large drawings stay quick', () => {
  test.each([
    ['20,000 loose lines in one ring, in mixed order', () => dxf(ring(20_000))],
    [
      '15,000 lines apart from one another',
      () => dxf(Array.from({ length: 15_000 }, (_, index) => line([index, 0], [index, 0.7]))),
    ],
    [
      '90,000 vertices',
      () =>
        dxf([polyline(Array.from({ length: 90_000 }, (_, index) => [index % 300, index / 300] as const))]),
    ],
    [
      '8 MB of vertices',
      () => dxf([polyline(Array.from({ length: 400_000 }, (_, index) => [index % 300, index % 7] as const))]),
    ],
    [
      'a scribble of 15,000 points',
      () =>
        dxf([
          polyline(
            Array.from(
              { length: 15_000 },
              (_, index) => [(index * 7919) % 1009, (index * 104_729) % 997] as const,
            ),
          ),
        ]),
    ],
    [
      '200 points in a tangle',
      () =>
        dxf([
          polyline(
            Array.from(
              { length: 200 },
              (_, index) => [(index * 7919) % 1009, (index * 104_729) % 997] as const,
            ),
          ),
        ]),
    ],
  ])(
    '%s',
    (_, make) => {
      const text = make()
      const begun = performance.now()
      const { verdict } = read(text)
      expect(performance.now() - begun).toBeLessThan(10_000)
      expect(['accept', 'ask', 'refuse']).toContain(verdict)
    },
    30_000,
  )
})

function ring(count: number) {
  const corner = (index: number) => {
    const angle = (2 * Math.PI * index) / count
    return [1000 * Math.cos(angle), 1000 * Math.sin(angle)] as const
  }
  return Array.from({ length: count }, (_, index) => {
    const place = (index * 7919) % count
    return index % 2 === 0 ? line(corner(place), corner(place + 1)) : line(corner(place + 1), corner(place))
  })
}
