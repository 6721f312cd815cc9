import { listBends, placeOf } from '../../checks'
import { decide, notApplicable } from '../../decide'
import { defineItem } from '../../define-item'
import { WIDER_TOLERANCES } from '../../monotone'

export const shieldStiffness = defineItem({
  id: 'shield-stiffness',
  section: 'materials',
  severity: 'minor',
  question: 'Does shielding leave the bends flexible enough?',
  titles: { meets: 'Shields add little stiffness', fails: 'A shield brings much of the stiffness of a bend' },
  appliesTo: { needs: ['bends'], says: 'bends that carry a shield film' },
  limits: ['shieldStiffnessShareFraction'],
  sourceKeys: ['compositeBeam'],
  decidedWhen: 'early',
  answeredBy: ['member', 'lead'],
  monotone: WIDER_TOLERANCES,
  check: (context) => {
    const limit = context.getLimit('shieldStiffnessShareFraction')
    return listBends(context).map(({ bend, result, zone, place }) => {
      const shields = (zone?.layers ?? []).filter((layer) => layer.kind === 'shield-film')
      if (result.shieldShare === null) return notApplicable(`no shield film in bend ${bend.name}`, [place])
      return decide({
        value: result.shieldShare.nominal,
        range: result.shieldShare.range,
        limit,
        places: [place, ...shields.map((layer) => placeOf('layer', { id: layer.layerId, name: layer.name }))],
        what: `share of stiffness that shields bring in bend ${bend.name}`,
        equation: "sum of E' t ((y - y_n)^2 + t^2/12) of the shields / rigidity of the leaves",
        sourceKey: 'compositeBeam',
        cautions: ['The neutral axis is that of the shielded section; without the shield it would move.'],
      })
    })
  },
})
