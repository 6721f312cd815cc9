import { createHash } from 'node:crypto'
import { existsSync, mkdirSync, readdirSync, readFileSync, statSync, writeFileSync } from 'node:fs'
import path from 'node:path'
import { cacheFolder, inRoot, rootFolder } from './places.mjs'

/**
 * Every file under the given files and folders, as sorted paths relative to the root with forward slashes.
 * Names that do not exist are left out; hidden files and the listed folders are skipped.
 * @param {string[]} names  files or folders, relative to the root
 * @param {{ except?: string[] }} [options]  folders to leave out, relative to the root
 */
export function listFiles(names, { except = [] } = {}) {
  /** @type {string[]} */
  const found = []
  /** @param {string} absolute */
  const visit = (absolute) => {
    const relative = path.relative(rootFolder, absolute).split(path.sep).join('/')
    if (except.includes(relative)) return
    if (!statSync(absolute).isDirectory()) {
      found.push(relative)
      return
    }
    for (const entry of readdirSync(absolute)) {
      if (!entry.startsWith('.')) visit(path.join(absolute, entry))
    }
  }
  for (const name of names) {
    const absolute = inRoot(name)
    if (existsSync(absolute)) visit(absolute)
  }
  return found.sort()
}

/**
 * SHA-256 over the names and contents of files, so that a renamed, added or deleted file counts as a change.
 * @param {string[]} files  relative to the root
 * @param {string[]} [facts]  anything else the result depends on
 */
export function fingerprint(files, facts = []) {
  const hash = createHash('sha256')
  for (const fact of facts) hash.update(`${fact}\0`)
  for (const file of files) {
    hash.update(`${file}\0`)
    hash.update(readFileSync(inRoot(file)))
    hash.update('\0')
  }
  return hash.digest('hex')
}

/** @param {string} step */
const stampFile = (step) => path.join(cacheFolder, `${step}.stamp`)

/**
 * Whether a step already ran on exactly these contents.
 * @param {string} step
 * @param {string} print
 */
export function isStamped(step, print) {
  return existsSync(stampFile(step)) && readFileSync(stampFile(step), 'utf8') === print
}

/**
 * @param {string} step
 * @param {string} print
 */
export function stamp(step, print) {
  mkdirSync(cacheFolder, { recursive: true })
  writeFileSync(stampFile(step), print)
}
