// @ts-check
import { realpathSync } from 'node:fs'
import { dirname } from 'node:path'
import { fileURLToPath } from 'node:url'

/** The folder that holds package.json, with symbolic links resolved: the data place is keyed by it. */
export const checkout = realpathSync(dirname(dirname(dirname(fileURLToPath(import.meta.url)))))
