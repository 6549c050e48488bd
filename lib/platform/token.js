// @ts-check
/** `npm run token -- --name X --role Y`: makes a bearer token for scripts, and shows it once. */
import { createHash, randomBytes } from 'node:crypto'
import { checkout } from './checkout.js'
import { readTokenFlags } from './flags.js'
import { Trouble, told } from './messages.js'
import { runFileOf } from './place.js'
import { lives } from './process-mark.js'
import { say } from './progress.js'
import { readRun } from './run-file.js'

try {
  await makeToken(readTokenFlags(process.argv.slice(2)))
} catch (error) {
  console.error(told(error))
  process.exitCode = 1
}

/** @param {ReturnType<typeof readTokenFlags>} wanted */
async function makeToken({ name, role }) {
  const { openDatabase } = await import('./connection.js')
  const sql = await openDatabase(shopUrl())
  try {
    const token = `mw_${randomBytes(32).toString('base64url')}`
    const hash = createHash('sha256').update(token).digest('hex')
    await keep(sql, { name, role, hash })
    say(
      `${token}\n\nA token for "${name}" with the rights of a ${role}. It is shown this once: only its hash is kept.`,
    )
    say('Send it as a header: Authorization: Bearer <token>')
  } finally {
    await sql.end({ timeout: 2 })
  }
}

/**
 * @param {import('./connection.js').Sql} sql
 * @param {{ name: string, role: string, hash: string }} token
 */
async function keep(sql, { name, role, hash }) {
  try {
    await sql.begin(async (tx) => {
      const [row] = await tx`
        insert into api_token (name, role, token_hash) values (${name}, ${role}, ${hash}) returning id`
      await tx`
        insert into audit (by_name, act, record_kind, record_id, after)
        values ('npm run token', 'made', 'token', ${row?.id}, ${tx.json({ name, role })})`
    })
  } catch (error) {
    if (
      error instanceof Error &&
      'constraint_name' in error &&
      error.constraint_name === 'api_token_name_key'
    ) {
      throw new Trouble(
        `A living token is called "${name}" already. End it on People, or choose another name.`,
      )
    }
    throw error
  }
}

/** The shop that runs from this checkout, or the database of DATABASE_URL. */
function shopUrl() {
  const outside = process.env.DATABASE_URL?.trim()
  if (outside) return outside
  const run = readRun(runFileOf(checkout))
  if (run === null || !lives(run.launcher) || run.databaseUrl === undefined) {
    throw new Trouble(
      'The shop is not running. Start it in another window (npm start), or give its DATABASE_URL, then ask for the token again.',
    )
  }
  return run.databaseUrl
}
