import { defineItem } from '../../define-item'
import { askFor, findUnstated, listTerms, makeTermOutcome } from '../../terms'

const TERMS = ['isRestricted', 'isDeclared', 'isHalogenFree'] as const

export const substances = defineItem({
  id: 'substances',
  section: 'fabrication',
  severity: 'minor',
  question: 'Is it stated which substances are kept out or declared?',
  titles: { meets: 'Needs on substances are stated', fails: 'Needs on substances contradict each other' },
  appliesTo: { needs: ['layers'], says: 'every design' },
  limits: [],
  sourceKeys: ['restrictedSubstances', 'declaredSubstances', 'halogenFree'],
  restsOn: ['brief.agreements.isRestricted', 'brief.agreements.isDeclared', 'brief.agreements.isHalogenFree'],
  decidedWhen: 'early',
  answeredBy: ['lead'],
  monotone: [],
  check: (context) => {
    const missing = findUnstated(context, 'agreements', TERMS)
    if (missing.length > 0) return askFor(missing)
    const { isRestricted, isHalogenFree } = context.design.brief.agreements
    return [
      isHalogenFree === true && isRestricted === false
        ? makeTermOutcome(
            'fails',
            'Halogen-free parts hold none of the restricted brominated substances, and these are not kept out.',
            'restrictedSubstances',
          )
        : makeTermOutcome('meets', `Stated: ${listTerms(context, 'agreements', TERMS)}.`, 'restrictedSubstances'),
    ]
  },
})
