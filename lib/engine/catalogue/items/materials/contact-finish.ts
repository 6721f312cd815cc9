import type { EvaluationContext } from '../../../context'
import { BRIEF_FIELDS, type ConnectorFeature, getChoiceWord, isWithoutMetal } from '../../../design'
import type { Outcome } from '../../../results'
import { placeOf } from '../../checks'
import { findEndsWithoutRecord } from '../../connector-ends'
import { cannotTell, decide, makeNoneAllowed, notComputed } from '../../decide'
import { defineItem } from '../../define-item'

export const contactFinish = defineItem({
  id: 'contact-finish',
  section: 'materials',
  severity: 'major',
  question: 'Does the finish on each contact suit its connector and the number of matings?',
  titles: { meets: 'Contact finishes suit their matings', fails: 'A contact finish does not suit its connector' },
  appliesTo: { needs: ['contact-ends'], says: 'designs with a contact end' },
  limits: ['immersionGoldMatingsCount'],
  sourceKeys: ['commonPractice'],
  restsOn: [
    'features.connectors.*.finish',
    'features.connectors.*.isHardGold',
    'features.connectors.*.matings',
    'features.connectors.*.zoneId',
    'construction.zones.*.kind',
  ],
  decidedWhen: 'early',
  answeredBy: ['member', 'fabricator'],
  monotone: [
    { path: 'features.connectors[].matings', worse: 'larger' },
    { path: 'features.connectors[].isHardGold', worse: 'no' },
  ],
  check: (context) => [
    ...findEndsWithoutRecord(context),
    ...context.design.features.connectors.map((connector, index) => checkFinish(context, connector, index)),
  ],
})

function checkFinish(context: EvaluationContext, connector: ConnectorFeature, index: number): Outcome {
  const { name, finish, matings, isHardGold } = connector
  const places = [placeOf('connector', connector)]
  const missing = (field: string, label: string) =>
    notComputed(['features', 'connectors', index, field], `${label} of ${name}`, places, 'typed')
  if (finish === null) return missing('finish', 'finish on the contacts')
  const word = getChoiceWord(BRIEF_FIELDS.surfaceFinish, finish)
  if (isWithoutMetal(finish)) {
    return decide({
      value: 1,
      limit: makeNoneAllowed('bareContactEndsCount', 'commonPractice'),
      places,
      what: `contacts without a metal finish at ${name}`,
      equation: 'finish as typed',
      isTyped: true,
      remark: `Finish: ${word}.`,
    })
  }
  if (!finish.includes('gold')) {
    return cannotTell(
      `the finish of ${name}`,
      {
        because: `no number of matings is published for ${word} on contacts`,
        decidedBy: 'the connector’s maker says which finishes its contacts go with',
      },
      places,
    )
  }
  if (matings === null) return missing('matings', 'number of matings')
  const limit = context.getLimit('immersionGoldMatingsCount')
  const compared = decide({
    value: matings,
    limit,
    places,
    what: `matings of ${name} on ${word}`,
    equation: 'matings as typed',
    isTyped: true,
  })
  if (finish !== 'electroplated-nickel-gold' || compared.verdict === 'meets') return compared
  if (isHardGold === null) return missing('isHardGold', 'whether the gold is hard')
  return {
    kind: 'said',
    verdict: isHardGold ? 'meets' : 'fails',
    rests: 'typed',
    sourceKey: 'commonPractice',
    places,
    summary: isHardGold
      ? `${name} has plated hard gold for ${matings} matings; its thickness is for the connector’s maker to say.`
      : `${name} has soft gold for ${matings} matings.`,
  }
}
