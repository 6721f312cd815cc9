import { expect, test } from 'vitest'
import { evaluate } from '@/lib/engine'
import { drawPlan } from './drawn-plan'
import { makeExampleDesign } from './example-design'
import { getZone } from './examples/changes'

/* What an item says where its verdict alone does not tell: another finding, or the end of a model, gives the same one. */

test('film-strain: a fold past the figure that a film may take is for nobody to tell, also well within the model', () => {
  const design = makeExampleDesign()
  for (const bend of design.bends)
    Object.assign(
      bend,
      bend.use === 'dynamic' ? { insideRadiusMm: 25 } : { insideRadiusMm: 0.6, radiusToleranceMm: 0.01 },
    )
  const owner = { kind: 'workspace', name: 'the workspace' } as const
  const judge = (value: number) =>
    evaluate(design, { limits: [{ key: 'filmFoldStrainPct', value, owner }] }).items.find(
      ({ itemId }) => itemId === 'film-strain',
    )
  expect(judge(15)?.verdict).toBe('meets')
  const harder = judge(3)
  expect(harder?.verdict).toBe('cannot-tell')
  expect(harder?.headline).toContain('creases, tears or comes off')
})

test('plan-agreement: a zone that no area draws is held against the outline', () => {
  const design = makeExampleDesign()
  const plan = drawPlan(design)
  design.plan = {
    ...plan,
    areas: plan.areas.filter(({ id }) => id !== 'fingers'),
    dividingLines: plan.dividingLines.slice(0, 1),
  }
  const listSaid = () =>
    evaluate(design)
      .items.find(({ itemId }) => itemId === 'plan-agreement')
      ?.outcomes.map(({ summary }) => summary) ?? []
  const says = 'is stated as 400 mm by 90 mm; the outline of the plan is 140 mm by 12 mm'
  Object.assign(getZone(design, 'fingers'), { lengthMm: 400, widthMm: 90 })
  expect(listSaid().filter((summary) => summary.includes(says))).toHaveLength(1)
  Object.assign(getZone(design, 'fingers'), { lengthMm: 10, widthMm: 10 })
  expect(listSaid().filter((summary) => summary.includes('is stated as'))).toEqual([])
})
