// @ts-check
/**
 * The sentences that the command line says when something stands in the way.
 * Each names the place and the cure, so nobody has to read a stack trace.
 */

/** A hindrance that a person can clear: shown as its sentence alone, without a stack. */
export class Trouble extends Error {
  /** @override */
  name = 'Trouble'
}

/** @param {string} found @param {string} least */
export function nodeTooOld(found, least) {
  return `Mouldwright needs Node ${least} or newer, and this is Node ${found}. Install a newer Node (nodejs.org) and try again.`
}

/** @param {number} port */
export function portTaken(port) {
  return `Port ${port} is used by another program. Stop that program, or choose another port: PORT=${port + 1} npm start`
}

/** @param {number} port */
export function portForbidden(port) {
  return `This account may not open port ${port} (ports below 1024 are for root). Choose another: PORT=3000 npm start`
}

/** @param {number} pid @param {string | undefined} address */
export function alreadyRunning(pid, address) {
  return address
    ? `Mouldwright is already running from this folder (process ${pid}), at ${address}. Use that one, or stop it first: kill ${pid}`
    : `Mouldwright is just being started from this folder (process ${pid}). Wait for it, or stop it first: kill ${pid}`
}

/** @param {string} platform */
export function platformUnknown(platform) {
  return `No built-in database for this kind of machine (${platform}). Point DATABASE_URL to a Postgres server, 15 or newer, and start again.`
}

/** @param {string} platform */
export function platformPackageMissing(platform) {
  return `The built-in database for ${platform} is not installed. Run "npm ci --include=optional --ignore-scripts", or point DATABASE_URL to a Postgres server, 15 or newer.`
}

/** @param {string} found @param {string} wanted @param {string} folder */
export function dataOfOtherVersion(found, wanted, folder) {
  return `The data in ${folder} was written by Postgres ${found}, and this code brings Postgres ${wanted}. Go back to the code that wrote it, make a backup there, and restore the backup here.`
}

/** @param {string} owner @param {string} folder */
export function shopBelongsToAccount(owner, folder) {
  return `The shop of this checkout belongs to the account ${owner} (its data is in ${folder}). Start it as that account, not as root.`
}

/** @param {string} folder */
export function shopBelongsToRoot(folder) {
  return `The shop of this checkout was made by root (its data is in ${folder}). Start it as root, or remove .mouldwright/where.json to begin a new shop here.`
}

/** @param {string} path @param {string} reason */
export function secretsUnreadable(path, reason) {
  return `${path} can't be read (${reason}). Put back a good copy; without one move it away, and everybody signs in again.`
}

/** @param {string} code @param {string} file */
export function databaseNewer(code, file) {
  return `The database has a newer schema than the code: it holds the migration ${code}, which ${file} doesn't have. Update the code to the version that last ran on this database.`
}

/** @param {string} name */
export function migrationChanged(name) {
  return `The migration ${name} was changed after this database applied it. Put prisma/migrations/${name}/migration.sql back as it was, and put the change into a new migration.`
}

/** @param {string} name @param {string} reason */
export function migrationFailed(name, reason) {
  return `The migration ${name} failed and was undone whole; the database is as it was before it. Postgres says: ${reason}`
}

/** @param {string} name */
export function migrationHalfDone(name) {
  return `The migration ${name} was begun by another tool and never finished. Clear that up first ("prisma migrate resolve"), then start again.`
}

/** @param {string} folder @param {number} roomMb @param {number} leastMb */
export function diskFull(folder, roomMb, leastMb) {
  return `The disk is full: where ${folder} lies, ${Math.floor(roomMb)} MB are left, and the shop needs ${leastMb} MB. Make room and start again; what was written stays.`
}

/**
 * What to show of an error: one sentence where a person can clear it, else the stack, since it is a fault of the code.
 * @param {unknown} error
 * @returns {string}
 */
export function told(error) {
  return sentenceFor(error) ?? (error instanceof Error ? (error.stack ?? error.message) : String(error))
}

/** @param {unknown} error @returns {string | null} */
function sentenceFor(error) {
  if (error instanceof Trouble) return error.message
  if (!(error instanceof Error) || !('code' in error)) return null
  const place = 'path' in error ? String(error.path) : 'A file'
  switch (error.code) {
    case 'EACCES':
    case 'EPERM':
      return `${place} can't be used by this account (${error.code}). Run this as the account that owns the checkout.`
    case 'EROFS':
      return `${place} lies on a disk that can only be read. Move the checkout to one that can be written.`
    case 'ENOSPC':
      return `The disk is full: ${place} can't be written. Make room and try again.`
    default:
      return null
  }
}
