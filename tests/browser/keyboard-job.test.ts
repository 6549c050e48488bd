import { expect, inject, test } from 'vitest'
import { desktop, mishapsOn } from '#tests/support/browser'
import { chooseByArrow, enter, tabTo, tickLines, type } from './keys'
import { actAs, addMould, freshCode, noMishaps, stamp, told } from './steps'

test('the main job by keyboard alone: from the sign-in over a pull and a patch to the proved mould', async () => {
  const code = freshCode('KB')
  const other = await desktop()
  await actAs(other, 'lead')
  await addMould(other, code)
  await other.context().close()

  const page = await desktop()
  const lead = inject('appAccounts').find((account) => account.role === 'lead')!
  await page.goto('/moulds')
  await type(page, /^E-mail/, lead.email)
  await type(page, /^Password/, lead.password)
  await page.keyboard.press('Enter')
  await page.getByRole('heading', { name: 'The rack' }).waitFor()

  // The mould is found on the rack, and its pull written down.
  await type(page, /^Find$/, code)
  await page.keyboard.press('Enter')
  await page.getByText(/^1 of \d+ moulds/).waitFor()
  await enter(page, new RegExp(`^${code}`))
  await page.getByRole('heading', { level: 1, name: 'Test tray' }).waitFor()
  await page.goto(`/moulds/${code}/log/pull`)
  await chooseByArrow(page, /^(usual|harder)/, /^harder/)
  await type(page, /^Part serial/, `${code}-1`)
  await page.keyboard.press('Enter')
  await told(page, 'Written: Pull, harder')

  // A patch is planned, signed and put on the bench.
  await enter(page, /^More…$/)
  await enter(page, /^Plan a patch$/)
  await page.getByRole('heading', { level: 1, name: 'Plan a patch' }).waitFor()
  await type(page, /^What it is/, 'Crack by the flange')
  await chooseByArrow(page, /^against the pattern|^in place/, /^against the pattern/)
  await chooseByArrow(page, /^round$/, /^round$/)
  await type(page, /^Diameter/, '60')
  await type(page, /^Placed at u/, '400')
  await type(page, /^and v/, '300')
  await type(page, /^Measured thickness/, '6,0; 6.1 5.9')
  await page
    .getByText(/Scarf length/)
    .first()
    .waitFor()
  await enter(page, /^Save the sketch$/)
  await page.getByRole('heading', { level: 1, name: 'Crack by the flange' }).waitFor()
  const plan = new URL(page.url()).pathname
  await tabTo(page, /^Bench sheet/)
  await enter(page, /^Sign the plan$/)
  const bench = page.getByRole('button', { name: 'Put it on the bench' })
  await bench
    .or(page.getByText(/Needs a because/).first())
    .first()
    .waitFor()
  const becauses = await page.locator('#steps').getByRole('textbox').count()
  if (becauses > 0) {
    await page.locator('#steps').getByRole('textbox').first().focus()
    await page.keyboard.type('looked at and agreed')
    for (let more = 1; more < becauses; more += 1) {
      await page.keyboard.press('Tab')
      await page.keyboard.type('looked at and agreed')
    }
    await enter(page, /^Sign the plan$/)
  }
  await bench.waitFor()
  await enter(page, /^Put it on the bench$/)
  await page.getByRole('button', { name: 'Done: 1', exact: true }).waitFor()

  // It is laid, line by line, and proved.
  const titles = await page.locator('.job-lines h3').allInnerTexts()
  const dress = titles.findIndex((title) => /\. Dress$/.test(title))
  await tickLines(page, 1, dress)
  const lots = await page.getByLabel(/^Lot of/).count()
  for (let lot = 0; lot < lots; lot += 1) await type(page, /^Lot of/, 'R-118')
  await enter(page, /^Write it down as laid$/)
  await page.getByRole('button', { name: 'Write it down as proved' }).waitFor()
  expect(await stamp(page)).toBe('Laid')
  for (const [kind, said] of [
    ['seal', /Written: \d+ × sealer/],
    ['coat', /Written: 4 coats/],
    ['tape-test', /Written: Tape slips/],
  ] as const) {
    await page.goto(`/moulds/${code}/log/${kind}`)
    if (kind === 'seal') await type(page, /^Sealer/, 'Base sealer')
    if (kind === 'coat') {
      await type(page, /^Coats/, '4')
      await type(page, /^Release agent/, 'Semi-permanent agent')
    }
    await enter(page, /^Write it down$/)
    await told(page, said)
  }
  await page.goto(`/moulds/${code}/log/cleared`)
  await enter(page, /^Clear for a proof pull/)
  await told(page, 'Written: Cleared for a proof pull')
  await page.goto(`/moulds/${code}/log/pull`)
  await enter(page, /^Write it down$/)
  await told(page, 'Written: Pull, usual')
  await page.goto(plan)
  const [lines, done] = [
    await page.locator('.job-lines > li').count(),
    await page.locator('.job-lines > li.done').count(),
  ]
  await tickLines(page, done + 1, lines)
  await enter(page, /^Write it down as proved$/)
  await told(page, /^Proved: the patch is part of the mould/)
  noMishaps(mishapsOn(page))
  await page.context().close()
}, 240_000)
