import { checkDistanceToBend } from '../../checks'
import { defineItem } from '../../define-item'
import { getOnly } from '../../example-changes'

export const componentToBend = defineItem({
  id: 'component-to-bend',
  section: 'geometry',
  severity: 'major',
  question: 'Are components kept clear of bends?',
  why: 'Solder joints are stiff; the film beside them bends twice as hard and the joint cracks.',
  howToCheck: 'From the edge of each component or its pads to the nearest edge of the bend, in the flat.',
  titles: { meets: 'Components are clear of every bend', fails: 'A component lies in or too near a bend' },
  appliesTo: { needs: ['bends', 'components'], says: 'designs with a bend and a component' },
  limits: ['componentToBendMm'],
  sourceKeys: [],
  decidedWhen: 'early',
  answeredBy: ['member'],
  check: (context) =>
    checkDistanceToBend(context, { list: 'components', limit: context.getLimit('componentToBendMm') }),
  examples: [
    { name: '6 mm away', expect: 'meets' },
    {
      name: 'on the edge of the bend',
      change: (d) => {
        getOnly(d.features.components).nearestBend = { bendId: 'hinge', distanceMm: 0 }
      },
      expect: 'fails',
    },
    {
      name: 'not measured',
      change: (d) => {
        getOnly(d.features.components).nearestBend = null
      },
      expect: 'not-computed',
    },
    {
      name: 'none listed',
      change: (d) => {
        d.features.components = []
      },
      expect: 'not-applicable',
    },
  ],
})
