import { mkdtempSync, statfsSync } from 'node:fs'
import { tmpdir } from 'node:os'
import path from 'node:path'

/** Linux keeps what lies here in memory. */
const IN_MEMORY = '/dev/shm'
/** A container may have 64 MB there, which the data folders of the tests would fill. */
const LEAST_FREE_BYTES = 2 ** 31

/**
 * A new folder for what ends with the tests. Where there is room it lies in memory: every commit of the application waits for the disk, some 6 ms, and nobody
 * needs that of a test's own database. Whether it does wait is asked by `data-layer/durability.test.ts`.
 *
 * @param {string} prefix of the folder's name
 */
export function makeShortLivedFolder(prefix) {
  return mkdtempSync(path.join(hasRoomInMemory() ? IN_MEMORY : tmpdir(), prefix))
}

function hasRoomInMemory() {
  try {
    const { bavail, bsize } = statfsSync(IN_MEMORY)
    return bavail * bsize >= LEAST_FREE_BYTES
  } catch {
    return false
  }
}
