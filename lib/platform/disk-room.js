// @ts-check
import { statfsSync } from 'node:fs'
import { diskFull, Trouble } from './messages.js'

/** Postgres writes its log ahead in files of 16 MB, and ends itself when it can't. */
const leastToRunMb = 24
/** An empty cluster, the demo shop, and the log ahead. */
const leastToBeginMb = 200

/**
 * Before a server is started on a folder.
 * @param {string} folder
 * @param {{ begun: boolean }} shop whether its database is there already
 * @throws {Trouble} where there is no room
 */
export function checkRoom(folder, { begun }) {
  const leastMb = begun ? leastToRunMb : leastToBeginMb
  const roomMb = roomIn(folder)
  if (roomMb !== null && roomMb < leastMb) throw new Trouble(diskFull(folder, roomMb, leastMb))
}

/**
 * The sentence for a step that failed because the disk was full, null when it was something else. A database that
 * can't write its log ahead ends without a word to its clients: then what is left on the disk tells.
 * @param {unknown} error
 * @param {string} folder where the database lies
 */
export function fullDiskWords(error, folder) {
  const roomMb = roomIn(folder)
  if (roomMb === null) return null
  const code = error instanceof Error && 'code' in error ? error.code : undefined
  const said = code === '53100' || code === 'ENOSPC' || /no space left on device/i.test(String(error))
  const silent =
    code === 'CONNECTION_CLOSED' || code === 'CONNECTION_ENDED' || code === 'CONNECTION_DESTROYED'
  return said || (silent && roomMb < leastToRunMb) ? diskFull(folder, roomMb, leastToRunMb) : null
}

/** Megabytes that an ordinary account may still write; null where the system can't tell. @param {string} folder */
function roomIn(folder) {
  try {
    const { bavail, bsize } = statfsSync(folder)
    return (bavail * bsize) / 1e6
  } catch {
    return null
  }
}
