import { checkObserved, placeOf } from '../../checks'
import { defineItem } from '../../define-item'

export const teardrop = defineItem({
  id: 'teardrop',
  section: 'geometry',
  severity: 'minor',
  question: 'Does every pad meet its conductor in a teardrop?',
  titles: { meets: 'Pads have teardrops', fails: 'A pad has no teardrop' },
  appliesTo: { needs: ['pads'], says: 'designs that list pads' },
  limits: [],
  sourceKeys: ['guideDesignRules', 'guideRigidFlex2012'],
  restsOn: ['features.pads'],
  decidedWhen: 'layout',
  answeredBy: ['member'],
  monotone: [{ path: 'features.pads[].teardrop', worse: 'no' }],
  check: ({ design }) =>
    design.features.pads.map((pad, index) =>
      checkObserved({
        observed: pad.teardrop,
        wanted: true,
        path: ['features', 'pads', index, 'teardrop'],
        label: `teardrop of ${pad.name}`,
        whenRight: `${pad.name} has a teardrop.`,
        whenWrong: `${pad.name} has no teardrop.`,
        places: [placeOf('pad', pad)],
        sourceKey: 'guideDesignRules',
      }),
    ),
})
