import type { ZoneResult } from '../../../results'
import { checkDynamicBends, placeOf } from '../../checks'
import { decide } from '../../decide'
import { defineItem } from '../../define-item'
import { SECTION_INPUTS } from '../../item-inputs'

export const cladAdhesive = defineItem({
  id: 'clad-adhesive',
  section: 'materials',
  severity: 'minor',
  question: 'Has adhesiveless clad been chosen where the bend is dynamic?',
  titles: { meets: 'Dynamic bends use adhesiveless clad', fails: 'Adhesive clad in a dynamic bend' },
  appliesTo: { needs: ['dynamic-bends', 'conductor-layers'], says: 'designs with a dynamic bend' },
  limits: ['cladAdhesiveLayersInDynamicBendCount'],
  sourceKeys: [],
  restsOn: [...SECTION_INPUTS, 'bends.*.zoneId', 'bends.*.use'],
  decidedWhen: 'early',
  answeredBy: ['member', 'fabricator'],
  monotone: [],
  check: (context) => {
    const limit = context.getLimit('cladAdhesiveLayersInDynamicBendCount')
    return checkDynamicBends(context, ({ bend, zone, place }) => {
      const layers = findCladAdhesive(zone)
      return decide({
        value: layers.length,
        limit,
        places: [place, ...layers.map((layer) => placeOf('layer', { id: layer.layerId, name: layer.name }))],
        what: `adhesive layers between foil and base film in ${bend.name}`,
        equation: 'count of layers',
      })
    })
  },
})

/** Adhesive that has copper on one face and base film on the other. */
function findCladAdhesive(zone: ZoneResult | null): ZoneResult['layers'][number][] {
  // Copper that is not there has no adhesive.
  const layers = (zone?.layers ?? []).filter(({ coverageFraction }) => coverageFraction !== 0)
  return layers.filter((layer, at) => {
    if (layer.kind !== 'adhesive') return false
    const neighbours = [layers[at - 1]?.kind, layers[at + 1]?.kind]
    return neighbours.includes('conductor') && neighbours.includes('base-film')
  })
}
