// @ts-check
/**
 * @typedef {{ version?: string, integrity?: string, resolved?: string, optional?: boolean, devOptional?: boolean, peer?: boolean, link?: boolean }} LockedPackage
 * @typedef {{ packages?: Record<string, LockedPackage> }} Lockfile
 */

/**
 * What an installed tree lacks, measured by npm's own record of it (node_modules/.package-lock.json).
 * Optional packages may be missing: most belong to other kinds of machine.
 * @param {Lockfile} lock package-lock.json
 * @param {Lockfile} installed
 * @returns {readonly string[]} folders that are missing or of another version
 */
export function missingPackages(lock, installed) {
  const present = installed.packages ?? {}
  return Object.entries(lock.packages ?? {})
    .filter(([folder, wanted]) => {
      if (folder === '') return false
      const found = present[folder]
      if (found === undefined) return !(wanted.optional || wanted.devOptional)
      return found.version !== wanted.version || found.integrity !== wanted.integrity
    })
    .map(([folder]) => folder)
}
