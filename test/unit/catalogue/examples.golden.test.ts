import { createHash } from 'node:crypto'
import { expect, test } from 'vitest'
import { CATALOGUE, evaluateItem } from '@/lib/engine/catalogue'
import { buildFigures } from '../verdicts/figures'
import { makeExampleDesign } from './example-design'
import { listExamples } from './examples'

/*
 * What each item says of each of its examples, as recorded: the verdicts are argued beside the examples, and here no figure, place, caution or word
 * moves unseen. `npm run golden` records anew.
 */

/** Last digits of pow, exp and trigonometry differ between machines. */
const DIGITS = 9
const HASH_LETTERS = 10

const hash = (value: unknown): string =>
  createHash('sha256')
    .update(
      JSON.stringify(value, (_, each: unknown) =>
        typeof each === 'number' && !Number.isInteger(each) ? Number(each.toPrecision(DIGITS)) : each,
      ),
    )
    .digest('hex')
    .slice(0, HASH_LETTERS)

test('what items say of their examples is as recorded', async () => {
  const lines = CATALOGUE.flatMap((item) =>
    listExamples(item.id).map(({ name, change, facts }) => {
      const design = makeExampleDesign()
      change?.(design)
      const { verdict, headline, outcomes } = evaluateItem(item, buildFigures(design, facts ?? {}))
      return `${item.id}: ${name}\n  ${verdict}, ${outcomes.length}, ${hash(outcomes)}\n  ${headline}\n`
    }),
  )
  await expect(lines.join('')).toMatchFileSnapshot('../../fixtures/golden/examples.digest.txt')
}, 300_000)
