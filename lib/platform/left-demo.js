// @ts-check
import { Trouble } from './messages.js'

/** @typedef {import('./secrets.js').Secrets} Secrets */

/**
 * A demo shop that its lead has left is a shop of the user's own, in the demo's database. It moves to the place of the own
 * shop, so that the demo can be put in anew beside it and nothing ever takes it for the demo. A shop of the user's own
 * that is there already is never touched: then it stays where it is.
 *
 * @param {import('./connection.js').Sql} sql as an administrator, on another database of the server
 * @param {{ own: string, demo: string }} names of the two databases
 * @param {(name: string) => Promise<import('./shop-state.js').ShopState | null>} stateOf what a database holds; null when it
 *   is not there or has no tables yet
 * @param {() => void} beforeMove keeps in mind, before anything is moved, that the own shop is the one to be shown: a start
 *   that breaks off in between then goes on here
 * @returns {Promise<'no' | 'moved' | 'stays'>} stays: it is the user's own, in the demo's database
 */
export async function moveLeftDemo(sql, names, stateOf, beforeMove) {
  if ((await stateOf(names.demo))?.shop !== 'own') return 'no'
  const there = await stateOf(names.own)
  if (there !== null && (there.shop !== 'none' || there.people > 0)) return 'stays'
  beforeMove()
  // Empty, or without tables: nothing is lost with it.
  await sql`drop database if exists ${sql(names.own)}`
  await sql`alter database ${sql(names.demo)} rename to ${sql(names.own)}`
  return 'moved'
}

/**
 * The secrets of a shop that was a demo: the passwords of its accounts still open it, but are no longer the demo's.
 * @param {Secrets} secrets
 * @returns {Secrets}
 */
export function ownSecrets({ demoPasswords, ...secrets }) {
  return {
    ...secrets,
    shop: 'own',
    demoLoading: false,
    ...(demoPasswords ? { formerDemoPasswords: demoPasswords } : {}),
  }
}

/** @throws {Trouble} */
export function refuseDemoBeside() {
  throw new Trouble(
    'The demo shop was left and is a shop of your own now; another one of your own ("npm start -- --empty") keeps it from moving out of the demo\'s place. ' +
      'So no demo is put in. Start without --demo.',
  )
}
