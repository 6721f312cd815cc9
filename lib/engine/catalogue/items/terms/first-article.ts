import type { Outcome } from '../../../results'
import { defineItem } from '../../define-item'
import { findUnmetNeed, type NeedKey } from '../../needs'
import { askFor, findUnstated, makeTermOutcome } from '../../terms'

/** What is measured, where the part has it. */
const MEASURED: readonly {
  readonly field: 'measuredFlatBy' | 'measuredFoldedBy' | 'sectionsBy'
  readonly need: NeedKey | null
  readonly whenNobody: string
}[] = [
  { field: 'measuredFlatBy', need: null, whenNobody: 'Nobody measures the first lot flat.' },
  { field: 'measuredFoldedBy', need: 'bends', whenNobody: 'Nobody measures the first lot folded.' },
  { field: 'sectionsBy', need: 'plated-holes', whenNobody: 'Nobody cuts sections through holes of the first lot.' },
]

export const firstArticle = defineItem({
  id: 'first-article',
  section: 'fabrication',
  severity: 'major',
  question: 'Is it agreed what is measured on the first lot, by whom, flat and folded, sections included?',
  titles: { meets: 'Measurement of the first lot is agreed', fails: 'Part of the first lot is not measured' },
  appliesTo: { needs: ['layers'], says: 'every design' },
  limits: [],
  sourceKeys: ['commonPractice'],
  restsOn: [
    'brief.acceptance.firstArticleCount',
    'brief.acceptance.measuredFlatBy',
    'brief.acceptance.measuredFoldedBy',
    'brief.acceptance.sectionsBy',
    'bends',
    'features.holes',
    'features.none',
  ],
  decidedWhen: 'fabricator',
  answeredBy: ['member', 'fabricator'],
  monotone: [],
  check: (context) => {
    const { acceptance } = context.design.brief
    const outcomes: Outcome[] = [...askFor(findUnstated(context, 'acceptance', ['firstArticleCount']))]
    for (const { field, need, whenNobody } of MEASURED) {
      const unmet = need === null ? null : findUnmetNeed([need], context)
      if (unmet?.kind === 'absent') continue
      if (unmet?.kind === 'unknown') outcomes.push(...askFor([unmet.missing]))
      else if (acceptance[field] === null) outcomes.push(...askFor(findUnstated(context, 'acceptance', [field])))
      else if (acceptance[field] === 'nobody') outcomes.push(makeTermOutcome('fails', whenNobody, 'commonPractice'))
    }
    return outcomes.length > 0
      ? outcomes
      : [makeTermOutcome('meets', 'Who measures the first lot is agreed.', 'commonPractice')]
  },
})
