import { readdirSync, readFileSync } from 'node:fs'
import { describe, expect, it } from 'vitest'
import { CATALOGUE } from '@/lib/engine/catalogue'
import { readItemProse, readWhatHelps } from '@/lib/engine/catalogue/prose'
import { GLOSSARY, markTerms } from '@/lib/engine/glossary'

const termsIn = (text: string) => markTerms(text).flatMap(({ term }) => (term === null ? [] : [term.id]))

describe('the glossary', () => {
  it('has each form once, and its terms by the alphabet', () => {
    const forms = GLOSSARY.flatMap(({ term, forms: others }) => [term, ...others])
    expect(new Set(forms.map((form) => form.toLowerCase())).size).toBe(forms.length)
    expect(new Set(GLOSSARY.map(({ id }) => id)).size).toBe(GLOSSARY.length)
    const terms = GLOSSARY.map(({ term }) => term)
    expect(terms).toEqual(terms.toSorted((a, b) => a.localeCompare(b, 'en')))
  })

  it('explains no term by itself alone, and says it in whole sentences', () => {
    for (const { term, meaning } of GLOSSARY) {
      expect(meaning, term).toMatch(/^[A-Z].*\.$/)
      expect(meaning.length, term).toBeGreaterThan(40)
    }
  })

  it('lists only words that the application uses', () => {
    const sources = ['lib', 'app'].flatMap((folder) =>
      readdirSync(folder, { recursive: true, encoding: 'utf8' })
        .filter((file) => /\.tsx?$/.test(file) && !file.includes('glossary') && !file.includes('generated'))
        .map((file) => readFileSync(`${folder}/${file}`, 'utf8')),
    )
    const used = new Set(sources.flatMap(termsIn))
    expect(GLOSSARY.filter(({ id }) => !used.has(id)).map(({ term }) => term)).toEqual([])
  })

  it('explains most of its words where the checklist uses them', () => {
    const texts = CATALOGUE.flatMap((item) => [...Object.values(readItemProse(item)), ...readWhatHelps(item.id)])
    expect(new Set(texts.flatMap(termsIn)).size).toBeGreaterThan(25)
  })
})

describe('terms of a running text', () => {
  it('are found in any case and number, each once, and the pieces make up the text', () => {
    const text = 'Tear stops at slits; a tear stop is copper. The neutral axis of each unbonded leaf.'
    const pieces = markTerms(text)
    expect(pieces.map((piece) => piece.text).join('')).toBe(text)
    expect(termsIn(text)).toEqual(['tear-stop', 'neutral-axis', 'leaf'])
    expect(pieces[0]).toMatchObject({ text: 'Tear stops', term: { id: 'tear-stop' } })
  })

  it('are whole words, the longest that fits', () => {
    expect(termsIn('skin depth')).toEqual(['skin-depth'])
    expect(termsIn('damping of the webbing, strained datums')).toEqual(['datum'])
    expect(termsIn('semi-rigid-flex')).toEqual([])
    expect(termsIn('rolled-annealed foil')).toEqual(['rolled-annealed'])
    expect(markTerms('')).toEqual([])
  })
})
