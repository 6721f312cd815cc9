import type { Outcome } from '../../../results'
import { checkObserved, DESIGN_PLACE } from '../../checks'
import { decide, makeSourceLimit, notComputed } from '../../decide'
import { defineItem } from '../../define-item'
import { checkGiven } from '../../given'

export const shieldGround = defineItem({
  id: 'shield-ground',
  section: 'materials',
  severity: 'major',
  question: 'Is each shield tied to ground, through openings that the drawing shows, with a resistance that is stated?',
  titles: { meets: 'Shields are tied to ground', fails: 'A shield is not tied to ground' },
  appliesTo: { needs: ['shields'], says: 'designs with a shield film' },
  limits: [],
  sourceKeys: ['commonPractice'],
  restsOn: ['features.shieldGround', 'construction.layers.*.kind'],
  decidedWhen: 'layout',
  answeredBy: ['member', 'lead'],
  monotone: [
    { path: 'features.shieldGround.pointCount', worse: 'smaller' },
    { path: 'features.shieldGround.openingsShown', worse: 'no' },
  ],
  check: ({ design }): Outcome[] => {
    const { pointCount, openingsShown, maxResistanceOhm } = design.features.shieldGround
    const path = (field: string) => ['features', 'shieldGround', field]
    return [
      pointCount === null
        ? notComputed(path('pointCount'), 'number of ground points of the shield', [DESIGN_PLACE], 'typed')
        : decide({
            value: pointCount,
            limit: makeSourceLimit({
              key: 'shieldGroundPointsCount',
              value: 1,
              unit: 'count',
              sense: 'at-least',
              sourceKey: 'commonPractice',
            }),
            places: [DESIGN_PLACE],
            what: 'ground points of the shield',
            equation: 'count as typed',
            isTyped: true,
          }),
      checkObserved({
        observed: openingsShown,
        wanted: true,
        path: path('openingsShown'),
        label: 'whether the drawing shows the openings to ground',
        whenRight: 'The drawing shows the openings to ground.',
        whenWrong: 'The drawing does not show the openings to ground.',
        places: [DESIGN_PLACE],
        sourceKey: 'commonPractice',
      }),
      checkGiven({
        terms: [
          {
            path: path('maxResistanceOhm'),
            label: 'highest resistance of the shield to ground',
            value: maxResistanceOhm,
          },
        ],
        places: [DESIGN_PLACE],
        whenGiven: 'The resistance to ground is stated.',
        sourceKey: 'commonPractice',
      }),
    ]
  },
})
