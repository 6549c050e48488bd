import * as fc from 'fast-check'
import { describe, expect, test } from 'vitest'
import { readLoops } from '#lib/exchange/outline/index'
import { expectSound, mutated, units } from './mutations'

const head = '<svg xmlns="http://www.w3.org/2000/svg" width="300mm" height="200mm" viewBox="0 0 300 200">'
const whole = (content: string) => `${head}\n${content}\n</svg>`
const read = (text: string) => readLoops({ name: 'a.svg', text, unit: null })

/** An answer comes within seconds, also on a slow and busy machine; what hangs takes for ever. */
function timed<Answer>(work: () => Answer): Answer {
  const start = performance.now()
  const answer = work()
  expect(performance.now() - start).toBeLessThan(15_000)
  return answer
}

describe('damaged and hostile files are refused, with the place and what to do', { timeout: 60_000 }, () => {
  const bombs = Array.from({ length: 9 }, (_, i) => `<!ENTITY l${i + 1} "${`&l${i};`.repeat(10)}">`).join('')
  const copies = (depth: number) =>
    `<g id="u0"><path d="M0 0h1v1z"/></g>${Array.from({ length: depth }, (_, i) => `<g id="u${i + 1}">${`<use href="#u${i}"/>`.repeat(10)}</g>`).join('')}`
  test.each([
    ['broken off', head, 'svg-damaged'],
    ['a tag that closes another', whole('<g><path d="M0 0"/></h>'), 'svg-damaged'],
    ['an attribute without quotes', whole('<rect width=9 height="9"/>'), 'svg-damaged'],
    ['a bare ampersand', whole('<text>a & b</text>'), 'svg-damaged'],
    ['an entity that is not defined', whole('<text>&who;</text>'), 'svg-damaged'],
    [
      'entities in entities',
      `<!DOCTYPE svg [<!ENTITY l0 "ha">${bombs}]>\n${whole('<text>&l9;</text>')}`,
      'svg-entities',
    ],
    [
      'an entity from outside',
      `<!DOCTYPE svg [<!ENTITY x SYSTEM "file:///etc/passwd">]>${whole('<text>&x;</text>')}`,
      'svg-entities',
    ],
    ['copies of copies of copies', whole(copies(8)), 'svg-too-much'],
    [
      'a long chain of copies',
      whole(Array.from({ length: 500 }, (_, i) => `<g id="c${i}"><use href="#c${i + 1}"/></g>`).join('')),
      'svg-too-much',
    ],
    ['a deep nest', whole(`${'<g>'.repeat(50_000)}${'</g>'.repeat(50_000)}`), 'svg-too-much'],
    ['very many elements', whole('<g/>'.repeat(200_000)), 'svg-too-much'],
    ['far away', whole('<path d="M0 0H1e9V9z"/>'), 'too-far'],
    ['farther than numbers go', whole('<path d="M0 0H1e999V9z"/>'), 'too-far'],
    ['a handle far away', whole('<path d="M0 0C1e30 0 0 1e30 9 9z"/>'), 'too-far'],
    ['a radius without end', whole('<path d="M0 0A1e300 1e300 0 0 1 9 9z"/>'), 'svg-arc'],
    [
      'a transform that blows up',
      whole('<g transform="scale(1e200)"><g transform="scale(1e200)"><rect width="9" height="9"/></g></g>'),
      'too-far',
    ],
    ['a negative size', whole('<rect width="-9" height="9"/>'), 'svg-number'],
    ['a size in words', whole('<rect width="wide" height="9"/>'), 'svg-number'],
    ['a size in percent', whole('<rect width="50%" height="9"/>'), 'svg-relative-length'],
    ['path data with a letter in it', whole('<path d="M0 0 L9 9 X5"/>'), 'svg-path'],
    ['path data that breaks off', whole('<path d="M0 0 L9"/>'), 'svg-path'],
    ['an odd number of coordinates', whole('<polygon points="0 0 9 0 9"/>'), 'svg-points'],
    ['a viewBox without an area', '<svg viewBox="0 0 0 9"/>', 'svg-view-box'],
    ['a viewBox of words', '<svg viewBox="all"/>', 'svg-view-box'],
    ['a page without a size', '<svg width="0mm" height="9mm"/>', 'svg-page'],
    ['no element', '<!-- <svg> -->', 'svg-damaged'],
    ['another kind of XML', '<?xml version="1.0"?><plan><svg/></plan>', 'not-an-outline-file'],
    ['a web page', '<!doctype html><html><svg/></html>', 'not-an-outline-file'],
    [
      'more points than an outline has',
      whole(
        `<polygon points="${Array.from({ length: 30_000 }, (_, i) => `${Math.cos(i / 4800) * 90 + 100} ${Math.sin(i / 4800) * 90 + 100}`).join(' ')}"/>`,
      ),
      'too-many-points',
    ],
    ['more points than a drawing may', whole('<circle r="90"/>'.repeat(2000)), 'too-many-points'],
  ])('%s', (_, text, code) => {
    const reading = timed(() => read(text))
    expect(reading.verdict).toBe('refuse')
    expect(reading.findings[0]).toMatchObject({ code, severity: 'stop' })
    expect(reading.findings[0]!.cure!.length).toBeGreaterThan(10)
    expectSound(reading)
  })

  test('more than 8 MB, and just below it', () => {
    const path = (bytes: number) => whole(`<!--${'x'.repeat(bytes)}--><rect width="9" height="9"/>`)
    expect(read(path(11 * 1024 * 1024)).findings[0]!.code).toBe('file-too-large')
    expect(timed(() => read(path(7 * 1024 * 1024))).verdict).toBe('accept')
    const long = whole(`<path d="M0 0${'h.001v0'.repeat(400_000)}V9H0z"/>`)
    expect(timed(() => read(long)).verdict).toBe('refuse')
  })

  test('a mask of text for a path is found fast', () => {
    expect(
      timed(() => read(whole(`<path transform="${'rotate(1 '.repeat(50_000)}" d="M0 0"/>`))).verdict,
    ).toBe('refuse')
    expect(timed(() => read(whole(`<polygon points="${'1'.repeat(500_000)}"/>`))).verdict).toBe('refuse')
  })
})

test('declarations, comments and a document type without entities are no matter', () => {
  const text = `\ufeff<?xml version="1.0" encoding="UTF-8"?>\n<!-- ${'made by hand '.repeat(600)}-->\n<!DOCTYPE svg PUBLIC "-//W3C//DTD SVG 1.1//EN" "http://www.w3.org/Graphics/SVG/1.1/DTD/svg11.dtd">\n${whole('<rect width="9" height="8"/>')}`
  expect(read(text)).toMatchObject({ verdict: 'accept', loops: [{ areaMm2: 72 }] })
})

test('whatever is done to a drawing, there is an answer', () => {
  const drawings = [
    whole(
      '<g transform="translate(10,190)"><path transform="matrix(2 0 0 1.5 5 5)" d="M0 0L60 0A9 9 0 01100 0C1 2 3 4 5 6Q1 2 3 4Z"/></g>',
    ),
    whole(
      '<defs><rect id="r" width="9" height="9" rx="2"/></defs><use href="#r" x="5"/><ellipse rx="9" ry="5" cx="40" cy="40"/>',
    ),
    '<svg width="612pt" height="792pt" viewBox="0 0 612 792"><polygon points="0,0 9,0 9,9" style="fill:none;stroke:red"/></svg>',
  ]
  fc.assert(
    fc.property(mutated(drawings), units, (text, unit) => expectSound(readLoops({ name: 'a', text, unit }))),
    { numRuns: 300 },
  )
})
