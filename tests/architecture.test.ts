import { readdirSync, readFileSync } from 'node:fs'
import { dirname, join, normalize } from 'node:path'
import { describe, expect, test } from 'vitest'

/** Who may import whom (the layers of the design), read off the sources themselves. */

interface Source {
  /** From the checkout's root: "lib/core/dates.ts". */
  readonly path: string
  /** Without comments. */
  readonly text: string
  readonly imports: readonly string[]
}

/** import ... from 'x', import 'x', export ... from 'x', import('x') */
const importing =
  /^\s*import\b(?:[^'"()]*?\bfrom)?\s*['"]([^'"\n]+)['"]|^\s*export\s+(?:type\s+)?[*{][^'"()]*?\bfrom\s*['"]([^'"\n]+)['"]|\bimport\(\s*['"]([^'"\n]+)['"]/gm

const sources: readonly Source[] = ['lib', 'app', 'prisma'].flatMap((folder) =>
  readdirSync(folder, { recursive: true, withFileTypes: true })
    .filter((file) => file.isFile() && /\.(ts|tsx|js|mjs)$/.test(file.name))
    .map((file) => join(file.parentPath, file.name))
    .filter((path) => !path.startsWith('lib/store/generated/'))
    .map(read),
)

function read(path: string): Source {
  const text = withoutComments(readFileSync(path, 'utf8'))
  const named = [...text.matchAll(importing)]
  return { path, text, imports: named.map((match) => resolved(path, match[1] ?? match[2] ?? match[3] ?? '')) }
}

/** Comments may name what the code must not use. Strings are left alone. */
function withoutComments(text: string): string {
  return text.replace(
    /(`(?:\\.|[^`\\])*`|'(?:\\.|[^'\\\n])*'|"(?:\\.|[^"\\\n])*")|\/\*[\s\S]*?\*\/|\/\/[^\n]*/g,
    (_all, kept) => kept ?? '',
  )
}

/** "#lib/core/dates" and "../dates" alike become "lib/core/dates"; a package keeps its name. */
function resolved(path: string, name: string): string {
  if (name.startsWith('.')) return normalize(join(dirname(path), name))
  return name.startsWith('#') ? name.slice(1) : name
}

const within = (folder: string) => sources.filter((source) => source.path.startsWith(folder))
const isOurs = (name: string) => /^(lib|app|prisma|tests)\//.test(name)

/** Lines "file -> import" of what a folder imports and may not. */
function strangers(files: readonly Source[], allowed: (name: string, source: Source) => boolean): string[] {
  return files.flatMap((source) =>
    source.imports.filter((name) => !allowed(name, source)).map((name) => `${source.path} -> ${name}`),
  )
}

test('the reading of sources finds what there is', () => {
  expect(sources.length).toBeGreaterThan(150)
  const route = sources.find((source) => source.path === 'app/api/v1/compute/patch/route.ts')
  expect(route?.imports).toContain('lib/services/patches')
  // Over several lines, by a relative path, by name alone, as a type.
  const services = sources.find((source) => source.path === 'lib/services/moulds.ts')
  expect(services?.imports).toEqual(expect.arrayContaining(['lib/store/moulds', 'lib/services/verb', 'zod']))
  const store = sources.find((source) => source.path === 'lib/store/log.ts')
  expect(store?.imports).toEqual(expect.arrayContaining(['server-only', 'postgres', 'lib/store/db']))
  expect(withoutComments("a // Date.now()\n'// no comment' /* x\n */ b")).toBe("a \n'// no comment'  b")
})

describe('the core', () => {
  const core = within('lib/core/')
  /** Numeric libraries, each behind one file of ours. */
  const numeric: Readonly<Record<string, string>> = {
    'clipper2-ts': 'lib/core/geometry/clipping.ts',
    'ml-matrix': 'lib/core/linear-algebra.ts',
  }

  test('imports only the core, and named numeric libraries behind one file each', () => {
    expect(
      strangers(core, (name, source) => name.startsWith('lib/core/') || numeric[name] === source.path),
    ).toEqual([])
  })

  test('reaches itself by relative paths', () => {
    const byAlias = core.flatMap(({ path, text }) => (text.includes("'#lib/") ? [path] : []))
    expect(byAlias).toEqual([])
  })

  test.each([
    ['the clock', /\bDate\.now\b|\bnew Date\(\s*\)|\bDate\(\s*\)|\bperformance\b/],
    ['chance', /\bMath\.random\b|\bcrypto\b|\brandomUUID\b/],
    ['the process', /\bprocess\./],
    ['the console', /\bconsole\./],
    ['the network or a timer', /\bfetch\(|\bsetTimeout\(|\bsetInterval\(/],
    ['a browser', /\bwindow\.|\bdocument\./],
  ])('knows nothing of %s', (_what, pattern) => {
    expect(core.filter(({ text }) => pattern.test(text)).map(({ path }) => path)).toEqual([])
  })

  test('holds no classes but errors, no enums, no default exports', () => {
    const found = core.filter(({ text }) =>
      /\bclass (?!\w+ extends \w*Error\b)\w+|\benum \w+|\bexport default\b/.test(text),
    )
    expect(found.map(({ path }) => path)).toEqual([])
  })
})

describe('arrows point one way', () => {
  test('schema imports the core and zod', () => {
    expect(
      strangers(within('lib/schema/'), (name) => name === 'zod' || /^lib\/(core|schema)\//.test(name)),
    ).toEqual([])
  })

  test('the store imports core, schema and database packages', () => {
    const packages = /^(server-only|postgres|pg|@prisma\/.*|better-auth(\/.*)?|node:crypto)$/
    expect(
      strangers(
        within('lib/store/'),
        (name) => packages.test(name) || /^lib\/(core|schema|store)\//.test(name),
      ),
    ).toEqual([])
  })

  test('only the store imports database packages; the command line has its own client', () => {
    const database =
      /^(postgres|pg|@prisma\/client.*|@prisma\/adapter-pg|better-auth.*)$|^lib\/store\/generated/
    const allowed = /^lib\/(store|platform)\//
    expect(
      strangers(
        sources.filter(({ path }) => !allowed.test(path)),
        (name) => !database.test(name),
      ),
    ).toEqual([])
  })

  test('exchange imports core and schema, never store or services', () => {
    expect(
      strangers(
        within('lib/exchange/'),
        (name) => !isOurs(name) || /^lib\/(core|schema|exchange)\//.test(name),
      ),
    ).toEqual([])
  })

  test('services import neither web nor app nor a framework', () => {
    const ours = /^lib\/(core|schema|store|exchange|jobs|services)\//
    expect(
      strangers(within('lib/services/'), (name) =>
        isOurs(name) ? ours.test(name) : !/^(next|react)(\/|$)/.test(name),
      ),
    ).toEqual([])
  })

  test('web does not import the app, and nothing outside the app does', () => {
    expect(
      strangers(
        sources.filter(({ path }) => !path.startsWith('app/')),
        (name) => !name.startsWith('app/'),
      ),
    ).toEqual([])
  })

  test('the platform, which runs before anything is built, imports no other layer', () => {
    expect(
      strangers(
        within('lib/platform/'),
        (name) => !isOurs(name) || name.startsWith('lib/platform/') || name === 'lib/platform',
      ),
    ).toEqual([])
  })

  test('there is no file for everything and anything', () => {
    const drawers = sources.filter(({ path }) => /\/(utils?|helpers?|misc|common)\.(ts|tsx|js)$/.test(path))
    expect(drawers.map(({ path }) => path)).toEqual([])
  })
})

describe('the app', () => {
  const app = within('app/')

  test("reaches the store through verbs only; the accounts' own route is the exception", () => {
    const exception = 'app/api/auth/[...all]/route.ts -> lib/store/auth'
    expect(
      strangers(app, (name) => !/^lib\/(store|platform)(\/|$)/.test(name)).filter(
        (line) => line !== exception,
      ),
    ).toEqual([])
  })

  test("what runs in the browser imports core, schema and the app's own parts", () => {
    const client = app.filter(({ text }) => /^\s*['"]use client['"]/.test(text))
    expect(client.length).toBeGreaterThan(2)
    const packages = /^(react|react-dom|next)(\/.*)?$|^zod$|^react-hook-form$|^@hookform\/resolvers(\/.*)?$/
    // An action beside a form is called over the network, not imported into the browser.
    const action = (name: string, source: Source) =>
      /\/actions$/.test(name) || dirname(name) === dirname(source.path)
    const allowed = (name: string, source: Source) =>
      isOurs(name)
        ? /^lib\/(core|schema)\//.test(name) ||
          name.startsWith('app/ui/') ||
          name.endsWith('.css') ||
          action(name, source)
        : packages.test(name)
    expect(strangers(client, allowed)).toEqual([])
  })

  test('holds no formula: nothing but rounding and bounds outside the drawing', () => {
    const found = app
      .filter(({ path }) => !path.startsWith('app/ui/drawing/'))
      .flatMap(({ path, text }) =>
        [...text.matchAll(/\bMath\.(\w+)/g)].map((match) => `${path}: Math.${match[1]}`),
      )
      .filter((line) => !/Math\.(round|floor|ceil|trunc|min|max|abs)$/.test(line))
    expect(found).toEqual([])
  })

  test('every page of the shop names itself to the sign-in, which leads back to it', () => {
    const pages = app.filter(({ path }) => path.startsWith('app/(shop)/') && path.endsWith('/page.tsx'))
    expect(pages.length).toBeGreaterThan(30)
    expect(pages.filter(({ text }) => !/requireActor\(\s*[^)\s]/.test(text)).map(({ path }) => path)).toEqual(
      [],
    )
    expect(pages.filter(({ text }) => /requireActor\(\s*\)/.test(text)).map(({ path }) => path)).toEqual([])
  })

  describe('actions and routes', () => {
    const doors = app.filter(({ path }) => /\/(actions\.ts|route\.ts)$/.test(path))
    const exported = ({ path, text }: Source) =>
      [...text.matchAll(/export (?:async )?(?:function|const) (\w+)/g)]
        .map((match) => match[1] ?? '')
        .filter((name) => !['dynamic', 'runtime', 'maxDuration', 'revalidate'].includes(name))
        .map((name) => `${path} ${name}`)

    /** Open to somebody who is not signed in, each for its reason. */
    const open = [
      'app/sign-in/actions.ts signIn',
      'app/sign-in/actions.ts signOut',
      'app/first-lead/actions.ts firstLead',
      'app/api/health/route.ts GET',
      'app/api/v1/openapi.json/route.ts GET',
      'app/api/auth/[...all]/route.ts GET',
      'app/api/auth/[...all]/route.ts POST',
    ]

    test('are found', () => expect(doors.length).toBeGreaterThan(8))

    test('every one asks who acts, and acts through a verb; those that are open to everyone are named here', () => {
      const guarded = /\b(act|serve\w*|requireActor)\b/
      const unguarded = doors.flatMap((door) => (guarded.test(door.text) ? [] : exported(door)))
      expect(unguarded.filter((name) => !open.includes(name))).toEqual([])
      for (const door of doors.filter(({ text }) => guarded.test(text))) {
        expect(
          door.imports.filter((name) => /^lib\/(services|web)\//.test(name)),
          door.path,
        ).not.toEqual([])
      }
    })

    test('every exported action of a guarded file goes through the guard itself', () => {
      const loose = doors
        .filter(({ path, text }) => path.endsWith('actions.ts') && /^\s*['"]use server['"]/.test(text))
        .flatMap((door) =>
          exported(door).filter(
            (name) => !open.includes(name) && !guards(door.text, name.split(' ')[1] ?? ''),
          ),
        )
      expect(loose).toEqual([])
    })
  })
})

/** Whether a function of a file asks who acts: itself, or through another function of the file. */
function guards(text: string, name: string, seen: ReadonlySet<string> = new Set()): boolean {
  const start = new RegExp(`(?:function|const) ${name}\\b`).exec(text)
  if (start === null || seen.has(name)) return false
  const rest = text.slice(start.index + start[0].length)
  const end = /\n(?:export |async function |function |const )/.exec(rest)
  const body = end === null ? rest : rest.slice(0, end.index)
  if (/\b(act|requireActor)\(/.test(body)) return true
  const called = [...body.matchAll(/\b(\w+)\(/g)].map((match) => match[1] ?? '')
  return called.some((other) => other !== name && guards(text, other, new Set([...seen, name])))
}
