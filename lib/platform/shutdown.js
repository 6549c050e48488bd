// @ts-check
import { endCommands } from './child.js'
import { say } from './progress.js'

/** @typedef {{ stop: () => Promise<void>, force: () => void }} Part */

/**
 * Stops things in the reverse of the order in which they were started, once. A second Ctrl-C forces.
 * `calm()` is asked between steps, so that nothing more is started once the stop has begun: it then never returns.
 * @param {{ codeWhenStopped: number }} how
 */
export function shutdown({ codeWhenStopped }) {
  /** @type {Part[]} */
  const parts = []
  /** @type {number | null} */
  let beganAt = null

  /**
   * @param {number} exitCode
   * @param {{ because?: string, lastWords?: string }} [words] said before and after
   * @returns {Promise<never>}
   */
  async function end(exitCode, { because, lastWords } = {}) {
    if (beganAt !== null) return new Promise(() => {})
    beganAt = Date.now()
    if (because) say(because)
    endCommands()
    for (const part of [...parts].reverse()) {
      await part.stop().catch((error) => say(`While stopping: ${error?.message ?? error}`))
    }
    if (lastWords) say(lastWords)
    process.exit(exitCode)
  }

  function signalled() {
    if (beganAt === null) {
      void end(codeWhenStopped, { because: '\nStopping (Ctrl-C again forces it) ...' })
      return
    }
    // npm passes on a Ctrl-C that the terminal has sent to us already: the echo is not a second one.
    if (Date.now() - beganAt < 800) return
    say('Forced.')
    for (const part of [...parts].reverse()) part.force()
    process.exit(1)
  }
  for (const signal of ['SIGINT', 'SIGTERM', 'SIGHUP']) process.on(signal, signalled)
  whenParentGoes(signalled)
  process.on('uncaughtException', (error) => {
    console.error(error)
    void end(1)
  })

  return {
    /** @param {Part} part */
    add: (part) => {
      parts.push(part)
    },
    end,
    begun: () => beganAt !== null,
    /** @returns {Promise<void>} */
    calm: () => (beganAt === null ? Promise.resolve() : new Promise(() => {})),
  }
}

/**
 * Under npm there is a shell between npm and us, and a signal to npm ends that shell alone: it never reaches us.
 * @param {() => void} stop
 */
function whenParentGoes(stop) {
  if (process.env.npm_lifecycle_event === undefined) return
  const parent = process.ppid
  const watch = setInterval(() => {
    if (process.ppid === parent) return
    clearInterval(watch)
    stop()
  }, 300)
  watch.unref()
}
