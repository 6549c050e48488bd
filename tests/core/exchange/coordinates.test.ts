import { describe, expect, test } from 'vitest'
import type { ChosenUnit } from '#lib/exchange/outline/index'
import { codes, dxf, polyline, read } from './draw-dxf'

const table = (text: string, unit: ChosenUnit | null = 'mm') => read(text, unit, 'pasted')

describe('columns', () => {
  test.each([
    ['comma', '0,0\n100,0\n100,50.5\n0,50.5'],
    ['comma and blank', '0, 0\n100, 0\n100, 50.5\n0, 50.5'],
    ['semicolon', '0;0\n100;0\n100;50.5\n0;50.5'],
    ['semicolon, decimal comma', '0;0\n100;0\n100;50,5\n0;50,5'],
    ['tab', '0\t0\n100\t0\n100\t50.5\n0\t50.5'],
    ['tab, decimal comma', '0\t0\n100\t0\n100\t50,5\n0\t50,5'],
    ['blanks', '0 0\n100   0\n  100 50.5\n0 50.5  '],
    ['blanks, decimal comma', '0 0\n100 0\n100 50,5\n0 50,5'],
    ['quoted cells with a decimal comma', '"0","0"\n"100","0"\n"100","50,5"\n"0","50,5"'],
    ['a mark at the beginning, CRLF, Ctrl-Z', '\ufeff0,0\r\n100,0\r\n100,50.5\r\n0,50.5\r\n\x1a'],
    ['old line ends', '0,0\r100,0\r100,50.5\r0,50.5'],
    ['comments and blank lines round it', '# floor B5\n\n0,0 # corner\n100,0\n# top\n100,50.5\n0,50.5\n\n'],
    ['a delimiter at the end of each line', '0,0,\n100,0,\n100,50.5,\n0,50.5,'],
    ['a typographic minus and an exponent', '0,\u22120\n1e2,0\n+1.0E+02,50.5\n0,50.5'],
    ['clockwise', '0,0\n0,50.5\n100,50.5\n100,0'],
  ])('%s', (_, text) => {
    const reading = table(text)
    expect(reading.findings).toEqual([])
    expect(reading.verdict).toBe('accept')
    expect(reading.loops[0]).toMatchObject({
      role: 'outer',
      areaMm2: 5050,
      perimeterMm: 301,
      boundsMm: [0, 0, 100, 50.5],
    })
  })

  test('the decimal comma of other cells settles what could be thousands', () => {
    const corners = (text: string) => table(text).loops[0]?.boundsMm
    expect(corners('0;0\n412,350;0\n412,350;18,7\n0;18,7')).toEqual([0, 0, 412.35, 18.7])
    expect(corners('0;0\n1,412;0\n1,412;18.7\n0;18.7')).toEqual([0, 0, 1412, 18.7])
  })

  test('what can be read in two ways is asked, line by line', () => {
    const reading = table('0;0\n1,412;0\n1,412;20\n0;20')
    expect(reading).toMatchObject({
      verdict: 'ask',
      loops: [],
      findings: [{ code: 'number-unclear', place: 'line 2' }, { place: 'line 3' }],
    })
    const points = table('0;0\n1.412;0\n1.412;20,5\n0;20,5')
    expect(points).toMatchObject({
      verdict: 'ask',
      findings: [{ code: 'number-unclear', place: 'line 2' }, { place: 'line 3' }],
    })
  })
})

describe('header', () => {
  const body = '\n0,0\n10,0\n10,4\n0,4'
  test.each([
    ['u [mm],v [mm]', 'mm', [10, 4]],
    ['x (in),y (in)', 'in', [254, 101.6]],
    ['X cm,Y cm', 'cm', [100, 40]],
    ['u_mm,v_mm', 'mm', [10, 4]],
    ['uMm,vMm', 'mm', [10, 4]],
    ['"x [""]","y [""]"', 'in', [254, 101.6]],
    ['x (ft),y (ft)', 'ft', [3048, 1219.2]],
  ] as const)('%s', (header, unit, [u, v]) => {
    const reading = table(header + body, null)
    expect(reading).toMatchObject({ verdict: 'accept', unit, findings: [] })
    expect(reading.loops[0]!.boundsMm[2]).toBeCloseTo(u, 9)
    expect(reading.loops[0]!.boundsMm[3]).toBeCloseTo(v, 9)
  })

  test('blank-aligned columns keep their units', () => {
    expect(table('u [in]   v [in]\n0   0\n10  0\n10  4\n0   4', null)).toMatchObject({
      verdict: 'accept',
      unit: 'in',
    })
    expect(table('x mm y mm\n0   0\n10  0\n10  4\n0   4', null)).toMatchObject({
      verdict: 'accept',
      unit: 'mm',
    })
  })

  test('without a unit, or without a header, the unit is asked', () => {
    for (const text of [`u,v${body}`, body.trim()]) {
      const reading = table(text, null)
      expect(reading).toMatchObject({
        verdict: 'ask',
        unit: null,
        loops: [{ areaMm2: 40 }],
        findings: [{ code: 'unit-unknown' }],
      })
      expect(reading.findings[0]!.text).toContain('254 x 102 mm if inches')
      expect(table(text, 'in')).toMatchObject({ verdict: 'accept', unit: 'in' })
    }
  })

  test('the header goes before a choice, and both are told', () => {
    const reading = table(`u [in],v [in]${body}`, 'mm')
    expect(reading).toMatchObject({
      verdict: 'accept-with-notice',
      unit: 'in',
      findings: [{ code: 'unit-of-file' }],
    })
  })

  test('a unit for each column', () => {
    const reading = table(`x (in),y (mm)${body}`, null)
    expect(reading).toMatchObject({
      verdict: 'accept-with-notice',
      unit: 'in',
      findings: [{ code: 'unit-by-column' }],
    })
    expect(reading.loops[0]!.boundsMm).toEqual([0, 0, 254, 4])
    expect(table(`x,y (in)${body}`, null)).toMatchObject({ verdict: 'accept-with-notice', unit: 'in' })
  })

  test('columns are taken by their names; others are told', () => {
    const reading = table('id,y,x,z\nA,0,0,1\nB,0,10,1\nC,4,10,1\nD,4,0,1')
    expect(reading).toMatchObject({ verdict: 'accept-with-notice', findings: [{ code: 'columns-left-out' }] })
    expect(reading.findings[0]!.text).toContain('id, z')
    expect(reading.loops[0]!.boundsMm).toEqual([0, 0, 10, 4])
  })

  test('units of columns that are not read do not matter', () => {
    const reading = table('x (mm),y (mm),dz (kg),m\n0,0,1,1\n10,0,1,1\n10,4,1,1\n0,4,1,1', null)
    expect(reading).toMatchObject({ verdict: 'accept-with-notice', unit: 'mm', loops: [{ areaMm2: 40 }] })
    expect(reading.findings[0]!.text).toContain('dz, m')
  })

  test('two columns with names of their own are taken in order', () => {
    expect(table('across [cm],along [cm]\n0,0\n10,0\n10,4', null)).toMatchObject({
      verdict: 'accept',
      unit: 'cm',
    })
  })

  test.each([
    ['a column of units', 'x,y,unit\n0,0,mm\n1,0,in', 'header-not-read'],
    ['no v', 'x,z\n0,0\n1,0', 'header-not-read'],
    ['x twice', 'x,x\n0,0\n1,0', 'header-not-read'],
    ['a unit that is none', 'x [bananas],y [bananas]\n0,0\n1,0', 'unit-not-read'],
    ['a unit of another kind', 'x [kg],y [kg]\n0,0\n1,0', 'unit-not-read'],
  ])('%s is refused', (_, text, code) => {
    const reading = table(text)
    expect(reading).toMatchObject({ verdict: 'refuse', findings: [{ code, place: 'line 1' }] })
    expect(reading.findings[0]!.cure).not.toBeNull()
  })
})

describe('faults', () => {
  test('each is listed with its line and a cure, and nothing is used', () => {
    const reading = table('u [mm],v [mm]\n0,0\n100,\n100,abc\n1,2,3\n-,7\n0,50')
    expect(reading).toMatchObject({ verdict: 'refuse', loops: [], unit: 'mm' })
    expect(reading.findings.map(({ code, place }) => `${code} ${place}`)).toEqual([
      'row-not-read line 3',
      'cell-not-a-number line 4',
      'cell-not-a-number line 6',
    ])
    expect(reading.findings.every(({ cure }) => cure !== null)).toBe(true)
  })

  test('a third value without a header is named', () => {
    expect(table('0,0\n1,5,2,5\n0,3')).toMatchObject({
      verdict: 'refuse',
      findings: [{ code: 'row-not-read', place: 'line 2' }],
    })
  })

  test('a title line is not taken for a header with the next one passed over', () => {
    expect(table('Cut-out port\nu,v\n0,0\n1,0\n1,1').verdict).toBe('refuse')
  })

  test.each(['1e400', 'NaN', 'Infinity', '0x10', '1..2', '12.5 mm', '--3', '1/0'])(
    '"%s" is no number',
    (cell) => {
      expect(table(`0;0\n10;0\n${cell};5`)).toMatchObject({
        verdict: 'refuse',
        loops: [],
        findings: [{ code: 'cell-not-a-number', place: 'line 3' }],
      })
    },
  )

  test('many faults are listed up to twenty, the rest counted', () => {
    const reading = table(Array.from({ length: 100 }, () => '1;x').join('\n'))
    expect(reading.findings).toHaveLength(21)
    expect(reading.findings.at(-1)).toMatchObject({ code: 'more-faults', figures: { count: 80 } })
  })

  test('corners beyond 100 m are a slip', () => {
    expect(table('0,0\n200000,0\n0,5')).toMatchObject({
      verdict: 'refuse',
      findings: [{ code: 'too-far', place: 'line 2' }],
    })
  })

  test('a quotation mark that is not closed', () => {
    expect(table('0,0\n"1,0\n1,1\n0,1')).toMatchObject({
      verdict: 'refuse',
      findings: [{ code: 'table-not-read', place: 'line 2' }],
    })
  })

  test.each(['# nothing but a remark', 'u,v', ';;\n;;'])('no coordinates in %j', (text) => {
    expect(table(text)).toMatchObject({ verdict: 'refuse', findings: [{ code: 'no-coordinates' }] })
  })
})

describe('what is dropped is told', () => {
  const four = '0,0\n100,0\n100,50\n0,50'

  test('a last point that repeats the first', () => {
    const reading = table(`${four}\n0,0`)
    expect(reading).toMatchObject({
      verdict: 'accept-with-notice',
      findings: [{ code: 'last-point-dropped', place: 'line 5' }],
    })
    expect(reading.loops[0]!.points).toHaveLength(4)
  })

  test('points that repeat the one before', () => {
    const reading = table(`0,0\n0,0\n100,0\n100,50\n0,50`)
    expect(reading).toMatchObject({
      findings: [{ code: 'repeated-points-dropped', place: 'line 2', figures: { count: 1 } }],
    })
  })

  test('rows of delimiters and blank lines between corners', () => {
    expect(codes(table('0;0\n;\n100;0\n\n100;50\n0;50'))).toEqual(['blank-rows', 'blank-lines-between'])
  })
})

describe('shapes that cannot be', () => {
  test('a scribble with more crossings than are looked for', () => {
    const text = Array.from({ length: 60 }, (_, index) => `${(index * 37) % 61},${(index * 53) % 59}`).join(
      '\n',
    )
    const reading = table(text)
    expect(reading).toMatchObject({ verdict: 'ask', findings: [{ code: 'self-crossing' }] })
    expect(reading.findings[0]!.text).toContain('at least 90 more places')
  })

  test.each([
    ['one point', '1,1'],
    ['two points', '0,0\n10,0'],
    ['one point three times', '1,1\n1,1\n1,1'],
    ['a triangle closed too soon', '0,0\n10,0\n0,0'],
  ])('%s: too few', (_, text) => {
    const reading = table(text)
    expect(reading).toMatchObject({ verdict: 'refuse', loops: [] })
    expect(codes(reading)).toContain('too-few-points')
  })

  test.each([
    ['on one line', '0,0\n50,0\n100,0'],
    ['on one slanting line, there and back', '0,0\n30,10\n90,30\n60,20'],
    ['within a hair of one line', '0,0\n50,0.0001\n100,0'],
  ])('%s: no area', (_, text) => {
    expect(codes(table(text))).toEqual(['no-area'])
    expect(table(text).verdict).toBe('refuse')
  })

  test('a spike, a touch and a crossing are asked, each in its words', () => {
    const words = (text: string) => table(text).findings[0]!.text
    expect(words('0,0\n100,0\n150,0\n100,0\n100,50\n0,50')).toContain('runs back along itself')
    expect(words('0,0\n100,0\n50,30\n100,60\n0,60\n50,30')).toContain('touches itself at u 50, v 30 mm')
    expect(words('0,0\n100,80\n100,0\n0,80')).toContain('crosses itself at u 50, v 40 mm')
  })

  test('every crossing and every lobe is named', () => {
    const reading = table('0,0\n100,0\n0,60\n100,60\n0,120\n100,120')
    expect(reading).toMatchObject({ verdict: 'ask', loops: [{ role: 'outer', areaMm2: 5000 }] })
    const { figures, text } = reading.findings[0]!
    expect(figures!.crossingsMm).toHaveLength(6)
    // By hand: two triangles of 100 x 40 / 2 and two of 50 x 20 / 2.
    expect(figures!.lobesMm2).toEqual([2000, 2000, 500, 500])
    expect(text).toContain('4 lobes of 2000, 2000, 500, 500 mm2')
  })

  test.each([
    ['as given', ['0,0', '120,70', '110,5', '60,90', '5,80']],
    ['the other way round', ['5,80', '60,90', '110,5', '120,70', '0,0']],
  ])('an order that crosses nothing is offered, and reads as an outline: %s', (_, corners) => {
    const { findings, loops } = table(corners.join('\n'))
    expect(loops[0]!.points.map((point) => point.join(','))).toEqual(corners)
    const { figures, cure } = findings[0]!
    const order = figures!.orderOffered as readonly number[]
    expect([...order].sort()).toEqual([1, 2, 3, 4, 5])
    expect(cure).toContain(`Put the points in another order: ${order.join(', ')}`)
    const again = table(order.map((place) => corners[place - 1]!).join('\n'))
    expect(again).toMatchObject({ verdict: 'accept', loops: [{ areaMm2: figures!.areaOfferedMm2 }] })
  })

  test('no order is offered for a drawing whose arcs were flattened', () => {
    const reading = read(
      dxf([
        polyline([
          [0, 0],
          [100, 80, 0.2],
          [100, 0],
          [0, 80],
        ]),
      ]),
    )
    expect(codes(reading)).toEqual(['self-crossing'])
    expect(reading.findings[0]!.figures).not.toHaveProperty('orderOffered')
  })

  test('more points than an outline can have', () => {
    const many = Array.from({ length: 30_000 }, (_, index) => `${index % 1000},${index}`).join('\n')
    expect(codes(table(many))).toEqual(['too-many-points'])
    const circle = Array.from({ length: 21_000 }, (_, index) => {
      const angle = (2 * Math.PI * index) / 21_000
      return `${(500 * Math.cos(angle)).toFixed(4)},${(500 * Math.sin(angle)).toFixed(4)}`
    })
    expect(codes(table(circle.join('\n')))).toEqual(['too-many-points'])
  })
})
