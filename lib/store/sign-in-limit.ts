/**
 * How often somebody may try to sign in: so many tries from one address, and so many for one account without success,
 * within a while. Kept in this process: a shop has one, and a restart forgives.
 */

interface Rule {
  readonly most: number
  readonly withinMs: number
}

/** Tries from one address; the same for the form and for the accounts' own route. */
const perAddress: Rule = { most: 3, withinMs: 10_000 }
/** Tries for one account that didn't succeed, from wherever they come. */
const perAccount: Rule = { most: 5, withinMs: 60_000 }

/** More than this many addresses and accounts are not remembered at once. */
const mostKept = 10_000

export interface SignInLimit {
  /** Notes a try and answers 0, or answers how many seconds to wait. Tries side by side count before they are judged. */
  readonly attempt: (address: string | null, account: string, now: number) => number
  readonly succeeded: (account: string) => void
}

export function signInLimit(): SignInLimit {
  const tries = new Map<string, readonly number[]>()
  const failures = new Map<string, readonly number[]>()
  return {
    attempt(address, account, now) {
      const wait = Math.max(
        address === null ? 0 : waitMs(tries, address, perAddress, now),
        waitMs(failures, key(account), perAccount, now),
      )
      if (wait > 0) return Math.ceil(wait / 1000)
      if (address !== null) note(tries, address, perAddress, now)
      note(failures, key(account), perAccount, now)
      return 0
    },
    succeeded: (account) => void failures.delete(key(account)),
  }
}

const key = (account: string) => account.trim().toLowerCase()

function waitMs(
  times: ReadonlyMap<string, readonly number[]>,
  name: string,
  { most, withinMs }: Rule,
  now: number,
): number {
  const lately = (times.get(name) ?? []).filter((at) => at > now - withinMs)
  const oldest = lately[lately.length - most]
  return oldest === undefined ? 0 : oldest + withinMs - now
}

function note(times: Map<string, readonly number[]>, name: string, { withinMs }: Rule, now: number): void {
  const lately = (times.get(name) ?? []).filter((at) => at > now - withinMs)
  // Away and in again: the map's order is that of the last use, and what is oldest goes first.
  times.delete(name)
  times.set(name, [...lately, now])
  for (const old of times.keys()) {
    if (times.size <= mostKept) break
    times.delete(old)
  }
}
