import { readdirSync, readFileSync } from 'node:fs'
import path from 'node:path'
import { describe, expect, it } from 'vitest'
import { UNVOUCHED_MODELS, VOUCHED_MODELS } from '@/lib/data/store/vouched/models'

/** Columns by model, as the one source of the models has them; relations are no columns. */
function readModels(): Map<string, string[]> {
  const models = new Map<string, string[]>()
  const text = readFileSync('prisma/models.prisma', 'utf8')
  for (const [, name = '', body = ''] of text.matchAll(/^model (\w+) \{\n([\s\S]*?)^\}/gm)) {
    models.set(
      name,
      [...body.matchAll(/^ {2}(\w+) +(?:String|Int|Float|Boolean|DateTime)\b/gm)].map(([, c = '']) => c),
    )
  }
  return models
}

describe('what the trail vouches for', () => {
  const models = readModels()

  it('is decided for every table', () => {
    expect(models.size).toBeGreaterThan(30)
    const decided = [...VOUCHED_MODELS.map(({ model }) => model), ...Object.keys(UNVOUCHED_MODELS)]
    expect(decided.sort()).toEqual([...models.keys()].sort())
  })

  it.each(VOUCHED_MODELS.map((vouched) => [vouched.model, vouched] as const))(
    'is decided for every column of %s',
    (name, { columns, open, key, later, renamed }) => {
      const named = columns.map((column) => renamed?.[column] ?? column)
      expect([...named, ...Object.keys(open ?? {})].sort()).toEqual(models.get(name)?.sort())
      expect(columns).toContain(key)
      for (const column of Object.keys(later ?? {})) expect(columns).toContain(column)
    },
  )

  it('has a word of its own for each', () => {
    expect(new Set(VOUCHED_MODELS.map(({ kind }) => kind)).size).toBe(VOUCHED_MODELS.length)
  })

  it('is not written outside a transaction anywhere in the application', () => {
    const names = VOUCHED_MODELS.map(({ model }) => `${model.charAt(0).toLowerCase()}${model.slice(1)}`).join('|')
    const alone = new RegExp(`\\b(?:db\\(\\)|client)\\s*\\.(?:${names})\\s*\\.(?:create|update|upsert|delete)`)
    // Marks the accounts of the demonstration after it was played, in a column that no hash covers.
    const allowed = new Set([path.join('lib', 'data', 'acts', 'access', 'accounts.ts')])
    const files = readdirSync('lib', { recursive: true, encoding: 'utf8' })
      .filter((file) => /\.tsx?$/.test(file) && !file.includes('generated'))
      .map((file) => path.join('lib', file))
    expect(files.length).toBeGreaterThan(100)
    const writers = files.filter((file) => !allowed.has(file) && alone.test(readFileSync(file, 'utf8')))
    expect(writers).toEqual([])
  })
})
