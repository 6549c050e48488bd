import { randomUUID } from 'node:crypto'
import type { Page, Request } from 'playwright-core'
import { expect, inject, test } from 'vitest'
import { desktop } from '#tests/support/browser'
import { actAs, fill, press, told } from './steps'

const otherName = inject('appUrl').replace('localhost', '127.0.0.1')

test('the shop is reached under two names: signing in and writing work under both', async () => {
  const hand = inject('appAccounts').find((account) => account.role === 'laminator')!
  for (const origin of [inject('appUrl'), otherName]) {
    const page = await desktop()
    await page.goto(`${origin}/moulds/LH-B/log/note`)
    await fill(page, 'E-mail', hand.email)
    await fill(page, 'Password', hand.password)
    await press(page, 'Sign in')
    // Who was sent to the sign-in comes back to where they wanted to go.
    await page.getByRole('button', { name: 'Write it down' }).waitFor()
    expect(page.url()).toBe(`${origin}/moulds/LH-B/log/note`)
    const words = `under ${new URL(origin).hostname}, ${randomUUID()}`
    await fill(page, 'Note', words)
    await press(page, 'Write it down')
    await told(page, 'Written: Note')
    await told(page, words)
  }
})

test('a form sent from a foreign page is refused, with the session of somebody who may write', async () => {
  const page = await desktop()
  await actAs(page, 'laminator')
  const words = `from elsewhere, ${randomUUID()}`
  await page.goto('/moulds/LH-B/log/note')
  await fill(page, 'Note', words)
  // What the form sends is held back, and sent as a foreign page would send it; then as our own.
  const held = new Promise<Request>((resolve) => {
    page.route('**/moulds/LH-B/log/note', async (route) => {
      if (route.request().method() !== 'POST') return route.continue()
      await route.abort()
      resolve(route.request())
    })
  })
  await press(page, 'Write it down')
  await told(page, /No answer from the shop. What you typed is still here/)
  expect(await page.getByLabel('Note').inputValue()).toBe(words)
  const request = await held
  const send = (origin: string) =>
    page.request.post(request.url(), {
      headers: { ...request.headers(), origin },
      data: request.postDataBuffer()!,
      maxRedirects: 0,
    })
  expect((await send('http://elsewhere.example')).status()).toBeGreaterThanOrEqual(400)
  expect(await isWritten(page, words)).toBe(false)
  expect((await send(inject('appUrl'))).status()).toBeLessThan(400)
  expect(await isWritten(page, words)).toBe(true)
})

test('the door of the accounts is closed to a foreign page', async () => {
  const page = await desktop()
  await actAs(page, 'laminator')
  const out = await page.request.post('/api/auth/sign-out', {
    data: {},
    headers: { origin: 'http://elsewhere.example' },
  })
  expect(out.status()).toBe(403)
  await page.goto('/moulds/LH-B')
  await page.getByRole('heading', { level: 1 }).waitFor()
  const up = await page.request.post('/api/auth/sign-up/email', {
    data: { email: 'new@example.org', password: 'long enough for this', name: 'Nobody' },
    headers: { origin: inject('appUrl') },
  })
  expect(up.status()).toBeGreaterThanOrEqual(400)
})

test("a write to the interface with somebody else's session is refused", async () => {
  const page = await desktop()
  await actAs(page, 'laminator')
  const words = `by the interface, ${randomUUID()}`
  const entry = {
    id: randomUUID(),
    kind: 'note',
    areaId: null,
    patchId: null,
    doneOn: new Date(Date.now() - 86_400_000).toISOString().slice(0, 10),
    doneAt: null,
    precision: 'day',
    correctsId: null,
    note: words,
    sawVersion: null,
    data: {},
  }
  const send = (origin: string) =>
    page.request.post('/api/v1/moulds/LH-B/log', { headers: { origin }, data: entry })
  const refused = await send('http://elsewhere.example')
  expect(refused.status()).toBe(403)
  expect(refused.headers()['content-type']).toContain('application/problem+json')
  expect(await isWritten(page, words)).toBe(false)
  expect((await send(inject('appUrl'))).status()).toBe(201)
  expect(await isWritten(page, words)).toBe(true)
})

async function isWritten(page: Page, words: string): Promise<boolean> {
  await page.goto('/moulds/LH-B')
  await page.getByRole('heading', { level: 1 }).waitFor()
  return (await page.locator('main').getByText(words).count()) > 0
}
