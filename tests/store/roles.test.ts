import { readdirSync, readFileSync } from 'node:fs'
import { join } from 'node:path'
import { describe, expect, test } from 'vitest'
import type { Role } from '#lib/schema/shop'
import type { Verb } from '#lib/services/verb'
import { db } from '#lib/store/db'
import { Refusal } from '#lib/store/errors'
import { ada, book, lam, vi } from './book'

book()

type AnyVerb = Verb<unknown, unknown>

const modules = import.meta.glob('../../lib/services/*.ts', { eager: true }) as Readonly<
  Record<string, Record<string, unknown>>
>

const isVerb = (value: unknown): value is AnyVerb => typeof value === 'function' && 'verbName' in value

const verbs = new Map(
  Object.values(modules)
    .flatMap((module) => Object.values(module).filter(isVerb))
    .map((verb) => [verb.verbName, verb]),
)

const everyone: readonly Role[] = ['lead', 'laminator', 'viewer']
const hands: readonly Role[] = ['lead', 'laminator']
const lead: readonly Role[] = ['lead']

/** Who may do what. A verb that is not here fails the test: write down who may call it. */
const expected: Readonly<Record<string, readonly Role[]>> = {
  'areas.add': lead,
  'areas.change': lead,
  'areas.inset': everyone,
  'areas.measure': hands,
  'areas.read': everyone,
  'areas.strike-reading': hands,
  'built-parts.change': hands,
  'built-parts.list': everyone,
  'built-parts.lots': everyone,
  'built-parts.of-lot': everyone,
  'built-parts.of-mould': everyone,
  'built-parts.read': everyone,
  'built-parts.remove': lead,
  'built-parts.since-patch': everyone,
  'demo.contents': lead,
  'demo.leave': lead,
  'homography.compute': everyone,
  'log.find': everyone,
  'log.history': everyone,
  'log.latest': everyone,
  'log.list-of': everyone,
  'log.products': everyone,
  'log.read': everyone,
  'log.set-pieces': everyone,
  'log.write': hands,
  'log.write-of': hands,
  'log.write-pattern': hands,
  'log.write-set': hands,
  'log.write-set-of': hands,
  'lots.add': hands,
  'lots.change': hands,
  'lots.close': hands,
  'lots.correct': hands,
  'lots.count': hands,
  'lots.freezer': hands,
  'lots.open': everyone,
  'lots.plan': everyone,
  'lots.read': everyone,
  'lots.reopen': hands,
  'lots.take': hands,
  'materials.add': lead,
  'materials.change': lead,
  'materials.list': everyone,
  'materials.read': everyone,
  'matters.list': everyone,
  'matters.open': everyone,
  'moulds.add': lead,
  'moulds.bench': everyone,
  'moulds.by-id': everyone,
  'moulds.change': lead,
  'moulds.rack': everyone,
  'moulds.read': everyone,
  'moulds.sheet': everyone,
  'join.compute': everyone,
  'outline.offset': everyone,
  'plate.compute': everyone,
  'outline.read': everyone,
  'outline.read-one': everyone,
  'outline.read-text': everyone,
  'parts.add': lead,
  'parts.change': lead,
  'parts.list': everyone,
  'parts.rows': everyone,
  'patches.bench': hands,
  'patches.bench-sheet': everyone,
  'patches.compute': everyone,
  'patches.lay': hands,
  'patches.list': everyone,
  'patches.outlines-dxf': everyone,
  'patches.outlines-svg': everyone,
  'patches.preview': everyone,
  'patches.prove': hands,
  'patches.put-by': lead,
  'patches.read': everyone,
  'patches.sign': lead,
  'patches.sketch': lead,
  'patches.templates': everyone,
  'patches.tick': hands,
  'patterns.add': lead,
  'patterns.change': lead,
  'patterns.lines': everyone,
  'patterns.list': everyone,
  'patterns.read': everyone,
  'people.add': lead,
  'people.change': lead,
  'people.list': lead,
  'people.password': lead,
  'pictures.add': hands,
  'pictures.add-of': hands,
  'pictures.beside': everyone,
  'pictures.bring-back': lead,
  'pictures.bytes': everyone,
  'pictures.change': hands,
  'pictures.list': everyone,
  'pictures.list-of': everyone,
  'pictures.put-away': hands,
  'pictures.read': everyone,
  'pictures.subject': everyone,
  'pictures.subject-of': everyone,
  'pictures.views': everyone,
  'points.before': everyone,
  'points.issue': lead,
  'prices.add': lead,
  'prices.list': everyone,
  'products.add': lead,
  'products.change': lead,
  'products.list': everyone,
  'products.read': everyone,
  'rates.add': lead,
  'rates.list': everyone,
  'rates.usual': lead,
  'search.find': everyone,
  'seasons.add': lead,
  'seasons.change': lead,
  'sets.add': lead,
  'sets.add-piece': lead,
  'sets.change': lead,
  'sets.free-moulds': lead,
  'sets.list': everyone,
  'sets.names': everyone,
  'sets.read': everyone,
  'sets.take-piece-out': lead,
  'shop.read': everyone,
  'shop.save': lead,
  'stacks.add': lead,
  'stacks.change': lead,
  'stacks.list': everyone,
  'stores.count': everyone,
  'stores.matters': everyone,
  'stores.read': everyone,
  'tables.list': everyone,
  'tables.open': everyone,
  'tables.open-lead': lead,
  'tokens.end': lead,
  'tokens.list': lead,
  'tokens.make': lead,
}

test('every verb stands in the table with its roles, and nothing else does', () => {
  const found = Object.fromEntries([...verbs].map(([name, verb]) => [name, [...verb.roles]]))
  expect(found).toEqual(expected)
})

test('verbs have names of their own', () => {
  const all = Object.values(modules).flatMap((module) => Object.values(module).filter(isVerb))
  expect(new Set(all).size).toBe(verbs.size)
})

describe('a role that may not is refused before anything is looked at', () => {
  const forbidden = Object.entries(expected).flatMap(([name, roles]) =>
    everyone.filter((role) => !roles.includes(role)).map((role) => [name, role] as const),
  )

  test.each(forbidden)('%s by a %s', async (name, role) => {
    const actor = { lead: ada, laminator: lam, viewer: vi }[role]
    const refused = await verbs
      .get(name)?.(actor, undefined)
      .catch((error: unknown) => error)
    expect(refused).toBeInstanceOf(Refusal)
    expect(refused).toMatchObject({ status: 403, message: `A ${role} may not do this; ask a lead` })
  })

  test('and nothing was written', async () => {
    const [row] = await db().sql`select count(*)::int as rows from audit where by_id in (${lam.id}, ${vi.id})`
    expect(row?.rows).toBe(0)
  })
})

describe('the app', () => {
  /** What pages and doors may take from services beside verbs: open to everyone, or no act at all. */
  const besides = [
    'faceModelOf',
    'papers',
    'planStates',
    'plyMaterial',
    'readHealth',
    'stackInputOf',
    'stackPlies',
  ]
  const files = ['app', 'lib/web'].flatMap((folder) =>
    readdirSync(folder, { recursive: true, withFileTypes: true })
      .filter((file) => file.isFile() && /\.tsx?$/.test(file.name))
      .map((file) => join(file.parentPath, file.name)),
  )
  const open: Readonly<Record<string, readonly string[]>> = {
    'app/first-lead/page.tsx': ['readDoor'],
    'app/sign-in/page.tsx': ['readDoor'],
    'lib/web/door.ts': ['setUpShop'],
  }

  test('takes only verbs from the services', () => {
    const strays = files.flatMap((path) => {
      const text = readFileSync(path, 'utf8')
      return [...text.matchAll(/^import (type )?\{([^}]*)\} from '#lib\/services\/([\w-]+)'/gm)]
        .filter((match) => !match[1])
        .flatMap(([, , names = '', module = '']) =>
          names
            .split(',')
            .map((name) => name.trim())
            .filter((name) => name !== '' && !name.startsWith('type '))
            .map((name) => name.split(' as ')[0] ?? '')
            .filter((name) => !isVerb(modules[`../../lib/services/${module}.ts`]?.[name]))
            .filter((name) => !besides.includes(name) && !open[path]?.includes(name))
            .map((name) => `${path}: ${name} of ${module}`),
        )
    })
    expect(strays).toEqual([])
  })
})
