import { readFileSync } from 'node:fs'

/** The text of a file of the demo data, as somebody would choose it in the browser. */
export function readDesignText(name: 'skua-rev-a' | 'skua-rev-b' | 'pipit-rev-a'): string {
  return readFileSync(new URL(`./designs/${name}.json`, import.meta.url), 'utf8')
}

/** Profile, and holes apart by whether their walls are plated. */
export const PIPIT_ARTWORK = ['pipit-profile.gbr', 'pipit-drill-plated.drl', 'pipit-drill-unplated.drl'] as const
export type PipitArtwork = (typeof PIPIT_ARTWORK)[number]

export function readArtwork(name: PipitArtwork): Uint8Array<ArrayBuffer> {
  return new Uint8Array(readFileSync(new URL(`./artwork/${name}`, import.meta.url)))
}

export function toBytes(text: string): Uint8Array<ArrayBuffer> {
  return new TextEncoder().encode(text)
}
