import { mkdtemp, rm, writeFile } from 'node:fs/promises'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import type { Page } from 'playwright-core'
import { afterAll, beforeAll, expect, test } from 'vitest'
import { desktop, mishapsOn } from '#tests/support/browser'
import {
  actAs,
  addMould,
  choose,
  field,
  fill,
  freshCode,
  history,
  noMishaps,
  press,
  told,
  words,
} from './steps'

const code = freshCode('BI')
let page: Page

beforeAll(async () => {
  page = await desktop()
  await actAs(page, 'lead')
  await addMould(page, code)
})

afterAll(async () => {
  noMishaps(mishapsOn(page))
  expect(await patchCount()).toBe(0)
  await page.context().close()
})

async function patchCount(): Promise<number> {
  await page.goto('/patches')
  return page.getByRole('link', { name: code }).count()
}

/** A sketch that is right but for what the test puts wrong. */
async function sketch(): Promise<void> {
  await page.goto(`/patches/new?mould=${code}`)
  await fill(page, 'What it is', 'Opening to be refused')
  await choose(page, 'Worked from', /^against the pattern/)
  await fill(page, 'Diameter', '60')
  await fill(page, 'Placed at u', '600')
  await fill(page, 'and v', '400')
  await fill(page, /^Measured thickness/, '6.0')
}

async function outline(points: string): Promise<void> {
  await sketch()
  await choose(page, 'Opening', /outline from file/)
  await fill(page, 'or coordinates', points)
}

/** Saves, and expects these words at this field, with everything typed still there. */
async function refused(label: string | RegExp, says: RegExp): Promise<void> {
  const typed = await field(page, label).inputValue()
  await press(page, 'Save the sketch')
  const wrong = field(page, label).and(page.locator('[aria-invalid=true]'))
  await expect
    .poll(
      async () => {
        const describedBy = (await wrong.getAttribute('aria-describedby')) ?? ''
        const at = describedBy.split(' ').find((id) => id.endsWith('-wrong')) ?? ''
        return words(page.locator(`[id="${at}"]`))
      },
      { timeout: 15_000 },
    )
    .toMatch(says)
  expect(await wrong.inputValue()).toBe(typed)
  expect(await field(page, 'What it is').inputValue()).toBe('Opening to be refused')
  expect(await page.getByRole('radio', { name: /^against the pattern/ }).isChecked()).toBe(true)
  expect(await field(page, 'Placed at u').inputValue()).toBe('600')
}

test('an outline that crosses itself', async () => {
  await outline('-50; -50\n50; 50\n50; -50\n-50; 50')
  await refused('or coordinates', /crosses itself/)
})

test('an outline that encloses nothing', async () => {
  await outline('0; 0\n50; 0\n100; 0')
  await refused('or coordinates', /area|line/)
})

test('an outline that is open', async () => {
  await sketch()
  await choose(page, 'Opening', /outline from file/)
  await page
    .getByLabel('File', { exact: true })
    .setInputFiles({ name: 'open.dxf', mimeType: 'image/vnd.dxf', buffer: Buffer.from(openDxf) })
  await refused('or coordinates', /open|closed|gap/i)
})

test('a file of another kind', async () => {
  await sketch()
  await choose(page, 'Opening', /outline from file/)
  await page.getByLabel('File', { exact: true }).setInputFiles({
    name: 'photo.png',
    mimeType: 'image/png',
    buffer: Buffer.from('\x89PNG\r\n\x1a\n', 'latin1'),
  })
  await refused('or coordinates', /picture/)
})

test('a file of 50 MB is not even sent', async () => {
  await sketch()
  await choose(page, 'Opening', /outline from file/)
  const file = page.getByLabel('File', { exact: true })
  const huge = await largeFile(50)
  await file.setInputFiles(huge.path)
  await told(page, /huge.dxf has 50 MB; at most 10 MB are read/)
  expect(await file.inputValue()).toBe('')
  expect(await field(page, 'What it is').inputValue()).toBe('Opening to be refused')
  await huge.remove()
})

test('figures that cannot be', async () => {
  await sketch()
  await fill(page, /^Measured thickness/, '-6')
  await refused(/^Measured thickness/, /At least 0.05 mm/)
  await fill(page, /^Measured thickness/, '6.0')
  await fill(page, 'Ratio', '0.5')
  await refused('Ratio', /At least 1/)
  await fill(page, 'Ratio', '20')
  await fill(page, 'Diameter', '60 furlongs')
  await refused('Diameter', /furlongs/)
  await fill(page, 'Diameter', 'as wide as a hand')
  await refused('Diameter', /number|not a/i)
  await fill(page, 'Diameter', '')
  await refused('Diameter', /Give a number/)
})

test('an opening outside its area is a stop: kept as a sketch, never signed', async () => {
  await sketch()
  await fill(page, 'Placed at u', '1190')
  await page.locator('.preview').getByText('stop', { exact: true }).first().waitFor()
  expect(await words(page.locator('.preview'))).toMatch(/leaves the area "floor" by 20 mm/)
})

test('a date in the future', async () => {
  await page.goto(`/moulds/${code}/log/pull`)
  await page.getByText('Another day or time, and a note').click()
  await page.getByLabel('Done on').fill('2031-05-01')
  await fill(page, 'Note', 'written too early')
  await choose(page, 'The part', 'rework')
  await press(page, 'Write it down')
  await told(page, /2031-05-01 is in the future/)
  expect(await page.getByLabel('Done on').inputValue()).toBe('2031-05-01')
  expect(await field(page, 'Note').inputValue()).toBe('written too early')
  expect(await page.getByRole('radio', { name: 'rework' }).isChecked()).toBe(true)
  expect((await history(page, code)).join('\n')).not.toContain('Pull')
})

test('words where a figure is due, and an end pressure below the start', async () => {
  await page.goto(`/moulds/${code}/log/leak-check`)
  await fill(page, 'Start, absolute', 'low')
  await fill(page, 'End, absolute', '12')
  await choose(page, 'Pins', 'none')
  await press(page, 'Write it down')
  await told(page, /needs? attention/)
  expect(await field(page, 'Start, absolute').getAttribute('aria-invalid')).toBe('true')
  await fill(page, 'Start, absolute', '40')
  await press(page, 'Write it down')
  await told(page, /the end is not below the start/)
  expect(await page.getByRole('radio', { name: 'none' }).isChecked()).toBe(true)
  await fill(page, 'End, absolute', '42,5')
  await press(page, 'Write it down')
  await told(page, /Written: Leak check, 2.5 mbar in 10 min from 40 mbar/)
})

test('a boundary that crosses itself makes no area', async () => {
  await page.goto(`/moulds/${code}/areas/new`)
  await fill(page, 'Name', 'knot')
  await choose(page, 'Given as', /coordinates/)
  await fill(page, 'Coordinates', '0; 0\n100; 100\n100; 0\n0; 100')
  await press(page, 'Add the area')
  await told(page, /crosses itself/)
  expect(await field(page, 'Name').inputValue()).toBe('knot')
  await page.goto(`/moulds/${code}`)
  expect(await page.getByText(/\bknot\b/).count()).toBe(0)
})

/** An outline of three lines that does not come back to its beginning. */
const openDxf = `  0
SECTION
  2
HEADER
  9
$INSUNITS
 70
4
  0
ENDSEC
  0
SECTION
  2
ENTITIES
${[
  [0, 0, 100, 0],
  [100, 0, 100, 80],
  [100, 80, 0, 80],
]
  .map(([a, b, c, d]) => `  0\nLINE\n  8\n0\n 10\n${a}\n 20\n${b}\n 11\n${c}\n 21\n${d}`)
  .join('\n')}
  0
ENDSEC
  0
EOF
`

/** A file on disk: Playwright hands over less than 50 MB as a buffer. */
async function largeFile(megabytes: number): Promise<{ path: string; remove: () => Promise<void> }> {
  const folder = await mkdtemp(join(tmpdir(), 'large-'))
  const path = join(folder, 'huge.dxf')
  await writeFile(path, Buffer.alloc(megabytes * 1024 * 1024, 'x'))
  return { path, remove: () => rm(folder, { recursive: true }) }
}
