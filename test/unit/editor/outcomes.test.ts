import { expect, test } from 'vitest'
import { listOutcomesAt } from '@/app/_components/engineering/outcomes'
import { compareVerdicts, evaluateDraft, getOutcomeVerdict, type Verdict } from '@/lib/engine'
import { listStartingConstructions } from '@/lib/engine/starting-constructions'

const evaluations = listStartingConstructions().map(({ id, makeDesign }) => ({
  id,
  evaluation: evaluateDraft(makeDesign(id)),
}))

test.each(evaluations)(
  '$id: what keeps items from being worked out is said once at each bend, for all of them',
  ({ evaluation }) => {
    let count = 0
    for (const { bendId } of evaluation.bends) {
      const rows = listOutcomesAt(evaluation, 'bend', bendId)
      const said = rows
        .filter(({ outcome }) => outcome.kind !== 'decided')
        .map(({ outcome }) => `${outcome.kind} ${outcome.summary}`)
      expect(new Set(said).size).toBe(said.length)
      const items = evaluation.items.filter(({ outcomes }) =>
        outcomes.some(({ places }) => places.some(({ kind, id }) => kind === 'bend' && id === bendId)),
      )
      expect(new Set(rows.flatMap(({ itemIds }) => itemIds))).toEqual(new Set(items.map(({ itemId }) => itemId)))
      count += rows.filter(({ itemIds }) => itemIds.length > 1).length
      const verdicts = rows.map(({ outcome }) => getOutcomeVerdict(outcome))
      expect(verdicts).toEqual(verdicts.toSorted(compareVerdicts))
    }
    if (evaluation.bends.length > 0) expect(count).toBeGreaterThan(0)
  },
)

test('what fails stands before what nobody can tell', () => {
  const verdicts: Verdict[] = ['not-applicable', 'cannot-tell', 'meets', 'fails']
  expect(verdicts.toSorted(compareVerdicts)).toEqual(['fails', 'cannot-tell', 'meets', 'not-applicable'])
})
