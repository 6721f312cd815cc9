import { checkObserved, placeOf } from '../../checks'
import { defineItem } from '../../define-item'

export const componentSupport = defineItem({
  id: 'component-support',
  section: 'geometry',
  severity: 'major',
  question: 'Is there a stiffener under every component on a flexible zone?',
  titles: { meets: 'Components are supported', fails: 'A component has no stiffener under it' },
  appliesTo: { needs: ['components'], says: 'designs that list components' },
  limits: [],
  sourceKeys: ['commonPractice'],
  restsOn: ['features.components', 'features.stiffeners'],
  decidedWhen: 'layout',
  answeredBy: ['member', 'fabricator'],
  monotone: [{ path: 'features.components[].overStiffener', worse: 'no' }],
  check: ({ design }) =>
    design.features.components.map((component, index) =>
      checkObserved({
        observed: component.overStiffener,
        wanted: true,
        path: ['features', 'components', index, 'overStiffener'],
        label: `whether a stiffener lies under ${component.name}`,
        whenRight: `${component.name} is supported.`,
        whenWrong: `${component.name} sits on film with nothing under it.`,
        places: [placeOf('component', component)],
        sourceKey: 'commonPractice',
      }),
    ),
})
