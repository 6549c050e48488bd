import { describe, expect, test } from 'vitest'
import { defaultKinds, readStartFlags, readTestFlags, readTokenFlags } from '#lib/platform/flags.js'

describe('flags of npm start', () => {
  test('nothing given: port 3000, this machine only, the shop as before', () => {
    expect(readStartFlags([], {})).toEqual({ shop: 'as before', lan: false, port: 3000, help: false })
  })

  test('flags after -- are read', () => {
    expect(readStartFlags(['--empty', '--lan'], { PORT: '3001' })).toMatchObject({
      shop: 'own',
      lan: true,
      port: 3001,
    })
    expect(readStartFlags(['--demo'], {}).shop).toBe('demo')
  })

  test('flags that npm swallowed still count', () => {
    expect(readStartFlags([], { npm_config_empty: 'true', npm_config_lan: 'true' })).toMatchObject({
      shop: 'own',
      lan: true,
    })
  })

  test('an unknown flag is named, with those that are known', () => {
    expect(() => readStartFlags(['--emtpy'], {})).toThrow(/"--emtpy".*--empty/)
  })

  test('an empty shop and the demo shop at once are refused', () => {
    expect(() => readStartFlags(['--empty', '--demo'], {})).toThrow(/not both/)
  })

  test.each(['0', '65536', '3000.5', 'abc', '-1'])(
    'PORT=%s is refused with the figure and an example',
    (port) => {
      expect(() => readStartFlags([], { PORT: port })).toThrow(`"${port}". For example: PORT=3001 npm start`)
    },
  )

  test('a blank PORT is no PORT', () => {
    expect(readStartFlags([], { PORT: ' ' }).port).toBe(3000)
  })
})

describe('flags of npm run token', () => {
  test('name and role, by space or by =', () => {
    expect(readTokenFlags(['--name', 'scale in the shop', '--role=viewer'])).toEqual({
      name: 'scale in the shop',
      role: 'viewer',
    })
  })

  test.each([
    [[], /needs a name/],
    [['--name', 'x'], /needs a role: lead, laminator, viewer/],
    [['--name', 'x', '--role', 'chief'], /needs a role/],
    [['--name'], /--name needs a value/],
    [['--nmae', 'x'], /"--nmae" is not known/],
  ])('%j is refused', (words, sentence) => {
    expect(() => readTokenFlags(words)).toThrow(sentence)
  })
})

describe('words of npm test', () => {
  test('nothing given: the whole, which leaves out only the long runs', () => {
    expect(readTestFlags([])).toEqual({ kinds: defaultKinds, whole: true, only: [] })
    expect(defaultKinds).not.toContain('long')
  })

  test('a kind, and words that narrow it down', () => {
    expect(readTestFlags(['core', 'scarf'])).toEqual({ kinds: ['core'], whole: false, only: ['scarf'] })
    expect(readTestFlags(['long']).kinds).toEqual(['long'])
  })

  test('an unknown kind is refused', () => {
    expect(() => readTestFlags(['unit'])).toThrow(/no kind of test called "unit".*core, reference/)
  })
})
