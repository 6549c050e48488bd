import type { Page } from 'playwright-core'

/** More stops than any screen has before its end. */
const mostStops = 300

/** What a screen reader would call the element that has the keyboard, and what it is. */
function focused(page: Page): Promise<{ readonly name: string; readonly kind: string }> {
  return page.evaluate(() => {
    const at = document.activeElement as (HTMLInputElement & HTMLElement) | null
    const named = (node: Element | null) => (node?.textContent ?? '').replace(/\s+/g, ' ').trim()
    const labels = [...(at?.labels ?? [])].map(named).join(' ')
    const labelledBy = at?.getAttribute('aria-labelledby')?.split(' ') ?? []
    const byIds = labelledBy.map((id) => named(document.getElementById(id))).join(' ')
    return {
      name: at?.getAttribute('aria-label') || byIds || labels || named(at),
      kind: at?.getAttribute('type') ?? at?.tagName.toLowerCase() ?? '',
    }
  })
}

/**
 * Moves the keyboard on, stop by stop, until it stands on what bears this name.
 * @throws Error with the stops that were passed when there is none
 */
export async function tabTo(page: Page, name: RegExp): Promise<void> {
  const passed: string[] = []
  for (let stop = 0; stop < mostStops; stop += 1) {
    await page.keyboard.press('Tab')
    const { name: here } = await focused(page)
    if (name.test(here)) return
    passed.push(here.slice(0, 40))
  }
  throw new Error(`the keyboard never came to ${name}; it passed ${[...new Set(passed)].join(' | ')}`)
}

/** Goes to what bears this name and presses Enter on it. */
export async function enter(page: Page, name: RegExp): Promise<void> {
  await tabTo(page, name)
  await page.keyboard.press('Enter')
}

/** Goes to a field and writes over what stands in it. */
export async function type(page: Page, name: RegExp, text: string): Promise<void> {
  await tabTo(page, name)
  await page.keyboard.press('ControlOrMeta+A')
  await page.keyboard.type(text)
}

/** Goes into a group of radio buttons by any of its options, and on with the arrow to the one wanted. */
export async function chooseByArrow(page: Page, any: RegExp, wanted: RegExp): Promise<void> {
  await tabTo(page, any)
  for (let step = 0; step < 20; step += 1) {
    const { name } = await focused(page)
    if (wanted.test(name)) {
      await page.keyboard.press('Space')
      return
    }
    await page.keyboard.press('ArrowDown')
  }
  throw new Error(`no option ${wanted} beside ${any}`)
}

/** Ticks the job lines that are open, one after the other, until none of these names is left. */
export async function tickLines(page: Page, from: number, to: number): Promise<void> {
  for (let line = from; line <= to; line += 1) {
    const second = page.locator(`#line-${line}`).getByLabel('Looked at by')
    if (await second.isVisible()) {
      await tabTo(page, /^Looked at by/)
      await page.keyboard.type('SL')
    }
    await enter(page, new RegExp(`^Done: ${line}$`))
    await page
      .locator(`#line-${line}`)
      .getByText(/^Done:.*\d\d:\d\d/)
      .waitFor()
  }
}
