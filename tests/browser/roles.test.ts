import { randomUUID } from 'node:crypto'
import { expect, test } from 'vitest'
import { desktop, mishapsOn } from '#tests/support/browser'
import { actAs, addMould, choose, field, fill, freshCode, noMishaps, press, told } from './steps'

test('a laminator logs, and finds no way to the acts of a lead', async () => {
  const page = await desktop()
  await actAs(page, 'laminator')
  await page.goto('/moulds/NC-1')
  expect(await page.getByRole('link', { name: 'Leak check' }).count()).toBeGreaterThan(0)
  await page.getByText('More…').click()
  expect(
    await page.getByRole('link', { name: /Plan a patch|Locating points|Add an area|Change/ }).count(),
  ).toBe(0)
  expect(await page.getByRole('link', { name: 'People' }).count()).toBe(0)
  await page.goto('/moulds')
  expect(await page.getByRole('link', { name: 'Add a mould' }).count()).toBe(0)
  for (const address of [
    '/moulds/new',
    '/moulds/NC-1/edit',
    '/moulds/NC-1/points',
    '/patches/new',
    '/people',
  ]) {
    await page.goto(address)
    expect(await page.locator('main form').count(), address).toBe(0)
  }
  noMishaps(mishapsOn(page))
})

test('what is hidden from a laminator is refused as well', async () => {
  const lead = await desktop()
  await actAs(lead, 'lead')
  const code = freshCode('RO')
  await lead.goto('/moulds/new')
  await fill(lead, 'Code', code)
  await fill(lead, 'Name', 'Not for everyone')
  // The form was handed out to a lead; now a laminator's session sends it.
  const theirs = await desktop()
  await actAs(theirs, 'laminator')
  await lead.context().addCookies(await theirs.context().cookies())
  await press(lead, 'Add the mould')
  await told(lead, 'A laminator may not do this; ask a lead')
  expect(await field(lead, 'Name').inputValue()).toBe('Not for everyone')
  expect((await lead.request.get(`/moulds/${code}`)).status()).toBe(404)
})

test('a viewer reads everything and writes nothing', async () => {
  const page = await desktop()
  await actAs(page, 'viewer')
  await page.goto('/moulds/NC-1')
  expect(await page.getByRole('link', { name: /Clear to lay up|Log the pull|put right/ }).count()).toBe(0)
  expect(await page.getByText('More…').count()).toBe(0)
  await page.goto('/moulds/NC-1/log/pull')
  await told(page, 'A viewer reads the book')
  await page.goto('/m/NC-1')
  expect(await page.getByRole('navigation', { name: 'Write down' }).count()).toBe(0)
  noMishaps(mishapsOn(page))
})

test('the form of a laminator sent with the session of a viewer writes nothing', async () => {
  const page = await desktop()
  await actAs(page, 'laminator')
  await page.goto('/moulds/NC-1/log/note')
  const words = `not written ${randomUUID()}`
  await fill(page, 'Note', words)
  const theirs = await desktop()
  await actAs(theirs, 'viewer')
  await page.context().addCookies(await theirs.context().cookies())
  await press(page, 'Write it down')
  await told(page, 'A viewer may not do this')
  await page.goto('/moulds/NC-1')
  expect(await page.getByText(words).count()).toBe(0)
})

test('two people who change one mould lose nothing', async () => {
  const code = freshCode('CF')
  const one = await desktop()
  await actAs(one, 'lead')
  await addMould(one, code)
  const two = await desktop()
  await actAs(two, 'lead')
  await one.goto(`/moulds/${code}/edit`)
  await two.goto(`/moulds/${code}/edit`)
  await fill(one, 'Name', 'Tray with a new name')
  await choose(one, 'Hand', 'port')
  await press(one, 'Save')
  await one.getByRole('heading', { level: 1, name: 'Tray with a new name' }).waitFor()

  await fill(two, 'Mass', '12,5')
  await fill(two, 'Owner', 'the shop itself')
  await press(two, 'Save')
  await told(two, 'Somebody else changed this meanwhile')
  await told(two, /Name: now “Tray with a new name”; taken over below/)
  await told(two, /Hand: now “port”; taken over below/)
  expect(await field(two, 'Mass').inputValue()).toBe('12,5')
  expect(await field(two, 'Owner').inputValue()).toBe('the shop itself')
  expect(await field(two, 'Name').inputValue()).toBe('Tray with a new name')
  expect(await two.getByRole('radio', { name: 'port', exact: true }).isChecked()).toBe(true)
  // Nothing of the second was saved so far.
  await one.goto(`/moulds/${code}/edit`)
  expect(await field(one, 'Owner').inputValue()).toBe('')
  await press(two, 'Save')
  await two.getByRole('heading', { level: 1, name: 'Tray with a new name' }).waitFor()
  await one.goto(`/moulds/${code}/edit`)
  expect(await field(one, 'Owner').inputValue()).toBe('the shop itself')
  expect(await field(one, 'Mass').inputValue()).toBe('12.5')
  expect(await field(one, 'Name').inputValue()).toBe('Tray with a new name')
  expect(await one.getByRole('radio', { name: 'port', exact: true }).isChecked()).toBe(true)
  noMishaps([...mishapsOn(one), ...mishapsOn(two)])
})

test('of one field that both changed, what was typed last stays until it is saved again', async () => {
  const code = freshCode('CB')
  const one = await desktop()
  await actAs(one, 'lead')
  await addMould(one, code)
  const two = await desktop()
  await actAs(two, 'lead')
  await one.goto(`/moulds/${code}/edit`)
  await two.goto(`/moulds/${code}/edit`)
  await fill(one, 'Owner', 'first')
  await press(one, 'Save')
  await one.getByRole('heading', { level: 1 }).waitFor()
  await one.waitForURL(`**/moulds/${code}`)
  await fill(two, 'Owner', 'second')
  await press(two, 'Save')
  await told(two, /Owner: now “first”; you typed “second”, which stands below/)
  expect(await field(two, 'Owner').inputValue()).toBe('second')
})
