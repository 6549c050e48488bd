import { writeFileSync } from 'node:fs'
import { join } from 'node:path'
import type { Page } from 'playwright-core'
import { afterAll, beforeAll, expect, inject, test } from 'vitest'
import { freePort } from '#lib/platform/free-port.js'
import { throwawayFolder } from '#lib/platform/throwaway-server.js'
import { startWebServer } from '#lib/platform/web-server.js'
import { desktop, mishapsOn } from '#tests/support/browser'
import { migratedDatabase, type TestDatabase } from '#tests/support/database'
import { fill, noMishaps, press, told } from './steps'

const oneTimeCode = 'HERON-4471'
let empty: { readonly url: string; readonly database: TestDatabase; readonly stop: () => Promise<void> }

beforeAll(async () => {
  empty = await emptyShop()
})

afterAll(async () => {
  await empty.stop()
  await empty.database.drop()
})

/** The built app on an empty database, as it stands after its first start. */
async function emptyShop(): Promise<typeof empty> {
  const database = await migratedDatabase(inject('appDatabase'))
  const folder = await throwawayFolder('empty')
  const secrets = join(folder, 'secrets.json')
  writeFileSync(secrets, JSON.stringify({ firstLeadCode: oneTimeCode }))
  const port = await freePort()
  const web = await startWebServer(process.cwd(), {
    host: '127.0.0.1',
    port,
    log: join(folder, 'web.log'),
    env: {
      DATABASE_URL: database.url,
      BETTER_AUTH_SECRET: 'only for this test, and long enough',
      MOULDWRIGHT_SECRETS: secrets,
    },
    onProcess: () => {},
  })
  return { url: `http://localhost:${port}`, database, stop: web.stop }
}

test('an empty shop is set up by whoever holds the one-time code, once', async () => {
  const page = await desktop()
  await page.goto(`${empty.url}/moulds`)
  await page.getByRole('heading', { name: 'Set up the shop' }).waitFor()
  await fill(page, 'One-time code', 'HERON-0000')
  await fill(page, 'Name of the shop', 'Shed at the quay')
  await fill(page, 'Time zone', 'Europe/Oslo')
  await fill(page, 'Your name', 'Ada Quill')
  await fill(page, 'Initials', 'AQ')
  await fill(page, 'E-mail', 'ada@example.org')
  await fill(page, 'Password', 'short')
  await press(page, 'Set it up')
  await told(page, /At least 12 signs/)
  expect(await page.getByLabel('Your name').inputValue()).toBe('Ada Quill')
  await fill(page, 'Password', 'a sentence of my own')
  await press(page, 'Set it up')
  await told(page, 'That is not the code that the start printed')
  await fill(page, 'One-time code', ` ${oneTimeCode.toLowerCase()} `)
  await fill(page, 'Password', 'a sentence of my own')
  await press(page, 'Set it up')
  await page.getByRole('heading', { level: 1, name: 'Bench' }).waitFor()
  await told(page, 'Shed at the quay')
  noMishaps(mishapsOn(page))

  const second = await desktop()
  await second.goto(`${empty.url}/first-lead`)
  await second.getByRole('button', { name: 'Sign in' }).waitFor()
  await everyEmptyScreenOffersTheFirstAct(page)
})

async function everyEmptyScreenOffersTheFirstAct(page: Page): Promise<void> {
  const acts = [
    ['/', 'Add the first mould'],
    ['/moulds', 'Add the first mould'],
    ['/patterns', 'Add the first pattern'],
    ['/sets', 'Add the first split mould'],
    ['/parts', 'Add the part'],
    ['/stores', 'Add a material'],
    ['/patches', 'Plan a patch'],
  ] as const
  for (const [address, act] of acts) {
    await page.goto(empty.url + address)
    const offers = page.getByRole('link', { name: act }).or(page.getByRole('button', { name: act }))
    expect(await offers.count(), address).toBeGreaterThan(0)
    expect(await page.locator('main .empty').count(), address).toBeGreaterThan(0)
  }
  await page.goto(`${empty.url}/stores/stacks/new`)
  await told(page, 'A stack is made of materials')
}
