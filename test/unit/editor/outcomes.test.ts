import { expect, test } from 'vitest'
import { listOutcomesAt } from '@/app/_components/engineering/outcomes'
import {
  type Bend,
  citeSource,
  compareVerdicts,
  describeLimitOrigin,
  evaluateDraft,
  explainNoMinRadius,
  getOutcomeVerdict,
  type Verdict,
} from '@/lib/engine'
import { listStartingConstructions } from '@/lib/engine/starting-constructions'
import { readDemoDesign } from '../engine-assembly/demo-design-files'

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

test('a limit of the catalogue is cited once; one that somebody set names them too', () => {
  const common = { key: 'k', value: 1, unit: 'pct', sense: 'at-most', sourceKey: 'plasticBending' } as const
  const cited = citeSource('plasticBending')
  expect(describeLimitOrigin({ ...common, owner: { kind: 'memory', name: 'a book, from memory' } })).toBe(cited)
  expect(describeLimitOrigin({ ...common, owner: { kind: 'workspace', name: 'Quillmoor' } })).toBe(
    `Quillmoor (workspace); ${cited}`,
  )
  expect(
    describeLimitOrigin({ ...common, sourceKey: 'of-a-later-engine', owner: { kind: 'memory', name: 'a book' } }),
  ).toBe('of-a-later-engine')
})

test('a bend without a least radius says why', () => {
  const skua = readDemoDesign('skua-rev-a')
  const said = (bendId: string, change: Partial<Bend> = {}) => {
    const bends = skua.bends.map((bend) => (bend.id === bendId ? { ...bend, ...change } : bend))
    const result = evaluateDraft({ ...skua, bends }).bends.find((bend) => bend.bendId === bendId)
    if (result === undefined) throw new RangeError(bendId)
    return { radiusMm: result.minRadiusByStrainMm, because: explainNoMinRadius(result) }
  }
  expect(said('hinge')).toEqual({
    radiusMm: null,
    because: expect.stringMatching(/not rolled-annealed stands \(Layer 5, Layer 3\)\.$/),
  })
  expect(said('hinge', { pullN: 2 })).toEqual({ radiusMm: null, because: 'Not sought beside a pull or a twist.' })
  expect(said('hinge', { requiredCycles: 1000 }).because).toBeNull()
})
