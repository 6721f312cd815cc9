import { FLAT_ZONE_KINDS } from '../../../design'
import type { Outcome } from '../../../results'
import { inSentence } from '../../../units'
import { placeOf } from '../../checks'
import { decide, notComputed, notComputedFrom } from '../../decide'
import { defineItem } from '../../define-item'
import { SECTION_INPUTS, TEMPERATURE_INPUTS } from '../../item-inputs'
import { WIDER_TOLERANCES } from '../../monotone'

const CAUTIONS = [
  'Elastic layers alone: adhesives that soften or creep, moisture, and stress from soldering are left out. Measure a part where flatness matters.',
] as const

export const thermalCurl = defineItem({
  id: 'thermal-curl',
  section: 'materials',
  severity: 'minor',
  question: 'Do zones that carry parts or contacts stay flat over the operating temperatures?',
  titles: { meets: 'Zones stay flat over temperature', fails: 'A zone curls with temperature' },
  appliesTo: { needs: ['flat-zones'], says: 'parts with a rigid, stiffened or finger zone' },
  limits: ['thermalBowMountedPct', 'thermalBowPct'],
  sourceKeys: ['bimetal'],
  restsOn: [...SECTION_INPUTS, ...TEMPERATURE_INPUTS, 'brief.flatAtDegC', 'brief.solderedAssembly'],
  decidedWhen: 'early',
  answeredBy: ['member', 'fabricator'],
  monotone: [...WIDER_TOLERANCES, { path: 'construction.zones[].lengthMm', worse: 'larger' }],
  check: (context) => {
    const { solderedAssembly } = context.design.brief
    return context.zones
      .filter(({ kind }) => FLAT_ZONE_KINDS.has(kind))
      .map((zone): Outcome => {
        const places = [placeOf('zone', { id: zone.zoneId, name: zone.name })]
        const curl = zone.thermalCurl
        if (curl === null) return notComputed(['construction', 'zones'], `curl of ${zone.name}`, places)
        const { missing, risePct, riseRangePct, curvaturePerMm, atDegC } = curl
        if (risePct === null || riseRangePct === null || curvaturePerMm === null || atDegC === null) {
          return notComputedFrom(missing, places)
        }
        // Nobody said that nothing is soldered: the zone may carry parts.
        const carriesParts = zone.kind !== 'finger' && solderedAssembly !== false
        return decide({
          value: risePct,
          range: riseRangePct,
          rangeOver: 'both',
          limit: context.getLimit(carriesParts ? 'thermalBowMountedPct' : 'thermalBowPct'),
          places,
          what: `bow of ${zone.name} at ${inSentence(atDegC, 'degC')}`,
          equation: 'rise of the arc over the longer side of the zone, from the expansion of its layers',
          sourceKey: 'bimetal',
          cautions: CAUTIONS,
          remark:
            curvaturePerMm === 0
              ? undefined
              : `The ${curvaturePerMm > 0 ? 'bottom' : 'top'} face is on the outside of the curl.`,
        })
      })
  },
})
