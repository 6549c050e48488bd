import { randomBytes } from 'node:crypto'
import type { Locator, Page } from 'playwright-core'
import { expect, vi } from 'vitest'
import { signIn } from '#tests/support/browser'

/** A code that no other test uses. */
export function freshCode(begin: string): string {
  return `${begin}-${randomBytes(3).toString('hex').toUpperCase()}`
}

/** The button of this name, pressed; then the page that it leads to, or the same one with an answer. */
export async function press(page: Page | Locator, name: string | RegExp): Promise<void> {
  await page.getByRole('button', { name, exact: typeof name === 'string' }).click()
}

/** The choice of a group of radio buttons, by the words that stand beside it. */
export async function choose(page: Page, group: string | RegExp, option: string | RegExp): Promise<void> {
  await page
    .getByRole('group', { name: group })
    .getByRole('radio', { name: option, exact: typeof option === 'string' })
    .check()
}

/** The field of this name, whatever unit stands beside the name. */
export function field(page: Page | Locator, label: string | RegExp): Locator {
  const named = typeof label === 'string' ? new RegExp(`^${label.replace(/[.()]/g, '\\$&')}( \\S+)?$`) : label
  return page.getByLabel(named).filter({ visible: true })
}

export async function fill(page: Page | Locator, label: string | RegExp, text: string): Promise<void> {
  await field(page, label).fill(text)
}

/** The option of a select that begins with these words. */
export async function pick(page: Page, label: string, begins: string): Promise<void> {
  const select = field(page, label)
  const options = await select.locator('option').allInnerTexts()
  await select.selectOption({ label: options.find((option) => option.startsWith(begins)) ?? begins })
}

/** Waits until a status or an alert says this. */
export async function told(page: Page, words: string | RegExp): Promise<void> {
  await page.locator('main').getByText(words).first().waitFor()
}

const kept = new Map<string, Awaited<ReturnType<ReturnType<Page['context']>['cookies']>>>()

/** Signs somebody of this role in; once a file, since the shop takes only a few sign-ins in ten seconds. */
export async function actAs(page: Page, role: 'lead' | 'laminator' | 'viewer'): Promise<void> {
  const cookies = kept.get(role)
  if (cookies) return page.context().addCookies(cookies)
  await vi.waitFor(() => signIn(page, role), { timeout: 25_000, interval: 3000 })
  kept.set(role, await page.context().cookies())
}

/** Adds a mould with the stack M181, off the pattern of the lower hull, with a face area of 1200 by 800 mm. */
export async function addMould(page: Page, code: string): Promise<void> {
  await page.goto('/moulds/new')
  await fill(page, 'Code', code)
  await fill(page, 'Name', 'Test tray')
  await pick(page, 'Off pattern', 'LH-PAT,')
  await pick(page, 'Stack', 'M181,')
  await fill(page, 'In use, under pressure', '160')
  await fill(page, 'Free-standing', '200')
  await press(page, 'Add the mould')
  await page.getByRole('heading', { level: 1, name: 'Test tray' }).waitFor()
  await page.getByRole('link', { name: 'Add an area' }).first().click()
  await fill(page, 'Name', 'floor')
  await fill(page, 'Length along u', '1200')
  await fill(page, 'Width along v', '800')
  await press(page, 'Add the area')
  await page.waitForURL(`**/moulds/${code}?area=*`)
}

/** The lines of a mould's history as text, newest first. */
export async function history(page: Page, code: string): Promise<string[]> {
  await page.goto(`/moulds/${code}`)
  const section = page.locator('section', { has: page.getByRole('heading', { name: 'History' }) })
  return section.locator('tbody tr').allInnerTexts()
}

/** What stands there, in one line. */
export async function words(place: Locator): Promise<string> {
  return ((await place.textContent()) ?? '').replace(/\s+/g, ' ').trim()
}

/** What the sheet's stamp says: the state, and right after it the reason. */
export async function stamp(page: Page): Promise<string> {
  return words(page.locator('.stamp').first())
}

/** Fails with what the page itself complained of. */
export function noMishaps(mishaps: readonly string[]): void {
  expect(mishaps).toEqual([])
}
