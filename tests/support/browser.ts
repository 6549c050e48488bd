import { type Browser, chromium, type Page } from 'playwright-core'
import { afterAll, inject } from 'vitest'
import { installedChromium } from '#lib/platform/chromium.js'

/** Headless, quiet towards the network, and able to run as root. */
const flags = [
  '--no-sandbox',
  '--disable-gpu',
  '--disable-quic',
  '--no-first-run',
  '--disable-background-networking',
  '--disable-component-update',
  '--disable-sync',
]

let browser: Promise<Browser> | null = null

afterAll(async () => {
  const open = await browser
  browser = null
  await open?.close()
})

/** A page of its own, with nobody signed in, as a desktop shows it. */
export function desktop(): Promise<Page> {
  return newPage({ viewport: { width: 1360, height: 900 } })
}

/** The same on a phone with a touch screen. */
export function phone(): Promise<Page> {
  return newPage({
    viewport: { width: 390, height: 844 },
    deviceScaleFactor: 2,
    isMobile: true,
    hasTouch: true,
  })
}

/**
 * Signs somebody of this role in, without going through the form, and leaves the page where it is.
 * @throws Error when the demo shop has nobody of this role, or the app refuses the password
 */
export async function signIn(page: Page, role: 'lead' | 'laminator' | 'viewer'): Promise<void> {
  const account = inject('appAccounts').find((one) => one.role === role)
  if (account === undefined) throw new Error(`the demo shop has no ${role}`)
  const url = inject('appUrl')
  const answer = await page.context().request.post(`${url}/api/auth/sign-in/email`, {
    data: { email: account.email, password: account.password },
    headers: { origin: url },
  })
  if (!answer.ok())
    throw new Error(`signing in as ${role} was answered ${answer.status()}: ${await answer.text()}`)
}

const mishaps = new WeakMap<Page, string[]>()

/** What went wrong on a page so far without its being shown: script errors, console errors, answers of 500 and up. */
export function mishapsOn(page: Page): readonly string[] {
  return mishaps.get(page) ?? []
}

async function newPage(options: NonNullable<Parameters<Browser['newContext']>[0]>): Promise<Page> {
  browser ??= launch()
  const context = await (await browser).newContext({ ...options, baseURL: inject('appUrl'), locale: 'en-GB' })
  const page = await context.newPage()
  const seen: string[] = []
  mishaps.set(page, seen)
  page.on('pageerror', (error) => seen.push(error.message))
  page.on('console', (message) => {
    if (message.type() === 'error') seen.push(`${message.text()} ${message.location().url}`.trim())
  })
  page.on('response', (response) => {
    if (response.status() >= 500) seen.push(`${response.status()} ${response.url()}`)
  })
  return page
}

function launch(): Promise<Browser> {
  const executablePath = installedChromium(process.env)
  if (executablePath === null) throw new Error('No Chromium found; "npm run test:browser" looks further.')
  return chromium.launch({ executablePath, headless: true, args: flags })
}
