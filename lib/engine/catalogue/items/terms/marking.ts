import type { EvaluationContext } from '../../../context'
import type { Outcome } from '../../../results'
import { BRIEF_PLACE } from '../../checks'
import { decide, notComputed } from '../../decide'
import { defineItem } from '../../define-item'
import { askFor, findUnstated, listTerms, makeTermOutcome } from '../../terms'

const MARKS = ['partNumber', 'lotOrDate', 'flameMark'] as const
const SIZES = [
  ['letterHeightMm', 'letterHeightMm', 'letter height of the marking'],
  ['lineWidthMm', 'letterLineMm', 'line width of the marking'],
  ['toPadMm', 'markingToPadMm', 'distance of the marking from pads'],
] as const

export const marking = defineItem({
  id: 'marking',
  section: 'fabrication',
  severity: 'minor',
  question: 'Is it stated what is marked where and how, large enough, and outside of bends?',
  titles: { meets: 'The marking is stated', fails: 'The marking cannot be read, or cannot be made as stated' },
  appliesTo: { needs: ['layers'], says: 'every design' },
  limits: ['letterHeightMm', 'letterLineMm', 'markingToPadMm'],
  sourceKeys: ['militaryFlexMarking'],
  restsOn: [
    'plan',
    'brief.marking',
    // By itself too: a field of this name counts as a name, elsewhere, which changes nothing.
    'brief.marking.partNumber',
    'brief.acceptance.flameClass',
    'construction.zones.*.kind',
  ],
  decidedWhen: 'layout',
  answeredBy: ['member', 'fabricator'],
  monotone: [
    { path: 'brief.marking.letterHeightMm', worse: 'smaller' },
    { path: 'brief.marking.lineWidthMm', worse: 'smaller' },
    { path: 'brief.marking.toPadMm', worse: 'smaller' },
  ],
  check: (context) => {
    const missing = findUnstated(context, 'marking', MARKS)
    if (missing.length > 0) return askFor(missing)
    const terms = context.design.brief.marking
    const isOnPart = MARKS.some((mark) => terms[mark] === 'on-part')
    return [...checkMarks(context), ...(isOnPart ? checkOnPart(context) : [])]
  },
})

function checkMarks(context: EvaluationContext): Outcome[] {
  const { marking: terms, acceptance } = context.design.brief
  const outcomes: Outcome[] = [
    terms.partNumber === 'none'
      ? makeTermOutcome('fails', 'Neither part nor packing carries part number and revision.', 'militaryFlexMarking')
      : makeTermOutcome('meets', `Marked: ${listTerms(context, 'marking', MARKS)}.`, 'militaryFlexMarking'),
  ]
  if (terms.lotOrDate === 'none') {
    outcomes.push(
      makeTermOutcome(
        'fails',
        'Without a lot or date code, a fault cannot be traced to its lot.',
        'militaryFlexMarking',
      ),
    )
  }
  if (terms.flameMark !== 'none' && acceptance.flameClass === 'not-asked') {
    outcomes.push(makeTermOutcome('fails', 'A flame class is marked, and none is asked for.', 'commonPractice'))
  }
  if (terms.flameMark !== 'none' && acceptance.flameClass === null) {
    outcomes.push(notComputed(['brief', 'acceptance', 'flameClass'], 'flame class', [BRIEF_PLACE], 'typed'))
  }
  return outcomes
}

function checkOnPart(context: EvaluationContext): Outcome[] {
  const terms = context.design.brief.marking
  const missing = findUnstated(context, 'marking', ['method', 'area'])
  return [...askFor(missing), ...checkArea(context), ...(terms.method === 'label' ? [] : checkSizes(context))]
}

function checkArea({ design }: EvaluationContext): Outcome[] {
  const { area } = design.brief.marking
  if (area === 'flex-in-bend') {
    return [
      makeTermOutcome('fails', 'The marking lies within a bend, where ink cracks and cuts weaken.', 'commonPractice'),
    ]
  }
  const kind = area === 'rigid' || area === 'stiffened' ? area : null
  if (kind === null || design.construction.zones.some((zone) => zone.kind === kind)) return []
  return [makeTermOutcome('fails', `The marking is on a ${kind} zone, and the part has none.`, 'exactArithmetic')]
}

function checkSizes(context: EvaluationContext): Outcome[] {
  const terms = context.design.brief.marking
  return SIZES.flatMap(([field, key, what]): Outcome[] => {
    const value = terms[field]
    if (value === null) return askFor(findUnstated(context, 'marking', [field]))
    return [
      decide({
        value,
        limit: context.getLimit(key),
        places: [BRIEF_PLACE],
        what,
        equation: 'as stated',
        isTyped: true,
      }),
    ]
  })
}
