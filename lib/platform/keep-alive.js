// @ts-check

/** @typedef {{ ended: Promise<void>, stop: () => Promise<void>, force: () => void }} Stoppable */

/**
 * Keeps a process up: starts it again each time it ends by itself, until it is stopped. One that keeps ending is
 * given up.
 * @template {Stoppable} T
 * @param {Promise<T>} first the process, being started
 * @param {object} ways
 * @param {() => Promise<T>} ways.again
 * @param {() => void} ways.onEnd called before each new start
 * @param {(next: T) => void} ways.onReturn
 * @param {(error: unknown) => void} ways.onGiveUp
 * @returns {{ stop: () => Promise<void>, force: () => void }}
 */
export function keepAlive(first, { again, onEnd, onReturn, onGiveUp }) {
  let latest = first
  /** @type {T | null} */
  let current = null
  let wanted = true
  /** @type {number[]} */
  let ends = []

  /** @param {T} one */
  function watch(one) {
    current = one
    one.ended.then(() => {
      if (!wanted) return
      const now = Date.now()
      ends = [...ends.filter((at) => now - at < 60_000), now]
      if (ends.length > mostEndsAMinute) {
        onGiveUp(`it ended ${ends.length} times within a minute`)
        return
      }
      onEnd()
      latest = again()
      latest.then(
        (next) => {
          watch(next)
          onReturn(next)
        },
        (error) => {
          if (wanted) onGiveUp(error)
        },
      )
    })
  }
  first.then(watch, () => {})

  return {
    stop: async () => {
      wanted = false
      const one = await latest.catch(() => null)
      await one?.stop()
    },
    force: () => {
      wanted = false
      current?.force()
    },
  }
}

const mostEndsAMinute = 5
