// @ts-check
import { networkInterfaces } from 'node:os'
import { dirname, join } from 'node:path'
import { announcement, lanAddresses } from './announce.js'
import { buildApp } from './build.js'
import { checkout } from './checkout.js'
import { onCommand } from './child.js'
import { generateClient } from './client.js'
import { startDatabaseServer } from './database-server.js'
import { fullDiskWords } from './disk-room.js'
import { readStartFlags, startHelp } from './flags.js'
import { checkPort } from './free-port.js'
import { installPackages } from './install.js'
import { keepAlive } from './keep-alive.js'
import { told } from './messages.js'
import { dataPlace, runFileOf } from './place.js'
import { endProcess, known } from './process-mark.js'
import { say } from './progress.js'
import { takeRun } from './run-file.js'
import { shutdown } from './shutdown.js'
import { startWebServer } from './web-server.js'

const stopping = shutdown({ codeWhenStopped: 0 })

/** Runs until it is stopped. @param {readonly string[]} argv */
export async function runShop(argv) {
  try {
    const flags = readStartFlags(argv, process.env)
    if (flags.help) say(startHelp)
    else await start(flags)
  } catch (error) {
    if (!stopping.begun()) console.error(`\n${wordsFor(error)}`)
    await stopping.end(1)
  }
}

/** @param {unknown} error */
function wordsFor(error) {
  const folder = dirname(dirname(runFileOf(checkout)))
  return fullDiskWords(error, folder) ?? told(error)
}

/** @param {import('./flags.js').StartFlags} flags */
async function start({ shop, lan, port }) {
  const place = dataPlace(checkout)
  const run = takeRun(place.run)
  stopping.add({ stop: async () => run.release(), force: () => run.release() })
  await endLeftovers(run.before)
  onCommand((pid) => run.note({ command: known(pid) }))
  const host = lan ? '0.0.0.0' : '127.0.0.1'
  await checkPort(port, host)

  await installPackages(checkout)
  await stopping.calm()
  // From here on the packages are there; what needs them is loaded only now.
  const outside = process.env.DATABASE_URL?.trim() || null
  if (outside !== null) await checkOutside(outside)
  await generateClient(checkout)
  await stopping.calm()
  await buildApp(checkout)
  await stopping.calm()
  const database = outside === null ? await embedded(place, shop) : await beside(place, outside, shop)
  run.note({ databaseUrl: database.url })
  await stopping.calm()

  const addresses = lan ? lanAddresses(networkInterfaces()) : []
  const appUrl = process.env.APP_URL?.trim().replace(/\/+$/, '') || `http://localhost:${port}`
  const options = {
    host,
    port,
    log: join(place.inside, 'web.log'),
    env: {
      DATABASE_URL: database.url,
      BETTER_AUTH_SECRET: database.secrets.authSecret,
      MOULDWRIGHT_SECRETS: database.secretsPath,
      APP_URL: appUrl,
      NEXT_SERVER_ACTIONS_ENCRYPTION_KEY: database.secrets.actionsKey,
    },
    onProcess: (/** @type {import('./process-mark.js').KnownProcess} */ web) => run.note({ web }),
  }
  // The long work gave others time to take it.
  await checkPort(port, host)
  await serve(options)
  run.note({ address: appUrl })
  say(
    announcement({
      port,
      appUrl,
      lan: lan ? addresses : null,
      state: database.state,
      secrets: database.secrets,
      logs: place.inside,
      embedded: outside === null,
    }),
  )
}

/** What a start that was killed left running: its web server would hold the port, its build would be in the way. @param {ReturnType<typeof takeRun>['before']} before */
async function endLeftovers(before) {
  for (const left of [before?.command, before?.web]) {
    if (left !== undefined)
      await endProcess(left, [
        ['SIGTERM', 3_000],
        ['SIGKILL', 3_000],
      ])
  }
}

/** @param {string} url */
async function checkOutside(url) {
  const { openDatabase } = await import('./connection.js')
  const sql = await openDatabase(url)
  await sql.end({ timeout: 2 })
}

/** @param {Parameters<typeof startWebServer>[1]} options */
async function serve(options) {
  const starting = startWebServer(checkout, options)
  stopping.add(
    keepAlive(starting, {
      again: () => startWebServer(checkout, options),
      onEnd: () => say(`The web server ended by itself; starting it again. See ${options.log}`),
      onReturn: () => say('The web server is back.'),
      onGiveUp: (why) =>
        void stopping.end(1, { because: `The web server can't be kept up: ${why}. See ${options.log}` }),
    }),
  )
  await starting
}

/**
 * The built-in database.
 * @param {import('./place.js').Place} place @param {import('./flags.js').StartFlags['shop']} shop
 */
async function embedded(place, shop) {
  const { embeddedShop } = await import('./shop-database.js')
  const ready = await embeddedShop(checkout, place, shop, (home, starting) => {
    stopping.add(
      keepAlive(starting, {
        again: async () => startDatabaseServer(home, (await starting).port),
        onEnd: () => say('The database ended by itself; starting it again.'),
        onReturn: () => say('The database is back.'),
        onGiveUp: (why) =>
          void stopping.end(1, {
            because:
              fullDiskWords(why, home.folder) ?? `The database can't be kept up: ${why}. See ${home.log}`,
          }),
      }),
    )
  })
  return ready
}

/** A server of the user's own. @param {import('./place.js').Place} place @param {string} url @param {import('./flags.js').StartFlags['shop']} shop */
async function beside(place, url, shop) {
  const { outsideShop } = await import('./shop-database.js')
  return outsideShop(checkout, place, url, shop)
}
