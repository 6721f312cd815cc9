import { existsSync, readdirSync, readFileSync } from 'node:fs'
import path from 'node:path'

/** Openly licensed circuits beside the checkout, with what was measured in them by a program that shares no code with this one. */
const ROOT = path.resolve('../shared/artwork')
const PLACES = [ROOT, path.resolve('../../shared/artwork')]
const folder = PLACES.find((place) => existsSync(place)) ?? null

/** What a fact file says of one file; which of these there are depends on the kind of file. */
export interface FileFacts {
  readonly file: string
  readonly kind?: string
  readonly areaMm2?: number | null
  readonly extentMm?: readonly number[] | null
  readonly extentCentresMm?: readonly number[] | null
  readonly toolDiametersMm?: Readonly<Record<string, number>>
  readonly drillHits?: Readonly<Record<string, number>>
  readonly routedMoves?: Readonly<Record<string, number>>
  readonly hitsTotal?: number
  readonly [count: string]: unknown
}

export interface RealFile {
  readonly set: string
  readonly facts: FileFacts
  readonly read: () => Uint8Array
}

/** Every file of every set; none where the folder is not there. */
export function listRealFiles(): RealFile[] {
  if (folder === null) return []
  return readdirSync(folder).flatMap((set) => {
    const { files } = JSON.parse(readFileSync(path.join(folder, set, 'facts.json'), 'utf8')) as { files: FileFacts[] }
    return files.map((facts) => ({ set, facts, read: () => readFileSync(path.join(folder, set, facts.file)) }))
  })
}

/** Whatever lies in a set's folder, lists of extensions and notes too, as somebody would upload it. */
export function readWholeSet(set: string): { name: string; bytes: Uint8Array }[] {
  if (folder === null) return []
  const place = path.join(folder, set)
  return readdirSync(place).map((name) => ({ name, bytes: new Uint8Array(readFileSync(path.join(place, name))) }))
}
