import type { Page } from 'playwright-core'
import { expect, inject, test } from 'vitest'
import { desktop } from '#tests/support/browser'
import { choose, field, fill, press, told } from './steps'

async function withoutScript(): Promise<Page> {
  const browser = (await desktop()).context().browser()!
  const context = await browser.newContext({
    baseURL: inject('appUrl'),
    javaScriptEnabled: false,
    locale: 'en-GB',
  })
  return context.newPage()
}

test('signing in, a refusal and a pull need no script', async () => {
  const page = await withoutScript()
  const hand = inject('appAccounts').find((account) => account.role === 'laminator')!
  await page.goto('/m/MP-L')
  await fill(page, 'E-mail', hand.email)
  await fill(page, 'Password', 'wrong for sure')
  await press(page, 'Sign in')
  await told(page, 'E-mail address and password do not go together')
  expect(await field(page, 'E-mail').inputValue()).toBe(hand.email)
  await fill(page, 'Password', hand.password)
  await press(page, 'Sign in')
  // Back at the mould that was asked for.
  await page.getByRole('heading', { level: 1, name: 'Mirror pod, port' }).waitFor()
  await page.goto('/moulds/MP-L?kind=pull')
  const before = await page.getByText('Pull, forced').count()
  await page.goto('/m/MP-L')
  await page.getByRole('link', { name: /^Pull/ }).click()
  await choose(page, /How it came out/, 'forced')
  await fill(page, 'Cured at', 'hot')
  await press(page, 'Write it down')
  await told(page, 'One field needs attention')
  expect(await field(page, 'Cured at').inputValue()).toBe('hot')
  expect(await page.getByRole('radio', { name: 'forced' }).isChecked()).toBe(true)
  await fill(page, 'Cured at', '120')
  // Pressed twice, since nothing seemed to happen: stored once.
  await page.getByRole('button', { name: 'Write it down' }).dblclick()
  await told(page, 'Written: Pull, forced')
  await page.goto('/moulds/MP-L?kind=pull')
  expect(await page.getByText('Pull, forced').count()).toBe(before + 1)
})
