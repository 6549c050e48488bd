import { expect, test } from 'vitest'
import { desktop } from '#tests/support/browser'
import { actAs, press } from './steps'

test('the rack is found, narrowed and sorted by its address', async () => {
  const page = await desktop()
  await actAs(page, 'viewer')
  const codes = async (address: string) => {
    await page.goto(address)
    // Other tests add moulds with longer codes of their own.
    return (await page.locator('.rack tbody tr td:first-child b').allInnerTexts()).filter((code) =>
      /^[A-Z]{2}-\w$/.test(code),
    )
  }
  const all = await codes('/moulds')
  expect(all).toEqual([...all].sort((a, b) => a.localeCompare(b, 'en', { numeric: true })))
  expect(all.length).toBeGreaterThan(10)
  expect(await codes('/moulds?find=lower+HULL')).toEqual(['LH-B', 'LH-P', 'LH-S'])
  expect(await codes('/moulds?state=retired')).toEqual(['UD-0'])
  expect(await codes('/moulds?find=no-such-thing')).toEqual([])
  await page
    .getByRole('link', { name: /Show all/i })
    .first()
    .waitFor()

  await codes('/moulds?sort=pulls')
  const pulls = await page.locator('.rack td[data-label^="Pulls"]').allInnerTexts()
  const counts = pulls.map((text) => Number(text.split('/')[1]))
  expect(counts).toEqual([...counts].sort((a, b) => b - a))
  expect(await page.getByRole('columnheader', { name: /^Pulls/ }).getAttribute('aria-sort')).toBe(
    'descending',
  )

  // The same by hand: words and state go into the address, and a sorted column keeps them.
  await page.goto('/moulds')
  await page.getByLabel('Find', { exact: true }).fill('spat')
  await page.getByLabel('State').selectOption('held')
  await press(page, 'Show')
  await page.waitForURL('**/moulds?find=spat&state=held')
  await page.getByRole('link', { name: /^Place/ }).click()
  await page.waitForURL('**/moulds?find=spat&state=held&sort=place')
  expect(await page.locator('.rack tbody tr').count()).toBe(1)
  await page.goBack()
  await page.waitForURL('**/moulds?find=spat&state=held')
})
