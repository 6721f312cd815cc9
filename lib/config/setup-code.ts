import 'server-only'
import { randomInt } from 'node:crypto'
import { existsSync, mkdirSync, readFileSync, rmSync } from 'node:fs'
import path from 'node:path'
import { keepOrCreate } from './secrets'

/** Without letters and digits that look like others on a screen. */
const ALPHABET = '23456789ABCDEFGHJKMNPQRSTVWXYZ'
/** 12 of 30 signs: 58 bits, and guesses are counted. */
const GROUPS = 3
const GROUP_LENGTH = 4

const placeOf = (dataFolder: string): string =>
  path.join(/* turbopackIgnore: true */ dataFolder, 'secrets', 'setup-code')

/**
 * The code that the first set-up asks for: made where there is none, printed by the start program, dropped with the first
 * account. Anyone who reads the console or the data folder may set the installation up, and nobody else, wherever they come
 * from.
 */
export function ensureSetupCode(dataFolder: string): string {
  const makeGroup = () => Array.from({ length: GROUP_LENGTH }, () => ALPHABET[randomInt(ALPHABET.length)]).join('')
  mkdirSync(path.dirname(placeOf(dataFolder)), { recursive: true, mode: 0o700 })
  return keepOrCreate(placeOf(dataFolder), () => Array.from({ length: GROUPS }, makeGroup).join('-')).trim()
}

/** Null where none was made. */
export function readSetupCode(dataFolder: string): string | null {
  const file = placeOf(dataFolder)
  return existsSync(file) ? readFileSync(file, 'utf8').trim() : null
}

export function dropSetupCode(dataFolder: string): void {
  rmSync(placeOf(dataFolder), { force: true })
}
