import type { Outcome } from '../../../results'
import { placeOf } from '../../checks'
import { decide } from '../../decide'
import { defineItem } from '../../define-item'
import { SECTION_INPUTS } from '../../item-inputs'
import { WIDER_TOLERANCES } from '../../monotone'

export const coverlayAdhesive = defineItem({
  id: 'coverlay-adhesive',
  section: 'materials',
  severity: 'minor',
  question: 'Is the coverlay adhesive as thick as the rule of thumb requires for its copper?',
  titles: { meets: 'Coverlay adhesive suits its copper', fails: 'Coverlay adhesive is thin for its copper' },
  appliesTo: { needs: ['coverlay', 'conductor-layers'], says: 'constructions with coverlay' },
  limits: ['coverlayAdhesivePerCopperRatio'],
  sourceKeys: [],
  restsOn: [...SECTION_INPUTS],
  decidedWhen: 'early',
  answeredBy: ['member', 'fabricator'],
  monotone: WIDER_TOLERANCES,
  check: (context) => {
    const limit = context.getLimit('coverlayAdhesivePerCopperRatio')
    const outcomes: Outcome[] = []
    for (const zone of context.zones) {
      zone.layers.forEach((adhesive, at) => {
        if (adhesive.kind !== 'adhesive') return
        const neighbours = [zone.layers[at - 1], zone.layers[at + 1]]
        const copper = neighbours.find((layer) => layer?.kind === 'conductor')
        const film = neighbours.find((layer) => layer?.kind === 'coverlay-film')
        const bought = context.layersById.get(adhesive.layerId)
        if (copper === undefined || copper.nominalUm === 0 || film === undefined || bought?.kind !== 'adhesive') return
        outcomes.push(
          decide({
            value: bought.thicknessUm / copper.nominalUm,
            range: {
              low: (bought.thicknessUm - bought.toleranceMinusUm) / copper.maxUm,
              high: (bought.thicknessUm + bought.tolerancePlusUm) / Math.max(copper.minUm, 0.01 * copper.nominalUm),
            },
            limit,
            places: [
              placeOf('zone', { id: zone.zoneId, name: zone.name }),
              placeOf('layer', { id: adhesive.layerId, name: adhesive.name }),
            ],
            what: `adhesive per copper on ${copper.name} in ${zone.name}`,
            equation: 'adhesive as bought / finished copper',
          }),
        )
      })
    }
    return outcomes
  },
})
