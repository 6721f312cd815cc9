import type { EvaluationContext } from '../../../context'
import type { ConnectorFeature } from '../../../design'
import type { Outcome } from '../../../results'
import { checkObserved, placeOf } from '../../checks'
import { findEndsWithoutRecord } from '../../connector-ends'
import { decide, notComputed } from '../../decide'
import { defineItem } from '../../define-item'
import { readListState } from '../../listed'

export const contactStrain = defineItem({
  id: 'contact-strain',
  section: 'geometry',
  severity: 'major',
  question:
    'Is each contact end free of load: seen when inserted, with straight film and no plane or hole before its first bend?',
  titles: { meets: 'Contact ends are free of load', fails: 'A contact end takes load' },
  appliesTo: { needs: ['contact-ends'], says: 'designs with a contact end' },
  limits: ['contactToBendMm'],
  sourceKeys: ['commonPractice'],
  restsOn: [
    'features.connectors.*.isBlindInsertion',
    'features.connectors.*.hasPlaneOrHoleBeforeBend',
    'features.connectors.*.firstBendMm',
    'features.connectors.*.zoneId',
    'construction.zones.*.kind',
    'bends',
    'features.none',
  ],
  decidedWhen: 'layout',
  answeredBy: ['member', 'lead'],
  monotone: [
    { path: 'features.connectors[].firstBendMm', worse: 'smaller' },
    { path: 'features.connectors[].isBlindInsertion', worse: 'yes' },
    { path: 'features.connectors[].hasPlaneOrHoleBeforeBend', worse: 'yes' },
  ],
  check: (context) => [
    ...findEndsWithoutRecord(context),
    ...context.design.features.connectors.flatMap((connector, index) => checkEnd(context, connector, index)),
  ],
})

function checkEnd(context: EvaluationContext, connector: ConnectorFeature, index: number): Outcome[] {
  const { name, firstBendMm } = connector
  const places = [placeOf('connector', connector)]
  const path = (field: string) => ['features', 'connectors', index, field]
  const insertion = checkObserved({
    observed: connector.isBlindInsertion,
    wanted: false,
    path: path('isBlindInsertion'),
    label: `whether ${name} is inserted blind`,
    whenRight: `The person who inserts ${name} sees it.`,
    whenWrong: `${name} is inserted blind.`,
    places,
    sourceKey: 'commonPractice',
  })
  if (readListState('bends', context) === 'none') return [insertion]
  return [
    insertion,
    checkObserved({
      observed: connector.hasPlaneOrHoleBeforeBend,
      wanted: false,
      path: path('hasPlaneOrHoleBeforeBend'),
      label: `whether a solid plane or a hole lies between ${name} and its first bend`,
      whenRight: `No solid plane and no hole lies between ${name} and its first bend.`,
      whenWrong: `A solid plane or a hole lies between ${name} and its first bend.`,
      places,
      sourceKey: 'commonPractice',
    }),
    firstBendMm === null
      ? notComputed(path('firstBendMm'), `distance of ${name} from its first bend`, places, 'typed')
      : decide({
          value: firstBendMm,
          limit: context.getLimit('contactToBendMm'),
          places,
          what: `straight film beside ${name}`,
          equation: 'from the stiffened end to the first bend, as typed',
          isTyped: true,
        }),
  ]
}
