import { defineItem } from '../../define-item'

export const copperEncapsulation = defineItem({
  id: 'copper-encapsulation',
  section: 'materials',
  severity: 'blocking',
  question: 'Does the adhesive fill the gaps between conductors and still cover them?',
  why: 'Adhesive flows into the gaps of the copper. If there is not enough of it, voids stay beside the conductors: they trap chemistry, blister in soldering and open at the bend.',
  howToCheck:
    'Volume of adhesive against volume of gaps, from copper thickness and coverage; finished copper counts, plating included.',
  titles: {
    meets: 'Adhesive encapsulates the copper everywhere',
    fails: 'Too little adhesive to encapsulate the copper',
  },
  appliesTo: { needs: ['coverlay', 'conductor-layers'], says: 'constructions with coverlay' },
  limits: [],
  sourceKeys: ['exactArithmetic'],
  decidedWhen: 'early',
  answeredBy: ['member', 'fabricator'],
  check: (context) => context.zones.flatMap((zone) => zone.encapsulation),
})
