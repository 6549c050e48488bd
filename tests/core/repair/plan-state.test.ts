import { describe, expect, test } from 'vitest'
import { becauseKey, mayMove, movesFrom, planStates, signable } from '#lib/core/repair/index'
import type { Finding } from '#lib/core/result'

const finding = (
  code: string,
  severity: Finding['severity'],
  place: string | null = 'floor B5',
): Finding => ({
  code,
  severity,
  text: `${code}.`,
  place,
  cure: null,
})
const free = { findings: [], becauses: {}, jobLines: [], ticked: [], reason: null }

describe('signing', () => {
  test('a stop is never signed, whatever is said', () => {
    const stop = finding('opening-leaves-area', 'stop')
    expect(signable([stop], { [becauseKey(stop)]: 'we like it so' })).toMatchObject({ ok: false })
  })

  test('every look needs a because of its own, and blanks do not count', () => {
    const looks = [
      finding('thickness-off', 'look'),
      finding('footprint-on-flange', 'look', 'floor C2, flange aft'),
    ]
    expect(signable(looks, {})).toMatchObject({
      ok: false,
      reason: expect.stringMatching(/thickness-off.*1 more/),
    })
    const one = { [becauseKey(looks[0]!)]: 'counted at the trim: six plies' }
    expect(signable(looks, one)).toMatchObject({
      ok: false,
      reason: expect.stringContaining('footprint-on-flange'),
    })
    expect(signable(looks, { ...one, [becauseKey(looks[1]!)]: '  ' })).toMatchObject({ ok: false })
    expect(signable(looks, { ...one, [becauseKey(looks[1]!)]: 'flange rebuilt with it' })).toEqual({
      ok: true,
    })
  })

  test('the same code at two places is two matters', () => {
    const looks = [
      finding('footprint-on-bush', 'look', 'floor B5, D1'),
      finding('footprint-on-bush', 'look', 'floor B6, D2'),
    ]
    expect(signable(looks, { [becauseKey(looks[0]!)]: 'bush renewed' })).toMatchObject({ ok: false })
  })

  test('notes need nothing', () => {
    expect(signable([finding('stack-not-mirrored', 'note', null)], {})).toEqual({ ok: true })
  })
})

describe('moving a plan', () => {
  test('a good plan goes from sketched to proved', () => {
    const way = ['sketched', 'signed', 'on the bench', 'laid', 'proved'] as const
    for (const [index, state] of way.slice(0, -1).entries()) {
      expect(mayMove(state, way[index + 1]!, free)).toEqual({ ok: true })
    }
  })

  test('signing looks at the findings', () => {
    expect(mayMove('sketched', 'signed', { ...free, findings: [finding('x', 'stop')] })).toMatchObject({
      ok: false,
    })
  })

  test('laid waits for the lines before dressing, proved for all of them', () => {
    const jobLines = ['cut', 'cure', 'dress', 'proof-pull'].map((code) => ({ code, title: code }))
    const facts = { ...free, jobLines }
    expect(mayMove('on the bench', 'laid', facts)).toMatchObject({
      ok: false,
      reason: expect.stringContaining('cut and 1 more'),
    })
    expect(mayMove('on the bench', 'laid', { ...facts, ticked: ['cure', 'cut'] })).toEqual({ ok: true })
    expect(mayMove('laid', 'proved', { ...facts, ticked: ['cut', 'cure', 'dress'] })).toMatchObject({
      ok: false,
    })
    expect(mayMove('laid', 'proved', { ...facts, ticked: jobLines.map((line) => line.code) })).toEqual({
      ok: true,
    })
    expect(mayMove('signed', 'on the bench', facts)).toEqual({ ok: true })
  })

  test('a signed plan is not sketched again: it is put by with a reason, and a new version stands beside it', () => {
    for (const state of ['signed', 'on the bench', 'laid', 'proved', 'put by'] as const) {
      expect(mayMove(state, 'sketched', { ...free, reason: 'opening was too small' }).ok).toBe(false)
    }
    expect(mayMove('signed', 'put by', free)).toMatchObject({
      ok: false,
      reason: expect.stringContaining('say why'),
    })
    expect(mayMove('signed', 'put by', { ...free, reason: 'opening was too small' })).toEqual({ ok: true })
  })

  test('what is not among the moves is refused in words, for every pair', () => {
    for (const from of planStates) {
      for (const to of planStates) {
        const known = movesFrom(from).some((move) => move.to === to)
        const answer = mayMove(from, to, { ...free, reason: 'because' })
        expect(answer.ok).toBe(known)
        if (!answer.ok) expect(answer.reason).toMatch(new RegExp(`${from} can't become ${to}`))
      }
    }
    expect(movesFrom('proved')).toEqual([])
  })
})
