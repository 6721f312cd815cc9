import { getZone, withoutConstruction } from '../changes'
import type { ItemExample } from '../item-example'

/** A layer that is left in no zone goes altogether. */
const without =
  (zoneId: string, ...layerIds: string[]): ItemExample['change'] =>
  (design) => {
    const { construction } = design
    const zone = getZone(design, zoneId)
    zone.presence = zone.presence.filter(({ layerId }) => !layerIds.includes(layerId))
    const isSomewhere = (id: string) =>
      construction.zones.some(({ presence }) => presence.some((at) => at.layerId === id))
    construction.layers = construction.layers.filter(({ id }) => isSomewhere(id))
  }

export const sheetBondsExamples: readonly ItemExample[] = [
  { name: 'adhesive under the cover and the stiffener', expect: 'meets' },
  { name: 'cover film straight on copper', change: without('arm', 'cover-top-adhesive'), expect: 'fails' },
  { name: 'a stiffener that nothing holds', change: without('fingers', 'stiffener-adhesive'), expect: 'fails' },
  { name: 'laminate on the base film', change: without('board', 'prepreg-bottom'), expect: 'fails' },
  { name: 'nothing is drawn up yet', change: withoutConstruction, expect: 'not-computed' },
]
