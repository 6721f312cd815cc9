import { checkObserved, listBends } from '../../checks'
import { defineItem } from '../../define-item'

export const transitionRelief = defineItem({
  id: 'transition-relief',
  section: 'geometry',
  severity: 'minor',
  question: 'Is strain relieved where the flex leaves a rigid zone?',
  titles: { meets: 'Transitions have strain relief', fails: 'A transition has no strain relief' },
  appliesTo: { needs: ['bends', 'transitions'], says: 'parts that bend beside a rigid or stiffened zone' },
  limits: [],
  sourceKeys: ['commonPractice'],
  restsOn: ['bends.*.strainReliefAtTransition', 'bends.*.distanceToRigidMm', 'bends.*.use'],
  decidedWhen: 'layout',
  answeredBy: ['member'],
  monotone: [{ path: 'bends[].strainReliefAtTransition', worse: 'no' }],
  check: (context) =>
    listBends(context).map(({ bend, index, place }) =>
      checkObserved({
        observed: bend.strainReliefAtTransition,
        wanted: true,
        path: ['bends', index, 'strainReliefAtTransition'],
        label: `strain relief beside bend ${bend.name}`,
        whenRight: `Relief beside ${bend.name}.`,
        whenWrong: `No relief beside ${bend.name}.`,
        places: [place],
        sourceKey: 'commonPractice',
      }),
    ),
})
