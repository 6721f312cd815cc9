import { DESIGN_PLACE } from '../../checks'
import { decide, notComputed } from '../../decide'
import { defineItem } from '../../define-item'

export const prepregSetBack = defineItem({
  id: 'prepreg-set-back',
  section: 'fabrication',
  severity: 'minor',
  question: 'Is it agreed where prepreg ends against the rigid edge, and how much squeeze-out is accepted?',
  titles: { meets: 'Prepreg ends where it was agreed', fails: 'Prepreg or its squeeze-out leaves the transition area' },
  appliesTo: {
    needs: ['transitions', 'prepreg'],
    says: 'designs with prepreg in a rigid zone beside a flex zone',
  },
  limits: ['prepregSetBackMm', 'prepregSqueezeOutMm'],
  sourceKeys: ['commonPractice'],
  restsOn: [
    'features.rigidEdges.prepregSetBackMm',
    'features.rigidEdges.squeezeOutMm',
    'construction.zones.*.kind',
    'construction.layers',
  ],
  decidedWhen: 'fabricator',
  answeredBy: ['member', 'fabricator'],
  monotone: [
    { path: 'features.rigidEdges.prepregSetBackMm', worse: 'larger' },
    { path: 'features.rigidEdges.squeezeOutMm', worse: 'larger' },
  ],
  check: (context) =>
    (
      [
        ['prepregSetBackMm', 'prepregSetBackMm', 'set-back of the prepreg'],
        ['squeezeOutMm', 'prepregSqueezeOutMm', 'accepted squeeze-out'],
      ] as const
    ).map(([field, key, what]) => {
      const value = context.design.features.rigidEdges[field]
      return value === null
        ? notComputed(['features', 'rigidEdges', field], what, [DESIGN_PLACE], 'typed')
        : decide({
            value,
            limit: context.getLimit(key),
            places: [DESIGN_PLACE],
            what,
            equation: 'as typed, from the rigid edge',
            isTyped: true,
          })
    }),
})
