import { expect, test } from 'vitest'
import { evaluateItem, getItem } from '@/lib/engine/catalogue'
import { buildContext } from '@/lib/engine/evaluate'
import { makeExampleDesign } from './example-design'

/*
 * A count of nothing proves nothing. It is no example of its item: the first entry of a matrix, even a stretch, says more than none, and examples are made
 * worse by the counts that an item declares.
 */
test('a matrix that the design was held against in no entry does not meet', () => {
  const capability = { comfortable: 0, stretch: 0, outside: 0, notStated: 0 }
  const { verdict, outcomes } = evaluateItem(
    getItem('capability-match'),
    buildContext(makeExampleDesign(), { facts: { capability } }),
  )
  expect(verdict).toBe('needs-judgment')
  expect(outcomes.map(({ kind }) => kind)).toEqual(['not-computed'])
})
