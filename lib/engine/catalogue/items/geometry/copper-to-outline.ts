import { DESIGN_PLACE } from '../../checks'
import { decide, notComputed } from '../../decide'
import { defineItem } from '../../define-item'

export const copperToOutline = defineItem({
  id: 'copper-to-outline',
  section: 'geometry',
  severity: 'major',
  question: 'Does copper keep its distance from the outline?',
  titles: { meets: 'Copper keeps clear of the outline', fails: 'Copper comes too near the outline' },
  appliesTo: { needs: ['conductor-layers'], says: 'designs with a conductor layer' },
  limits: ['copperToOutlineMm'],
  sourceKeys: [],
  restsOn: ['features.copperToOutlineMm'],
  decidedWhen: 'layout',
  answeredBy: ['member', 'fabricator'],
  monotone: [{ path: 'features.copperToOutlineMm', worse: 'smaller' }],
  check: (context) => {
    const { copperToOutlineMm } = context.design.features
    return [
      copperToOutlineMm === null
        ? notComputed(['features', 'copperToOutlineMm'], 'distance of copper from the outline', [DESIGN_PLACE])
        : decide({
            value: copperToOutlineMm,
            limit: context.getLimit('copperToOutlineMm'),
            places: [DESIGN_PLACE],
            what: 'copper to outline',
            equation: 'smallest distance',
            isTyped: true,
          }),
    ]
  },
})
