import type { Outcome } from '../../../results'
import { listBends, notComputedLayers, placeOf } from '../../checks'
import { decide, makeNoneAllowed, notApplicable, notComputed } from '../../decide'
import { defineItem } from '../../define-item'
import { listConductorLayers } from '../../needs'

export const planeInBend = defineItem({
  id: 'plane-in-bend',
  section: 'geometry',
  severity: 'major',
  question: 'Are planes hatched or split where they bend?',
  titles: { meets: 'Planes are hatched or split in bends', fails: 'A solid plane runs through a bend' },
  appliesTo: { needs: ['bends', 'conductor-layers'], says: 'bends with a plane in them' },
  limits: [],
  sourceKeys: ['guideDesignRules'],
  restsOn: ['construction.layers', 'construction.zones', 'bends.*.zoneId'],
  decidedWhen: 'early',
  answeredBy: ['member'],
  monotone: [],
  check: (context) => {
    const outcomes: Outcome[] = []
    for (const checked of listBends(context)) {
      const { bend, zone, place } = checked
      const unknown = notComputedLayers(checked)
      if (unknown !== null) outcomes.push(unknown)
      for (const layerResult of listConductorLayers(zone)) {
        const layer = context.layersById.get(layerResult.layerId)
        if (layer?.kind !== 'conductor' || layer.role === 'signal') continue
        if (layer.planePattern === 'none') continue
        const places = [place, placeOf('layer', layer)]
        if (layer.planePattern === null) {
          const index = context.design.construction.layers.indexOf(layer)
          outcomes.push(
            notComputed(['construction', 'layers', index, 'planePattern'], `pattern of plane ${layer.name}`, places),
          )
          continue
        }
        outcomes.push(
          decide({
            value: layer.planePattern === 'solid' ? 1 : 0,
            limit: makeNoneAllowed('solidPlanesInBendCount', 'guideDesignRules'),
            places,
            what: `solid planes on ${layer.name} in bend ${bend.name}`,
            equation: 'pattern as specified',
            isTyped: true,
          }),
        )
      }
    }
    return outcomes.length === 0 ? [notApplicable('no plane runs through a bend')] : outcomes
  },
})
