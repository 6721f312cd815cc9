import path from 'node:path'
import { fileURLToPath } from 'node:url'

/** The project's root folder, absolute. */
export const rootFolder = path.resolve(path.dirname(fileURLToPath(import.meta.url)), '..', '..')

/**
 * Stamps and other results that may be deleted at any time. Inside node_modules on purpose: a fresh install throws the
 * stamps away, and whatever was made with the old packages is then made again.
 */
export const cacheFolder = path.join(rootFolder, 'node_modules', '.cache', 'bendworthy')

/** @param {string[]} parts */
export const inRoot = (...parts) => path.join(rootFolder, ...parts)
