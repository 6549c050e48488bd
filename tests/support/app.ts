import { rmSync, writeFileSync } from 'node:fs'
import { join } from 'node:path'
import type { TestProject } from 'vitest/node'
import { buildIsFresh } from '#lib/platform/build.js'
import { loadDemo } from '#lib/platform/demo.js'
import { freePort } from '#lib/platform/free-port.js'
import { readSecrets } from '#lib/platform/secrets.js'
import { throwawayFolder } from '#lib/platform/throwaway-server.js'
import { startWebServer } from '#lib/platform/web-server.js'
import { migratedDatabase, testServer } from './database'

/** Somebody of the demo shop who can sign in. */
export interface TestAccount {
  readonly name: string
  readonly email: string
  readonly role: string
  readonly password: string
}

declare module 'vitest' {
  interface ProvidedContext {
    /** Where the app answers, without a slash at the end. */
    appUrl: string
    appAccounts: readonly TestAccount[]
    /** The app's own database, with the demo shop in it. */
    appDatabase: string
  }
}

/** Vitest's global set-up of the browser project: the built app, on a free port, with the demo shop. */
export default async function setUp(project: TestProject): Promise<() => Promise<void>> {
  const app = await startApp()
  project.provide('appUrl', app.url)
  project.provide('appAccounts', app.accounts)
  project.provide('appDatabase', app.database)
  return app.stop
}

export interface TestApp {
  readonly url: string
  readonly accounts: readonly TestAccount[]
  readonly database: string
  readonly stop: () => Promise<void>
}

/**
 * Starts the built app. On a database of the test server with the demo shop in it, or on the one given.
 * @throws Error when the screens are not built from the present sources
 */
export async function startApp(given?: { readonly database: string }): Promise<TestApp> {
  const checkout = process.cwd()
  if (!buildIsFresh(checkout)) {
    throw new Error(
      'The screens are not built from the present sources. "npm run test:browser" builds them first.',
    )
  }
  const folder = await throwawayFolder('app')
  const server = given ? null : await testServer()
  const database = given || server === null ? null : await migratedDatabase(server.url)
  const url = given?.database ?? database?.url ?? ''
  const secretsPath = join(folder, 'secrets.json')
  const secrets = await loadDemo(checkout, { url, secretsPath, secrets: readSecrets(secretsPath) })
  const port = await freePort()
  const address = `http://localhost:${port}`
  const log = join(folder, 'web.log')
  const web = await startWebServer(checkout, {
    host: '127.0.0.1',
    port,
    log,
    env: {
      DATABASE_URL: url,
      BETTER_AUTH_SECRET: secrets.authSecret,
      MOULDWRIGHT_SECRETS: secretsPath,
      APP_URL: address,
      NEXT_SERVER_ACTIONS_ENCRYPTION_KEY: secrets.actionsKey,
    },
    onProcess: (one) => writeFileSync(join(folder, 'web.json'), JSON.stringify(one)),
  })
  return {
    url: address,
    accounts: secrets.demoPasswords ?? [],
    database: url,
    stop: async () => {
      await web.stop()
      await database?.drop()
      await server?.stop()
      rmSync(folder, { recursive: true, force: true })
    },
  }
}
