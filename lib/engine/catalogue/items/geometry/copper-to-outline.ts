import { DESIGN_PLACE } from '../../checks'
import { decide, notComputed } from '../../decide'
import { defineItem } from '../../define-item'

export const copperToOutline = defineItem({
  id: 'copper-to-outline',
  section: 'geometry',
  severity: 'major',
  question: 'Does copper keep its distance from the outline?',
  why: 'The outline is punched or cut after lamination and wanders by tenths of a millimetre; copper at the edge is nicked, and a nick is where a crack starts.',
  howToCheck:
    'Smallest distance of any copper from outline and cut-outs; tear stops are meant to be near and are left out.',
  titles: { meets: 'Copper keeps clear of the outline', fails: 'Copper comes too near the outline' },
  appliesTo: { needs: ['conductor-layers'], says: 'designs with a conductor layer' },
  limits: ['copperToOutlineMm'],
  sourceKeys: [],
  decidedWhen: 'early',
  answeredBy: ['member', 'fabricator'],
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
          }),
    ]
  },
})
