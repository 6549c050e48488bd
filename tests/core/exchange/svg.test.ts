import { describe, expect, test } from 'vitest'
import { type ChosenUnit, type OutlineReading, readLoops } from '#lib/exchange/outline/index'
import { codes } from './draw-dxf'
import { readCase } from './read-case'

/** A page of 300 x 200 mm, numbers in mm, with this on it. */
function page(content: string, attributes = 'width="300mm" height="200mm" viewBox="0 0 300 200"'): string {
  return `<svg xmlns="http://www.w3.org/2000/svg" xmlns:xlink="http://www.w3.org/1999/xlink" ${attributes}>\n${content}\n</svg>`
}

function svg(content: string, attributes?: string, unit: ChosenUnit | null = null): OutlineReading {
  return readLoops({ name: 'opening.svg', text: page(content, attributes), unit })
}

const box = '<path d="M20 30h100v50h-100z"/>'

function bounds({ loops }: OutlineReading): readonly number[] {
  return loops[0]!.boundsMm.map((mm) => Math.round(mm * 1e6) / 1e6)
}

function areaOf({ loops }: OutlineReading): number {
  return loops.reduce((sum, { role, areaMm2 }) => sum + (role === 'outer' ? areaMm2 : -areaMm2), 0)
}

/** v of the expected box as the page counts it, y down from its top. */
function flipped([x0, y0, x1, y1]: readonly number[], heightMm: number): readonly number[] {
  return [x0!, heightMm - y1!, x1!, heightMm - y0!]
}

describe('example drawings with the right answers beside them', () => {
  test.each(['letter.svg', 'mm.svg'])('T33: %s', (file) => {
    const { reading, expected } = readCase('T33', null, file)
    const right = expected[file] as { bbox_size_mm: [number, number]; area_mm2: number }
    expect(reading.verdict).toBe(expected.action)
    const [uMin, vMin, uMax, vMax] = bounds(reading) as [number, number, number, number]
    expect(uMax - uMin).toBeCloseTo(right.bbox_size_mm[0], 6)
    expect(vMax - vMin).toBeCloseTo(right.bbox_size_mm[1], 6)
    expect(areaOf(reading)).toBeCloseTo(right.area_mm2, 6)
  })

  test('T34: nested transforms in their order; mirrored once, and it says so', () => {
    const { reading, expected } = readCase('T34')
    expect(reading.verdict).toBe(expected.action)
    const right = (expected.points_page_mm as [number, number][]).map(([x, y]) => [x, 200 - y])
    expect(reading.loops[0]!.points).toHaveLength(right.length)
    for (const point of right) expect(reading.loops[0]!.points).toContainEqual(point)
    expect(areaOf(reading)).toBeCloseTo(expected.area_mm2!, 9)
    expect(bounds(reading)).toEqual(flipped(expected.bbox_page_mm as number[], 200))
    expect(reading.findings).toMatchObject([{ code: 'svg-flipped', figures: { bottomMm: 200 } }])
    expect(reading.findings[0]!.text).toContain('mirrored once about the bottom edge of its page')
  })

  test('T35: arc flags without blanks', () => {
    const { reading, expected } = readCase('T35')
    expect(reading.verdict).toBe(expected.action)
    expect(Math.abs(areaOf(reading) - expected.area_mm2!)).toBeLessThan(expected.area_tolerance!)
    expect(bounds(reading)).toEqual(flipped(expected.bbox_page_mm as number[], 150))
    const [, ...arc] = reading.loops[0]!.points
    for (const [u, v] of arc) expect(Math.hypot(u - 70, v - 70)).toBeCloseTo(50, 6)
  })
})

describe('the size of the page', () => {
  const inch = '<rect width="72" height="144"/>'
  test.each([
    ['width="612pt" height="792pt" viewBox="0 0 612 792"', 'pt', 25.4],
    ['width="8.5in" height="11in" viewBox="0 0 612 792"', 'in', 25.4],
    ['width="215.9mm" height="279.4mm" viewBox="0 0 612 792"', 'mm', 25.4],
    ['width="21.59cm" height="27.94cm" viewBox="0 0 612 792"', 'cm', 25.4],
    ['width="51pc" height="66pc" viewBox="0 0 612 792"', 'pc', 25.4],
    ['style="width:8.5in;height:11in" viewBox="0 0 612 792"', 'in', 25.4],
    ['width="8.5in" viewBox="0 0 612 792"', 'in', 25.4],
    ['height="11in" viewBox="0,0,612,792"', 'in', 25.4],
  ] as const)('%s', (attributes, unit, wide) => {
    const reading = svg(inch, attributes)
    expect(reading).toMatchObject({ verdict: 'accept', unit })
    expect(bounds(reading)[2]).toBeCloseTo(wide, 6)
    expect(bounds(reading)[3]).toBeCloseTo(279.4, 6)
  })

  test.each([
    'width="816px" height="1056px" viewBox="0 0 612 792"',
    'width="816" height="1056" viewBox="0 0 612 792"',
  ])('pixels are 1/96 inch, which is told: %s', (attributes) => {
    const reading = svg(inch, attributes)
    expect(reading).toMatchObject({ verdict: 'accept-with-notice', unit: 'px' })
    expect(codes(reading)).toEqual(['svg-pixels', 'svg-flipped'])
    expect(bounds(reading)[2]).toBeCloseTo(25.4, 6)
  })

  test('without a viewBox the numbers are pixels, whatever the page is given in', () => {
    const reading = svg('<rect width="96" height="48"/>', 'width="100mm" height="50mm"')
    expect(reading.verdict).toBe('accept-with-notice')
    expect(bounds(reading)).toEqual([0, 50 - 12.7, 25.4, 50])
  })

  test.each(['viewBox="0 0 300 200"', 'width="100%" height="100%" viewBox="0 0 300 200"', 'width="auto"'])(
    'no size: the unit is asked, and a choice settles it: %s',
    (attributes) => {
      const reading = svg('<rect width="20" height="10"/>', attributes)
      expect(reading).toMatchObject({ verdict: 'ask', unit: null })
      expect(codes(reading)).toContain('unit-unknown')
      const chosen = svg('<rect width="20" height="10"/>', attributes, 'in')
      expect(chosen.unit).toBe('in')
      expect(chosen.verdict).toMatch(/^accept/)
      expect(bounds(chosen)[2]).toBeCloseTo(508, 6)
    },
  )

  test('a choice holds for bare numbers, not against a unit of the file', () => {
    const bare = svg('<rect width="20" height="10"/>', 'width="300" height="200" viewBox="0 0 300 200"', 'mm')
    expect(bounds(bare)[2]).toBeCloseTo(20, 9)
    expect(codes(bare)).toContain('unit-overridden')
    const stated = svg('<rect width="20" height="10"/>', undefined, 'in')
    expect(bounds(stated)[2]).toBeCloseTo(20, 9)
    expect(codes(stated)).toContain('unit-of-file')
  })

  test('a viewBox of another shape is laid in the middle, to a side, or stretched', () => {
    const inView = (preserve: string) =>
      svg(
        '<rect width="100" height="100"/>',
        `width="200mm" height="100mm" viewBox="0 0 100 100" ${preserve}`,
      )
    expect(bounds(inView(''))).toEqual([50, 0, 150, 100])
    expect(bounds(inView('preserveAspectRatio="xMinYMid meet"'))).toEqual([0, 0, 100, 100])
    expect(bounds(inView('preserveAspectRatio="xMaxYMax"'))).toEqual([100, 0, 200, 100])
    expect(bounds(inView('preserveAspectRatio="xMidYMin slice"'))).toEqual([0, -100, 200, 100])
    const stretched = inView('preserveAspectRatio="none"')
    expect(bounds(stretched)).toEqual([0, 0, 200, 100])
    expect(codes(stretched)).toContain('svg-stretched')
  })

  test('a viewBox that does not begin at nought', () => {
    expect(bounds(svg(box, 'width="300mm" height="200mm" viewBox="-10 -20 300 200"'))).toEqual([
      30, 100, 130, 150,
    ])
  })
})

describe('shapes', () => {
  test.each([
    ['a rectangle', '<rect x="10" y="20" width="40" height="30"/>', 1200, [10, 20, 50, 50]],
    [
      'round corners',
      '<rect x="10" y="20" width="40" height="30" rx="5"/>',
      1200 - (4 - Math.PI) * 25,
      [10, 20, 50, 50],
    ],
    [
      'corners of two radii',
      '<rect width="40" height="30" rx="4" ry="3"/>',
      1200 - (4 - Math.PI) * 12,
      [0, 0, 40, 30],
    ],
    ['radii larger than half', '<rect width="40" height="30" rx="99"/>', Math.PI * 20 * 15, [0, 0, 40, 30]],
    ['a circle', '<circle cx="50" cy="60" r="20"/>', Math.PI * 400, [30, 40, 70, 80]],
    ['an ellipse', '<ellipse cx="50" cy="60" rx="20" ry="10"/>', Math.PI * 200, [30, 50, 70, 70]],
    ['a polygon', '<polygon points="0,0 40 0 40,30"/>', 600, [0, 0, 40, 30]],
    ['signs for blanks', '<polygon points="10-5 40-5.5.5,30"/>', 1045.25 / 2, null],
    ['sizes with units', '<rect width="1in" height="96px"/>', 96 * 96, [0, 0, 96, 96]],
    ['relative lines', '<path d="m10 10 40 0 0 30-40 0z"/>', 1200, [10, 10, 50, 40]],
    ['H, V and numbers that run on', '<path d="M.5.5H40.5V30.5H.5Z"/>', 1200, [0.5, 0.5, 40.5, 30.5]],
    ['a parabola', '<path d="M0 0Q50 100 100 0Z"/>', (2 / 3) * 100 * 50, [0, 0, 100, 50]],
    ['its smooth continuation', '<path d="M0 50Q25 0 50 50T100 50V100H0Z"/>', 5000, null],
    ['an arc of an ellipse, turned', '<path d="M0 0A40 20 90 1 1 40 0Z"/>', null, null],
  ])('%s', (_, content, areaMm2, box) => {
    const reading = svg(content)
    expect(reading.verdict).toBe('accept')
    if (areaMm2 !== null)
      expect(Math.abs(areaOf(reading) - areaMm2)).toBeLessThan(0.01 * reading.loops[0]!.perimeterMm)
    if (box !== null) {
      const right = flipped(box, 200)
      bounds(reading).forEach((mm, index) => {
        expect(mm).toBeCloseTo(right[index]!, 6)
      })
    }
  })

  test('a cubic curve keeps within 0.01 mm of it, and its bounds are true', () => {
    const [p, q, r, s] = [
      [0, 150],
      [0, 10],
      [160, 10],
      [160, 150],
    ] as const
    const [loop] = svg('<path d="M0 150C0 10 160 10 160 150Z"/>').loops
    expect(loop!.boundsMm[3]).toBeCloseTo(200 - 45, 9)
    const on = (t: number, axis: 0 | 1) =>
      (1 - t) ** 3 * p[axis] +
      3 * t * (1 - t) ** 2 * q[axis] +
      3 * t * t * (1 - t) * r[axis] +
      t ** 3 * s[axis]
    for (let step = 0; step <= 2000; step += 1) {
      const [u, v] = [on(step / 2000, 0), 200 - on(step / 2000, 1)]
      const off = loop!.points.reduce((least, [u1, v1], index) => {
        const [u2, v2] = loop!.points[(index + 1) % loop!.points.length]!
        const length = (u2 - u1) ** 2 + (v2 - v1) ** 2
        const share = Math.min(1, Math.max(0, ((u - u1) * (u2 - u1) + (v - v1) * (v2 - v1)) / length))
        return Math.min(least, Math.hypot(u - u1 - share * (u2 - u1), v - v1 - share * (v2 - v1)))
      }, Infinity)
      expect(off).toBeLessThan(0.01)
    }
  })

  test('a circle skewed and stretched by a matrix is the ellipse that it becomes', () => {
    const reading = svg('<circle r="10" transform="matrix(3 1 -1 2 100 100)"/>')
    expect(areaOf(reading)).toBeCloseTo(Math.PI * 100 * 7, 0)
    expect(bounds(reading)[2]).toBeCloseTo(100 + 10 * Math.hypot(3, 1), 6)
    expect(bounds(reading)[3]).toBeCloseTo(100 + 10 * Math.hypot(1, 2), 6)
  })

  test('loose lines, in mixed order and direction, make one outline', () => {
    const reading = svg(
      '<line x1="0" y1="0" x2="40" y2="0" stroke="black"/><line x1="40" y1="30" x2="40" y2="0" stroke="black"/>' +
        '<polyline points="0,0 0,30 40,30" stroke="black"/>',
    )
    expect(reading.verdict).toBe('accept')
    expect(areaOf(reading)).toBeCloseTo(1200, 9)
  })

  test('an open path is told with its gap', () => {
    const reading = svg('<path d="M0 0H40V30H3"/>')
    expect(reading).toMatchObject({
      verdict: 'refuse',
      findings: [{ code: 'outline-open', place: expect.any(String) }],
    })
  })

  test('drawn twice, one is dropped and told', () => {
    expect(svg(box + box)).toMatchObject({ verdict: 'accept-with-notice', dropped: 1 })
  })

  test('a path with two holes: roles by containment, whatever the order', () => {
    const reading = svg('<path d="M30 40h10v10h-10zM20 30h100v50h-100zM60 40h10v10h-10z"/>')
    expect(reading.verdict).toBe('accept')
    expect(reading.loops.map(({ role }) => role)).toEqual(['outer', 'hole', 'hole'])
    expect(areaOf(reading)).toBeCloseTo(4800, 9)
  })
})

describe('transforms', () => {
  test.each([
    ['translate(10)', [30, 30, 130, 80]],
    ['translate(10,20)', [30, 50, 130, 100]],
    ['scale(.5)', [10, 15, 60, 40]],
    ['scale(-1,1) translate(-140 0)', [20, 30, 120, 80]],
    ['rotate(90)', [-80, 20, -30, 120]],
    ['rotate(90 70 55)', [45, 5, 95, 105]],
    ['rotate(180,70,55)', [20, 30, 120, 80]],
    ['skewX(45)', [50, 30, 200, 80]],
    ['skewY(45)', [20, 50, 120, 200]],
    ['matrix(1,0,0,-1,0,110)', [20, 30, 120, 80]],
    ['translate(10,0)scale(2) , translate(-10 -20)', [30, 20, 230, 120]],
    ['matrix(1-0 0 1 5-5)', [25, 25, 125, 75]],
  ] as const)('%s', (transform, right) => {
    const reading = svg(`<g transform="${transform}">${box}</g>`)
    expect(reading.verdict).toBe('accept')
    flipped(right, 200).forEach((mm, index) => {
      expect(reading.loops[0]!.boundsMm[index]).toBeCloseTo(mm, 9)
    })
  })

  test.each([
    'rotate(1 2)',
    'scale()',
    'translate(1,2,3)',
    'turn(5)',
    'scale(2',
    'matrix(1 2 3)',
    'scale(1e999)',
    `scale(${'1'.repeat(5000)}x)`,
  ])('%s is refused with its place', (transform) => {
    const reading = svg(`<g>\n<path transform="${transform}" d="M0 0h9v9z"/></g>`)
    expect(reading).toMatchObject({
      verdict: 'refuse',
      findings: [{ code: 'svg-transform', place: 'line 3' }],
    })
  })

  test('a transform in a style, an origin, or on the page is not passed over', () => {
    expect(codes(svg(`<g style="transform: rotate(90deg)">${box}</g>`))).toEqual(['svg-transform'])
    expect(codes(svg(`<g transform="rotate(9)" transform-origin="5 5">${box}</g>`))).toEqual([
      'svg-transform',
    ])
    expect(codes(svg(box, 'width="9mm" height="9mm" viewBox="0 0 9 9" transform="scale(2)"'))).toEqual([
      'svg-transform',
    ])
  })
})

describe('what is used again and what lies in a view of its own', () => {
  test('use draws a shape from defs at its place', () => {
    const reading = svg(
      `<defs><path id="a" d="M0 0h10v10h-10z"/></defs><g transform="scale(2)"><use href="#a" x="5" y="6"/></g>`,
    )
    expect(reading.verdict).toBe('accept')
    expect(bounds(reading)).toEqual(flipped([10, 12, 30, 32], 200))
  })

  test('use of a symbol lays its viewBox into the size asked for', () => {
    const reading = svg(
      '<symbol id="s" viewBox="0 0 10 10"><circle cx="5" cy="5" r="5"/></symbol><use xlink:href="#s" x="20" y="30" width="40" height="40"/>',
    )
    expect(reading.verdict).toBe('accept')
    expect(bounds(reading)).toEqual(flipped([20, 30, 60, 70], 200))
  })

  test('a drawing in the drawing', () => {
    const reading = svg(
      `<svg x="100" y="50" width="60" height="40" viewBox="0 0 30 20"><rect width="30" height="20"/></svg>`,
    )
    expect(bounds(reading)).toEqual(flipped([100, 50, 160, 90], 200))
  })

  test.each([
    ['nothing there', '<use href="#none"/>'],
    ['outside the file', '<use href="other.svg#a"/>'],
    ['itself', '<g id="a"><use href="#a"/></g>'],
    ['each other', '<g id="a"><use href="#b"/></g><g id="b"><use href="#a"/></g>'],
  ])('use of %s is refused', (_, content) => {
    const reading = svg(content)
    expect(reading.verdict).toBe('refuse')
    expect(codes(reading)).toEqual(['svg-use'])
    expect(reading.findings[0]!.place).toBe('line 2')
  })

  test('names with a prefix', () => {
    const text =
      '<s:svg xmlns:s="http://www.w3.org/2000/svg" width="30mm" height="20mm" viewBox="0 0 30 20"><s:rect width="9" height="8"/><rect width="1" height="1"/></s:svg>'
    const reading = readLoops({ name: 'a.svg', text, unit: null })
    expect(reading).toMatchObject({ verdict: 'accept', loops: [{ areaMm2: 72 }] })
  })
})

describe('what is no outline is left out and told', () => {
  test.each([
    ['hidden-left-out', '<rect width="9" height="9" display="none"/>'],
    ['hidden-left-out', '<g style="display:none"><rect width="9" height="9"/></g>'],
    ['hidden-left-out', '<g visibility="hidden"><rect width="9" height="9"/></g>'],
    ['unpainted-left-out', '<rect width="300" height="200" fill="none"/>'],
    ['lettering-left-out', '<text x="9" y="9">floor</text>'],
    ['lettering-left-out', '<image href="http://nowhere.invalid/a.png" width="9" height="9"/>'],
    ['stored-left-out', '<clipPath id="c"><rect width="9" height="9"/></clipPath>'],
    ['stored-left-out', '<mask id="m"><rect width="9" height="9"/></mask>'],
    ['stored-left-out', '<pattern id="p"><rect width="9" height="9"/></pattern>'],
    ['stored-left-out', '<defs><rect width="9" height="9"/></defs>'],
    ['stored-left-out', '<symbol id="s"><rect width="9" height="9"/></symbol>'],
    ['svg-style-sheet', '<style>.a{fill:none;stroke:#000}</style>'],
  ])('%s: %s', (code, content) => {
    const reading = svg(content + box)
    expect(reading.verdict).toBe('accept-with-notice')
    expect(codes(reading)).toEqual([code, 'svg-flipped'])
    expect(areaOf(reading)).toBeCloseTo(5000, 9)
  })

  test('titles, data of the program and gradients are nothing drawn', () => {
    const content = `<title>x</title><desc>y</desc><metadata><a/></metadata><linearGradient id="g"/>${box}`
    expect(svg(content).verdict).toBe('accept')
  })

  test('what shows within a hidden group, and what a class may paint, is read', () => {
    expect(svg(`<g visibility="hidden"><path visibility="visible" d="M0 0h9v9z"/></g>`).verdict).toBe(
      'accept',
    )
    const painted = svg(`<style>.a{stroke:red}</style><path class="a" fill="none" d="M0 0h9v9z"/>`)
    expect(painted.loops).toHaveLength(1)
  })

  test.each([
    ['a style sheet that can hide', `<style>.a{display:none}</style>${box}`, 'svg-style-sheet'],
    ['a clip path', `<g clip-path="url(#c)">${box}</g>`, 'svg-clipped'],
    ['a mask', `<g style="mask:url(#c)">${box}</g>`, 'svg-clipped'],
    ['the two edges of a drawn line', '<path d="M0 0h100v50h-100zM.2.2v49.6h99.6v-49.6z"/>', 'thin-ring'],
  ])('%s is asked about', (_, content, code) => {
    const reading = svg(content)
    expect(reading.verdict).toBe('ask')
    expect(codes(reading)).toContain(code)
  })

  test('nothing that shows', () => {
    expect(codes(svg('<text>a</text>'))).toEqual(['nothing-drawn', 'lettering-left-out'])
  })
})

test('two outlines on a page are told, as in other drawings', () => {
  const reading = svg(`${box}<circle cx="200" cy="100" r="20"/>`)
  expect(reading).toMatchObject({
    verdict: 'refuse',
    findings: [{ code: 'several-outlines' }, { code: 'svg-flipped' }],
  })
})

test('groups with names tell pieces apart', () => {
  const two = svg(
    `<g id="inner">${box}</g><g id="x" inkscape:label="rim"><rect x="200" width="9" height="9"/></g>`,
  )
  expect(two.findings[0]!.text).toContain('layer inner')
  expect(two.findings[0]!.text).toContain('layer rim')
})

test('a drawing that asks for much work with few words is answered in time', () => {
  const began = Date.now()
  const copies = (of: string) => '<use href="#h"/>'.repeat(20_000) + of + box
  const shapes = '<path/>'.repeat(30_000)
  svg(copies(`<g display="none" id="h">${shapes}</g>`))
  svg(copies(`<g id="h"><defs>${shapes}</defs></g>`))
  svg(`<path style="${'a:b;'.repeat(300_000)}" d="M0 0h100v50h-100z"/>`)
  // Measured: 1 s. Counted again for every copy it would be minutes, and all of the memory.
  expect(Date.now() - began).toBeLessThan(20_000)
}, 60_000)
