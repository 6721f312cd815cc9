import { defineItem } from '../../define-item'
import { SECTION_INPUTS } from '../../item-inputs'
import { WIDER_TOLERANCES } from '../../monotone'

export const copperEncapsulation = defineItem({
  id: 'copper-encapsulation',
  section: 'materials',
  severity: 'blocking',
  question: 'Does the adhesive fill the gaps between conductors and still cover them?',
  titles: {
    meets: 'Adhesive encapsulates the copper everywhere',
    fails: 'Too little adhesive to encapsulate the copper',
  },
  appliesTo: { needs: ['coverlay', 'conductor-layers'], says: 'constructions with coverlay' },
  limits: [],
  sourceKeys: ['exactArithmetic'],
  restsOn: [...SECTION_INPUTS],
  decidedWhen: 'early',
  answeredBy: ['member', 'fabricator'],
  monotone: WIDER_TOLERANCES,
  check: (context) => context.zones.flatMap((zone) => zone.encapsulation),
})
