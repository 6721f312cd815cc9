import { describe, expect, it } from 'vitest'
import { parseSource, readSources } from './source-imports'
import { checkStoredDocuments } from './stored-document-rules'

describe('stored documents are read, not cast', () => {
  it.each(['lib', 'app', 'seed', 'scripts'])('in %s', (folder) => {
    const sources = readSources(folder)
    expect(sources.length).toBeGreaterThan(0)
    expect(sources.flatMap(checkStoredDocuments)).toEqual([])
  })
})

describe('the rule notices', () => {
  const check = (text: string) => checkStoredDocuments(parseSource('lib/data/a.ts', text))

  it.each([
    'const design = JSON.parse(row.designJson) as Design',
    'const design = liftDesign(found) as Design',
    'const { brief } = JSON.parse(designJson) as Pick<Design, "brief">',
    'const { brief } = JSON.parse(designJson)',
    'const design: Design = JSON.parse(readText(file) ?? "")',
    'const results = JSON.parse(json)',
    'return JSON.parse(row.changesJson ?? "[]") as string[]',
    'const results = found as unknown as Evaluation',
    'const patch = value as readonly PatchOperation[]',
    'const signed = value as Readonly<SignedContent>',
  ])('%s', (text) => {
    expect(check(text).length).toBeGreaterThan(0)
  })

  it.each([
    'const design = readStoredDesign(row.designJson)',
    'const value: unknown = JSON.parse(text)',
    'const kept = schema.parse(JSON.parse(text))',
    'const copy: Design = JSON.parse(JSON.stringify(design))',
    "import { type Design as Shape } from '@/lib/engine'",
  ])('but not %s', (text) => {
    expect(check(text)).toEqual([])
  })
})
