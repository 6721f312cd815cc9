import { checkDistanceToBend } from '../../checks'
import { defineItem } from '../../define-item'
import { getOnly } from '../../example-changes'

export const holeToBend = defineItem({
  id: 'hole-to-bend',
  section: 'geometry',
  severity: 'major',
  question: 'Are holes kept clear of bends?',
  why: 'A plated barrel is a stiff post in a flexing film: copper cracks around it. Even a bare hole makes the bend kink there.',
  howToCheck: 'From the edge of each hole to the nearest edge of the bend, in the flat.',
  titles: { meets: 'Holes are clear of every bend', fails: 'A hole lies in or too near a bend' },
  appliesTo: { needs: ['bends', 'holes'], says: 'designs with a bend and a hole' },
  limits: ['holeToBendMm'],
  sourceKeys: [],
  decidedWhen: 'early',
  answeredBy: ['member'],
  check: (context) => checkDistanceToBend(context, { list: 'holes', limit: context.getLimit('holeToBendMm') }),
  examples: [
    { name: '8 mm away', expect: 'meets' },
    {
      name: 'on the edge of the bend',
      change: (d) => {
        getOnly(d.features.holes).nearestBend = { bendId: 'hinge', distanceMm: 0 }
      },
      expect: 'fails',
    },
    {
      name: 'not measured',
      change: (d) => {
        getOnly(d.features.holes).nearestBend = null
      },
      expect: 'not-computed',
    },
    {
      name: 'none listed',
      change: (d) => {
        d.features.holes = []
      },
      expect: 'not-applicable',
    },
  ],
})
