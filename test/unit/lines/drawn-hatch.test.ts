import { describe, expect, test } from 'vitest'
import { buildContext } from '@/lib/engine'
import { evaluateItem, getItem } from '@/lib/engine/catalogue'
import { hatched, stated } from '../artwork/hatched-demo'
import { design as demo, readFacts } from '../artwork/on-demo'
import { makeLineDesign } from './example-lines'

const DRAWN = { barMm: 0.15, pitchMm: 0.6, angleDeg: 45, openFraction: 0.5625, atMm: [1, 2] as [number, number] }

describe('a reference plane that artwork draws hatched', () => {
  const judge = (hatch: typeof DRAWN | null) => {
    const context = buildContext(makeLineDesign('single'))
    return evaluateItem(getItem('impedance-value'), { ...context, findDrawnHatch: () => hatch })
  }

  test('bounds the impedance by its bars, whatever pattern was stated, and says so', () => {
    expect(judge(null).verdict).not.toBe('cannot-tell')
    const { verdict, outcomes } = judge(DRAWN)
    expect(verdict).toBe('cannot-tell')
    expect(outcomes.map(({ summary }) => summary).join(' ')).toContain(
      'is hatched, with bars of 0.15 mm at a pitch of 0.6 mm measured in the artwork',
    )
  })

  test('has a higher upper bound the wider its openings are', () => {
    const upper = (hatch: typeof DRAWN) =>
      Number(
        / to ([\d.]+) Ω with a slot/.exec(
          judge(hatch)
            .outcomes.map(({ summary }) => summary)
            .join(' '),
        )?.[1],
      )
    expect(upper({ ...DRAWN, pitchMm: 1.2 })).toBeGreaterThan(upper(DRAWN))
  })
})

test('the hatch of a zone is that of its artwork, as long as the plan is the one that it was laid over', () => {
  const [layer] = demo.construction.layers.filter(({ kind }) => kind === 'conductor')
  const zoneIds = demo.construction.zones.map(({ id }) => id)
  const changed = stated(0.2, 0.8)
  const facts = readFacts(hatched(0.2, 0.05), [], [], changed)
  const hatchesOf = (given: typeof demo) => {
    const context = buildContext(given, { facts })
    return zoneIds.flatMap((id) => context.findDrawnHatch(id, layer?.id ?? '') ?? [])
  }
  expect(hatchesOf(changed)).toHaveLength(1)
  expect(hatchesOf(changed)[0]?.barMm).toBeCloseTo(0.2, 4)
  const other = structuredClone(changed)
  const [hole] = other.plan?.holes ?? []
  if (hole === undefined) throw new Error('the demo draws no hole')
  hole.atMm = [hole.atMm[0] + 1, hole.atMm[1]]
  expect(hatchesOf(other)).toEqual([])
  expect(buildContext(changed).findDrawnHatch(zoneIds[0] ?? '', layer?.id ?? '')).toBeNull()
})
