// @ts-check
import { readFileSync } from 'node:fs'
import { join } from 'node:path'
import { childEnvironment, runQuietly } from './child.js'
import { longStep } from './progress.js'
import { keepSecrets, readableCode } from './secrets.js'

/**
 * Puts the demo shop into an empty database. The passwords of its accounts are made here and kept in the secrets;
 * the loader reads them there.
 * @param {string} checkout
 * @param {{ url: string, secretsPath: string, secrets: import('./secrets.js').Secrets }} into
 * @returns {Promise<import('./secrets.js').Secrets>} with the demo accounts' passwords
 */
export async function loadDemo(checkout, { url, secretsPath, secrets }) {
  /** @type {{ name: string, email: string, role: string }[]} */
  const accounts = JSON.parse(readFileSync(join(checkout, 'prisma/demo/accounts.json'), 'utf8'))
  const demoPasswords = accounts.map(({ name, email, role }) => ({
    name,
    email,
    role,
    password: readableCode(),
  }))
  keepSecrets(secretsPath, { ...secrets, demoPasswords, demoLoading: true })
  await longStep('Putting in the demo shop', () =>
    runQuietly(process.execPath, ['--conditions=react-server', '--import', 'tsx', 'prisma/demo/load.ts'], {
      cwd: checkout,
      env: childEnvironment({
        DATABASE_URL: url,
        MOULDWRIGHT_SECRETS: secretsPath,
        BETTER_AUTH_SECRET: secrets.authSecret,
      }),
      failure: 'The demo shop could not be put in. "npm start -- --empty" starts without it',
    }),
  )
  return keepSecrets(secretsPath, { ...secrets, demoPasswords, demoLoading: false })
}
