import { readFileSync } from 'node:fs'

/** The text of a file of the demo data, as somebody would choose it in the browser. */
export function readDesignText(name: 'skua-rev-a' | 'skua-rev-b' | 'pipit-rev-a'): string {
  return readFileSync(new URL(`./designs/${name}.json`, import.meta.url), 'utf8')
}

/** Profile, holes apart by whether their walls are plated, both conductor layers, openings and stiffener: as the plan draws them. */
export const PIPIT_ARTWORK = [
  'pipit-profile.gbr',
  'pipit-drill-plated.drl',
  'pipit-drill-unplated.drl',
  'pipit-l1.gbr',
  'pipit-l2.gbr',
  'pipit-coverlay-top.gbr',
  'pipit-coverlay-bottom.gbr',
  'pipit-stiffener-bottom.gbr',
] as const

/** Made from an earlier layout: the boards lack two through holes, and the vias of the hinge are larger than stated. */
export const SKUA_ARTWORK = ['skua-a-profile.gbr', 'skua-a-drill-boards.drl', 'skua-a-drill-flex.drl'] as const

export function readArtwork(
  name: (typeof PIPIT_ARTWORK)[number] | (typeof SKUA_ARTWORK)[number],
): Uint8Array<ArrayBuffer> {
  return new Uint8Array(readFileSync(new URL(`./artwork/${name}`, import.meta.url)))
}

export function toBytes(text: string): Uint8Array<ArrayBuffer> {
  return new TextEncoder().encode(text)
}
