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

/** Rows below the head of a CSV; a line break within quotes ends none. */
const rowsOf = (csv: string) =>
  csv
    .replace(/"[^"]*"/g, '')
    .trim()
    .split('\n').length - 1

test('every table of a mould’s page and of a plan’s page goes out, with the rows that the page shows', async () => {
  const page = await desktop()
  await actAs(page, 'viewer')
  const out = async () => {
    const links = page.locator('.table-out a')
    const hrefs = await links.evaluateAll((found) => found.map((link) => link.getAttribute('href') ?? ''))
    const rows = new Map<string, number>()
    for (const href of hrefs) {
      const answer = await page.context().request.get(new URL(href, page.url()).href)
      expect(answer.status(), href).toBe(200)
      const [, name = ''] = /^\/out\/([a-z-]+)\.csv\?/.exec(href) ?? []
      if (name !== '') rows.set(name, rowsOf(await answer.text()))
    }
    return rows
  }
  await page.goto('/moulds/LH-P')
  const ofMould = await out()
  expect([...ofMould.keys()].sort()).toEqual(['log', 'open-matters', 'patches', 'pulls', 'release'])
  const fitting = await page
    .locator('#history')
    .getByRole('link', { name: /^Show more of \d+ entries$/ })
    .textContent()
  expect(`Show more of ${ofMould.get('log')} entries`).toBe(fitting)
  expect(ofMould.get('open-matters')).toBe(await page.locator('.matter-line').count())

  await page.getByRole('link', { name: 'Patch 2', exact: true }).first().click()
  await page.getByRole('heading', { name: /^Job lines/ }).waitFor()
  const ofPlan = await out()
  expect([...ofPlan.keys()].sort()).toEqual(['findings', 'job-lines', 'patch-plies', 'take-off'])
  expect(ofPlan.get('job-lines')).toBe(await page.locator('ol.job-lines > li').count())
  expect(ofPlan.get('patch-plies')).toBe(
    await page.getByRole('region', { name: 'Plies in laying order' }).locator('tbody tr').count(),
  )
  await page.context().close()
})

test('a hit deep in a long history is shown on the page that holds it, and marked', async () => {
  const page = await desktop()
  await actAs(page, 'viewer')
  await page.goto('/moulds/LH-P?all=yes')
  const oldest = page.locator('#history tbody tr').last()
  const id = ((await oldest.getAttribute('id')) ?? '').replace('entry-', '')
  await page.goto('/moulds/LH-P')
  expect(await page.locator(`#entry-${id}`).count()).toBe(0)
  await page.goto(`/moulds/LH-P?entry=${id}#entry-${id}`)
  const marked = page.locator('#history tr[aria-current]')
  expect(await marked.getAttribute('id')).toBe(`entry-${id}`)
  const seen = await marked.evaluate((row) => {
    const { top, bottom } = row.getBoundingClientRect()
    return top >= 0 && bottom <= window.innerHeight
  })
  expect(seen).toBe(true)
  await page.context().close()
})

test('a form that is opened before signing in is what the sign-in leads back to', async () => {
  const page = await desktop()
  await page.goto('/moulds/LH-P/edit')
  expect(new URL(page.url()).searchParams.get('to')).toBe('/moulds/LH-P/edit')
  await page.context().close()
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
