import { readFileSync } from 'node:fs'
import { expect, it } from 'vitest'
import { CATALOGUE, LIMIT_KEYS } from '@/lib/engine/catalogue'
import { makeReferencePage } from '@/lib/engine/catalogue/prose'
import { REQUIREMENT_RANGES } from '@/lib/engine/catalogue/requirements'

it('the reference page in docs is the one that the items give', () => {
  const page = readFileSync(new URL('../../../docs/catalogue.md', import.meta.url), 'utf8')
  expect(page, 'run npm run catalogue:docs').toBe(makeReferencePage())
})

it('the README counts the items that there are', () => {
  const readme = readFileSync(new URL('../../../README.md', import.meta.url), 'utf8')
  expect(readme).toContain(`**Checklist**: ${CATALOGUE.length} items`)
})

it('the reference page has every item and every limit, and no address', () => {
  const page = makeReferencePage()
  for (const { id, question } of CATALOGUE) {
    expect(page).toContain(`\`${id}\``)
    expect(page).toContain(`### ${question}`)
  }
  for (const key of LIMIT_KEYS) expect(page).toContain(`\`${key}\``)
  const [, ranges = ''] = page.split('## Ranges of requirements')
  const rows = ranges.split('## Profiles')[0]?.match(/^\| .* \| \S.* \| \S.* \|$/gm) ?? []
  // A row each under the head; each names its field in words, once.
  expect(rows).toHaveLength(REQUIREMENT_RANGES.length + 2)
  expect(new Set(rows).size).toBe(rows.length)
  expect(rows.join('\n')).not.toMatch(/\*|brief\.|features\.|NaN|: :/)
  expect(page).not.toMatch(/https?:|www\./)
})
