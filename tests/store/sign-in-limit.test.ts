import { describe, expect, test } from 'vitest'
import { auth } from '#lib/store/auth'
import { signInLimit } from '#lib/store/sign-in-limit'
import { POST } from '../../app/api/auth/[...all]/route'
import { book, firstLead, password } from './book'

book()

const second = 1000

describe('the rule', () => {
  test('three tries from one address in ten seconds, whatever the account', () => {
    const limit = signInLimit()
    for (const account of ['a', 'b', 'c']) expect(limit.attempt('10.0.0.1', account, 0)).toBe(0)
    expect(limit.attempt('10.0.0.1', 'd', 4 * second)).toBe(6)
    expect(limit.attempt('10.0.0.2', 'd', 4 * second)).toBe(0)
    expect(limit.attempt('10.0.0.1', 'd', 10 * second)).toBe(0)
  })

  test('five tries for one account in a minute, from wherever, whatever its case; a success forgives', () => {
    const limit = signInLimit()
    for (let n = 0; n < 5; n += 1)
      expect(limit.attempt(`10.0.1.${n}`, ' Ada@Shop.example', n * second)).toBe(0)
    expect(limit.attempt('10.0.2.1', 'ada@shop.example', 30 * second)).toBe(30)
    expect(limit.attempt('10.0.2.1', 'ben@shop.example', 30 * second)).toBe(0)
    expect(limit.attempt('10.0.2.9', 'ada@shop.example', 60 * second)).toBe(0)
    limit.succeeded('ADA@shop.example')
    expect(limit.attempt(null, 'ada@shop.example', 60 * second)).toBe(0)
  })

  test('a refused try costs nothing: waiting ends when it was said to', () => {
    const limit = signInLimit()
    for (let n = 0; n < 3; n += 1) limit.attempt('a', 'x', 0)
    for (let n = 1; n < 9; n += 1) expect(limit.attempt('a', 'x', n * second)).toBe(10 - n)
    expect(limit.attempt('a', 'x', 10 * second)).toBe(0)
  })

  test('without an address the account alone counts', () => {
    const limit = signInLimit()
    for (let n = 0; n < 5; n += 1) expect(limit.attempt(null, 'x', n)).toBe(0)
    expect(limit.attempt(null, 'x', 9)).toBeGreaterThan(0)
  })
})

describe('both doors', () => {
  const byRoute = (email: string, address: string) =>
    POST(
      new Request('http://shop.example:3000/api/auth/sign-in/email', {
        method: 'POST',
        headers: {
          host: 'shop.example:3000',
          origin: 'http://shop.example:3000',
          'content-type': 'application/json',
          'x-forwarded-for': address,
        },
        body: JSON.stringify({ email, password: 'not the password at all' }),
      }),
    )
  const byForm = (email: string, secret: string) =>
    auth()
      .api.signInEmail({ body: { email, password: secret } })
      .then(
        () => 'in',
        (error: { body?: { waitS?: number } }) => error.body?.waitS ?? 'refused',
      )

  test('the route refuses with 429 and says how long to wait', async () => {
    const answers = []
    for (let n = 0; n < 4; n += 1) answers.push(await byRoute(`nobody${n}@shop.example`, '10.1.1.1'))
    expect(answers.map(({ status }) => status)).toEqual([401, 401, 401, 429])
    expect(Number(answers[3]?.headers.get('retry-after'))).toBeGreaterThan(0)
    expect(await answers[3]?.json()).toMatchObject({
      message: expect.stringMatching(/^Too many tries.*Wait \d+ seconds/),
    })
  })

  test('tries at the form and at the route count together for an account; then even the right password waits', async () => {
    for (let n = 0; n < 3; n += 1)
      expect(await byForm(firstLead.email, 'wrong password here')).toBe('refused')
    for (let n = 0; n < 2; n += 1) expect((await byRoute(firstLead.email, `10.2.1.${n}`)).status).toBe(401)
    expect(await byForm(firstLead.email.toUpperCase(), password)).toBeGreaterThan(0)
  })

  test('who gets in begins anew', async () => {
    const email = 'Ben@shop.example'
    for (let round = 0; round < 3; round += 1) {
      for (let n = 0; n < 3; n += 1) expect(await byForm(email, 'wrong password here')).toBe('refused')
      expect(await byForm(email, password)).toBe('in')
    }
  })
})
