import { decide, notApplicable, notComputed } from '../../decide'
import { defineItem } from '../../define-item'
import { checkStiffenedHoles } from '../../stiffened-holes'

export const stiffenerHoles = defineItem({
  id: 'stiffener-holes',
  section: 'geometry',
  severity: 'minor',
  question: 'Are holes in stiffeners wider than those in the film?',
  titles: { meets: 'Holes in stiffeners are wide enough', fails: 'A hole in a stiffener is too narrow' },
  appliesTo: { needs: ['stiffeners', 'holes'], says: 'designs with a stiffener and holes' },
  limits: ['stiffenerHoleOverDrillMm'],
  sourceKeys: ['commonPractice'],
  restsOn: [
    'features.holes.*.stiffenerHoleMm',
    'features.holes.*.drillMm',
    'features.holes.*.zoneId',
    'construction.zones.*.presence',
    'construction.zones.*.kind',
  ],
  decidedWhen: 'layout',
  answeredBy: ['member', 'fabricator'],
  monotone: [{ path: 'features.holes[].drillMm', worse: 'larger' }],
  check: (context) =>
    checkStiffenedHoles(context, (hole, index, nearness, places) => {
      if (nearness !== 'through') return notApplicable(`no stiffener lies under ${hole.name}`, places)
      const missing = (field: string, label: string) =>
        notComputed(['features', 'holes', index, field], `${label} ${hole.name}`, places, 'typed')
      if (hole.stiffenerHoleMm === null) return missing('stiffenerHoleMm', 'hole in the stiffener under')
      if (hole.stiffenerHoleMm === 0) return notApplicable(`the stiffener closes ${hole.name}`, places)
      if (hole.drillMm === null) return missing('drillMm', 'drill of')
      return decide({
        value: hole.stiffenerHoleMm - hole.drillMm,
        limit: context.getLimit('stiffenerHoleOverDrillMm'),
        places,
        what: `hole in the stiffener over the drill of ${hole.name}`,
        equation: 'difference of diameters',
        isTyped: true,
      })
    }),
})
