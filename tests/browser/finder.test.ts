import postgres from 'postgres'
import { afterAll, beforeAll, describe, expect, inject, test } from 'vitest'
import { startApp, type TestApp } from '#tests/support/app'
import { desktop, mishapsOn, phone } from '#tests/support/browser'
import { actAs, fill, freshCode, noMishaps, press } from './steps'

describe('search', () => {
  test('by keyboard from any page: slash, a few letters, arrow, Enter; Escape leaves', async () => {
    const page = await desktop()
    await actAs(page, 'laminator')
    await page.goto('/stores')
    const box = page.getByRole('combobox', { name: 'Find anything in the book' })
    // Until the script has loaded the key does nothing.
    await expect
      .poll(async () => {
        await page.keyboard.press('/')
        return box.evaluate((node) => node === document.activeElement)
      })
      .toBe(true)
    await page.keyboard.type('canopy')
    const options = page.getByRole('option')
    await options.filter({ hasText: 'CR-1' }).first().waitFor()
    expect(await box.getAttribute('aria-expanded')).toBe('true')
    await page.keyboard.press('ArrowDown')
    const first = options.first()
    expect(await first.getAttribute('aria-selected')).toBe('true')
    expect(await box.getAttribute('aria-activedescendant')).toBe(await first.getAttribute('id'))
    await page.keyboard.press('Escape')
    expect(await box.getAttribute('aria-expanded')).toBe('false')
    await page.keyboard.press('Escape')
    expect(await box.evaluate((node) => node === document.activeElement)).toBe(false)
    await page.keyboard.press('/')
    await page.keyboard.press('ArrowDown')
    await page.keyboard.press('Enter')
    await page.waitForURL('**/moulds/CR-1')
    noMishaps(mishapsOn(page))
    await page.context().close()
  })

  test('a whole code and Enter leads straight to its page, whatever its case', async () => {
    const page = await desktop()
    await actAs(page, 'viewer')
    await page.goto('/patches')
    const box = page.getByRole('combobox', { name: 'Find anything in the book' })
    await box.fill('lh-p')
    await box.press('Enter')
    await page.waitForURL('**/moulds/LH-P')
    await page.context().close()
  })

  test('a slip of typing is taken for what was meant, and told', async () => {
    const page = await desktop()
    await actAs(page, 'viewer')
    await page.goto('/find?q=canpoy%20rnig')
    await page.getByText('Did you mean').waitFor()
    await page.getByRole('link', { name: /^CR-1/ }).first().waitFor()
    await page.goto('/find?q=xylophone')
    await page.getByText('Nothing in the book has “xylophone”').waitFor()
    await page.context().close()
  })

  test('on a phone, and before any script has loaded', async () => {
    const page = await phone()
    await actAs(page, 'laminator')
    await page.route('**/*.js', (route) => route.abort())
    await page.goto('/patches')
    const box = page.getByRole('combobox', { name: 'Find anything in the book' })
    expect((await box.boundingBox())?.width).toBeGreaterThan(120)
    await box.fill('hull port')
    await box.press('Enter')
    await page.waitForURL('**/find?q=hull+port')
    await page.getByRole('link', { name: /^LH-P/ }).first().waitFor()
    const wide = await page.evaluate(() => document.documentElement.scrollWidth - window.innerWidth)
    expect(wide).toBeLessThanOrEqual(0)
    await page.context().close()
  })
})

test('a token is made on People, opens the API, and is refused once it is ended', async () => {
  const page = await desktop()
  await actAs(page, 'lead')
  await page.goto('/people')
  const name = freshCode('logger')
  await fill(page, 'What it is for', name)
  await page
    .locator('#tokens')
    .getByRole('radio', { name: /^viewer/ })
    .check()
  await press(page, 'Make it')
  const token = await page.getByLabel('Token', { exact: true }).inputValue()
  expect(token).toMatch(/^mw_[A-Za-z0-9_-]{43}$/)
  const call = () =>
    fetch(`${inject('appUrl')}/api/v1/find?q=LH-P`, { headers: { authorization: `Bearer ${token}` } })
  expect((await call()).status).toBe(200)
  await page.getByText('back to the tokens').click()
  const line = page.locator('.tokens li', { hasText: name })
  await line.getByText(/last used/).waitFor()
  expect(await page.content()).not.toContain(token)
  await line.getByText('End it').click()
  await press(line, `End “${name}”`)
  await page.getByText(/tokens? (was|were) ended/).waitFor()
  await expect.poll(async () => (await call()).status).toBe(401)
  noMishaps(mishapsOn(page))
  await page.context().close()
})

test('too many tries at the sign-in form are told with the time to wait', async () => {
  const page = await desktop()
  await page.goto('/sign-in')
  for (let tries = 0; tries < 8; tries += 1) {
    await fill(page, 'E-mail', 'nobody@example.org')
    await fill(page, 'Password', 'not a password of anybody')
    await press(page, 'Sign in')
    const said = page.getByRole('alert').filter({ hasText: /do not go together|Wait \d+ second/ })
    await said.waitFor()
    if (/Wait \d+ second/.test((await said.textContent()) ?? '')) return page.context().close()
    await page.reload()
  }
  throw new Error('never told to wait')
})

describe('leaving the demo shop', () => {
  let app: TestApp
  let sql: postgres.Sql
  beforeAll(async () => {
    // A shop of its own: the other tests need theirs.
    app = await startApp()
    sql = postgres(app.database, { max: 1, onnotice: () => {} })
  }, 120_000)
  afterAll(async () => {
    await sql?.end()
    await app?.stop()
  }, 60_000)

  test('says what goes and stays, asks for the name, empties it, and the lead goes on in an own shop', async () => {
    const page = await desktop()
    const lead = app.accounts.find(({ role }) => role === 'lead')
    const { status } = await page
      .context()
      .request.post(`${app.url}/api/auth/sign-in/email`, {
        data: { email: lead?.email, password: lead?.password },
        headers: { origin: app.url },
      })
      .then((answer) => ({ status: answer.status() }))
    expect(status).toBe(200)
    await page.goto(`${app.url}/people`)
    await page.getByRole('link', { name: 'Leave the demo shop' }).click()
    const [demo] =
      await sql`select (select count(*)::int from mould) as moulds, (select name from shop) as name`
    await page.getByText(`${demo?.moulds} moulds with their faces`).waitFor()

    await fill(page, 'Name of your shop', 'Quayside Composites')
    const confirm = page.getByLabel(/^Type the name of the demo shop/)
    await confirm.fill('some other shop')
    await press(page, 'Empty the demo and begin')
    await page.getByRole('alert').getByText('Nothing was emptied').waitFor()
    expect(await page.getByLabel('Name of your shop').inputValue()).toBe('Quayside Composites')
    expect(await sql`select count(*)::int as moulds from mould`).toEqual([{ moulds: demo?.moulds }])

    await confirm.fill(demo?.name)
    await page.getByRole('button', { name: 'Empty the demo and begin' }).dblclick()
    await page.getByText('This is Quayside Composites now, and its book is empty.').waitFor()
    expect(
      await sql`select (select count(*)::int from mould) as moulds, (select count(*)::int from log_entry) as entries`,
    ).toEqual([{ moulds: 0, entries: 0 }])
    await page.goto(`${app.url}/`)
    await page.getByText('The book is empty').waitFor()
    expect(await page.getByText('This is the demo shop').count()).toBe(0)
    await page.goto(`${app.url}/people/leave-demo`)
    await page.getByText('This is no demo shop').waitFor()
    noMishaps(mishapsOn(page))
    await page.context().close()
  }, 120_000)
})
