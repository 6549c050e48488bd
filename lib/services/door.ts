import { randomUUID, timingSafeEqual } from 'node:crypto'
import { readFile } from 'node:fs/promises'
import type { FirstLead } from '#lib/schema/people'
import { Refusal } from '#lib/store/errors'
import { addFirstLead, hasPeople } from '#lib/store/people'
import { readShop } from '#lib/store/shop'

/** What somebody who is not signed in may know of the shop: its name, and whether it is set up. */
export async function readDoor(): Promise<{ setUp: boolean; shopName: string; isDemo: boolean }> {
  const [setUp, shop] = await Promise.all([hasPeople(), readShop()])
  return { setUp, shopName: shop?.name ?? '', isDemo: shop?.isDemo ?? false }
}

/** Sets up an empty shop for whoever holds the one-time code that the start printed. */
export async function setUpShop(input: FirstLead): Promise<void> {
  const expected = await firstLeadCode()
  if (!expected || !same(input.code.trim().toUpperCase(), expected.toUpperCase())) {
    throw new Refusal('That is not the code that the start printed', {
      fields: { code: 'Look in the window where npm start runs' },
    })
  }
  await addFirstLead(randomUUID(), input)
}

async function firstLeadCode(): Promise<string | null> {
  const path = process.env.MOULDWRIGHT_SECRETS
  if (!path) return null
  const secrets = JSON.parse(await readFile(path, 'utf8')) as { firstLeadCode?: string }
  return secrets.firstLeadCode ?? null
}

function same(given: string, expected: string): boolean {
  const [a, b] = [Buffer.from(given), Buffer.from(expected)]
  return a.length === b.length && timingSafeEqual(a, b)
}
