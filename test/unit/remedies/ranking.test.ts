import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { assessBend } from '@/lib/engine/remedies/assess'
import { compareRemedies, type Ranked, takeBest } from '@/lib/engine/remedies/ranking'
import { readDemo } from './demo'

const state = assessBend(readDemo('skua-rev-a'), 'hinge', {})?.state
if (state === undefined) throw new Error('no hinge')

const need = { kind: 'room', name: 'Hinge', because: 'It is too narrow.' } as const

/** Few values of each count, so that most sets tie on all but what they make fail. */
const sets = fc.uniqueArray(
  fc
    .record({
      id: fc.integer({ min: 0, max: 999 }),
      verdict: fc.constantFrom('thin-margin' as const, 'fails' as const),
      isForbidden: fc.boolean(),
      changeCount: fc.integer({ min: 1, max: 3 }),
      breaks: fc.integer({ min: 0, max: 2 }),
    })
    .map(({ id, verdict, isForbidden, changeCount, breaks }) => ({
      id: String(id),
      after: { ...state, verdict },
      changeCount,
      forbiddenBy: isForbidden ? [need] : [],
      worsens: [],
      breaks,
    })),
  { selector: ({ id }) => id, maxLength: 40 },
)

describe('the best of many sets', () => {
  it('are the first of all in order, whatever is asked of them', () => {
    fc.assert(
      fc.property(sets, fc.integer({ min: 0, max: 30 }), (drawn, most) => {
        const ranked: Ranked[] = drawn.map(({ breaks, ...set }) => ({ ...set, countBreaks: () => breaks }))
        const ids = (list: readonly Ranked[]) => list.map(({ id }) => id)
        expect(ids(takeBest(ranked, most))).toEqual(ids(ranked.toSorted(compareRemedies).slice(0, most)))
      }),
      { numRuns: 500 },
    )
  })

  it('leave what comes after them unasked', () => {
    const asked: string[] = []
    const ranked = Array.from({ length: 20 }, (_, at): Ranked => {
      const id = `${at}`.padStart(2, '0')
      const countBreaks = () => {
        asked.push(id)
        return id === '01' ? 1 : 0
      }
      return { id, after: state, changeCount: 1, forbiddenBy: [], worsens: [], countBreaks }
    })
    expect(takeBest(ranked, 3).map(({ id }) => id)).toEqual(['00', '02', '03'])
    expect(asked).toEqual(['00', '01', '02', '03'])
  })
})
