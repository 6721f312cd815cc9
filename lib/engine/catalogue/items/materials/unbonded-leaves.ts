import { callByName } from '../../../design'
import { listBends, notComputedSection } from '../../checks'
import { decide, notApplicable } from '../../decide'
import { defineItem } from '../../define-item'

export const unbondedLeaves = defineItem({
  id: 'unbonded-leaves',
  section: 'materials',
  severity: 'major',
  question: 'Where many conductor layers bend, are they left unbonded?',
  titles: {
    meets: 'Leaves are unbonded where many layers bend',
    fails: 'Too many conductor layers bonded together in a bend',
  },
  appliesTo: { needs: ['bends', 'several-conductor-layers'], says: 'bends with more than one conductor layer' },
  limits: ['conductorLayersPerLeafCount'],
  sourceKeys: [],
  restsOn: ['construction.layers', 'construction.zones', 'bends.*.zoneId'],
  decidedWhen: 'early',
  answeredBy: ['member', 'fabricator'],
  monotone: [],
  check: (context) => {
    const limit = context.getLimit('conductorLayersPerLeafCount')
    return listBends(context).map((checked) => {
      const { bend, result, place } = checked
      const unknown = notComputedSection(checked)
      if (unknown !== null) return unknown
      if (result.conductors.length < 2)
        return notApplicable(`${callByName('bend', bend.name)} has fewer than two conductor layers`, [place])
      const counts = new Map<number, number>()
      for (const { leafIndex } of result.conductors) counts.set(leafIndex, (counts.get(leafIndex) ?? 0) + 1)
      return decide({
        value: Math.max(...counts.values()),
        limit,
        places: [place],
        what: `most conductor layers in one leaf of ${callByName('bend', bend.name)}`,
        equation: 'count of layers between air gaps',
        remark: counts.size > 1 ? `${counts.size} leaves.` : undefined,
      })
    })
  },
})
