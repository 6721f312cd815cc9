import { defineItem } from '../../define-item'
import { getFilm } from '../../example-changes'

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
  examples: [
    { name: '25 um of adhesive on 12 um foil', expect: 'meets' },
    {
      name: '5 um of adhesive',
      change: (d) => {
        Object.assign(getFilm(d, 'cover-top-adhesive'), { thicknessUm: 5, tolerancePlusUm: 0.5, toleranceMinusUm: 0.5 })
      },
      expect: 'fails',
    },
  ],
})
