import { callByName } from '../../../design'
import { listBends, notComputedSection, placeOf } from '../../checks'
import { decide, notApplicable } from '../../decide'
import { defineItem } from '../../define-item'
import { SECTION_INPUTS } from '../../item-inputs'
import { withinModel, withoutLeafLimits } from '../../model-reach'
import { WIDER_TOLERANCES } from '../../monotone'

export const shieldStiffness = defineItem({
  id: 'shield-stiffness',
  section: 'materials',
  severity: 'minor',
  question: 'Does shielding leave the bends flexible enough?',
  titles: { meets: 'Shields add little stiffness', fails: 'A shield brings much of the stiffness of a bend' },
  appliesTo: { needs: ['bends'], says: 'bends that carry a shield film' },
  limits: ['shieldStiffnessShareFraction'],
  sourceKeys: ['compositeBeam', 'plasticBending'],
  restsOn: [...SECTION_INPUTS, 'bends'],
  decidedWhen: 'early',
  answeredBy: ['member', 'lead'],
  monotone: WIDER_TOLERANCES,
  check: (context) => {
    const limit = context.getLimit('shieldStiffnessShareFraction')
    return listBends(context).map(({ bend, result, zone, index, place }) => {
      const shields = (zone?.layers ?? []).filter((layer) => layer.kind === 'shield-film')
      if (shields.length === 0 && zone !== null && zone.layers.length > 0)
        return notApplicable(`no shield film in ${callByName('bend', bend.name)}`, [place])
      const unknown = notComputedSection({ bend, result, index, place })
      if (unknown !== null) return unknown
      if (result.shieldShare === null)
        return notApplicable(`no shield film in ${callByName('bend', bend.name)}`, [place])
      const decided = decide({
        value: result.shieldShare.nominal,
        range: result.shieldShare.range,
        rangeOver: 'both',
        limit,
        places: [place, ...shields.map((layer) => placeOf('layer', { id: layer.layerId, name: layer.name }))],
        what: `share of stiffness that shields bring in ${callByName('bend', bend.name)}`,
        equation:
          "sum of E' t ((y - y_n)^2 + t^2/12) of the shields / rigidity of the leaves; as formed, by their moments",
        sourceKey: 'compositeBeam',
        cautions: ['The neutral axis is that of the shielded section; without the shield it would move.'],
      })
      // The share changes with the radius, and either way.
      return withinModel(withoutLeafLimits(result), decided, () => null)
    })
  },
})
