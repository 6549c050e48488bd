// @ts-check

/** @param {string} line */
export function say(line) {
  process.stdout.write(`${line}\n`)
}

/**
 * Runs a step that may be long: says nothing if it is quick, else what is being done, now and then how long
 * it has taken, and the time at the end.
 * @template T
 * @param {string} label
 * @param {() => Promise<T>} work
 * @returns {Promise<T>}
 */
export async function longStep(label, work) {
  const began = Date.now()
  const seconds = () => Math.round((Date.now() - began) / 1000)
  let shown = false
  const first = setTimeout(() => {
    shown = true
    say(`${label} ...`)
  }, 700)
  const tick = setInterval(() => say(`  still at it (${seconds()} s)`), 20_000)
  try {
    const result = await work()
    if (shown) say(`  done (${seconds()} s)`)
    return result
  } finally {
    clearTimeout(first)
    clearInterval(tick)
  }
}
