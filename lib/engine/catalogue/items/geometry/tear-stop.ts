import { checkObserved, placeOf } from '../../checks'
import { defineItem } from '../../define-item'

export const tearStop = defineItem({
  id: 'tear-stop',
  section: 'geometry',
  severity: 'minor',
  question: 'Is there a tear stop wherever the outline could start to tear?',
  titles: { meets: 'Corners have tear stops', fails: 'A corner has no tear stop' },
  appliesTo: { needs: ['corners'], says: 'outlines with an inside corner' },
  limits: [],
  sourceKeys: ['commonPractice', 'guideRigidFlex2012'],
  restsOn: ['features.outlineCorners'],
  decidedWhen: 'layout',
  answeredBy: ['member', 'fabricator'],
  monotone: [{ path: 'features.outlineCorners[].tearStop', worse: 'no' }],
  check: ({ design }) =>
    design.features.outlineCorners.map((corner, index) =>
      checkObserved({
        observed: corner.tearStop,
        wanted: true,
        path: ['features', 'outlineCorners', index, 'tearStop'],
        label: `tear stop at ${corner.name}`,
        whenRight: `${corner.name} has a tear stop.`,
        whenWrong: `${corner.name} has no tear stop; copper along the corner costs nothing.`,
        places: [placeOf('corner', corner)],
        sourceKey: 'commonPractice',
      }),
    ),
})
