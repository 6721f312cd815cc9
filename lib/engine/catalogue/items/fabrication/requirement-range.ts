import { DESIGN_PLACE } from '../../checks'
import { decide, makeNoneAllowed } from '../../decide'
import { defineItem } from '../../define-item'
import { checkSpan, isWithin, listSpans, REQUIREMENT_RANGES, readRequirements } from '../../requirements'

/** Every other item takes the word of who states a requirement: a need of nothing is met by anything. */
export const requirementRange = defineItem({
  id: 'requirement-range',
  section: 'fabrication',
  severity: 'major',
  question: 'Is every stated requirement, rating and tolerance within what the trade states?',
  titles: {
    meets: 'Requirements and ratings are within what the trade states',
    fails: 'A requirement or rating is outside of what the trade states',
  },
  appliesTo: { needs: ['layers'], says: 'designs with layers' },
  limits: [],
  sourceKeys: ['ownChoice'],
  restsOn: [
    ...REQUIREMENT_RANGES.map(({ pattern }) => pattern),
    // Of sheets, with their thickness.
    'construction.layers',
    // What a motion between two states takes.
    'bends.*.use',
    'bends.*.insideRadiusMm',
    'bends.*.angleDeg',
    'bends.*.flexesFromRadiusMm',
    'bends.*.flexesFromAngleDeg',
  ],
  decidedWhen: 'early',
  answeredBy: ['member', 'lead'],
  monotone: [],
  check: (context) => {
    const { outcomes, statedCount } = readRequirements(context)
    const spans = listSpans(context)
    const outside = spans.filter((span) => !isWithin(span))
    const named = [...outcomes, ...outside.map(checkSpan)]
    if (named.length > 0) return named
    const count = statedCount + spans.length
    return [
      decide({
        value: 0,
        limit: makeNoneAllowed('requirementsOutsideCount', 'ownChoice'),
        places: [DESIGN_PLACE],
        what: 'requirements and ratings outside of what the trade states',
        equation: 'as typed, against what the trade states',
        isTyped: true,
        remark: `${count} ${count === 1 ? 'figure was' : 'figures were'} compared. Within the range, a figure may still be the wrong one for this part.`,
      }),
    ]
  },
})
