import { describe, expect, it } from 'vitest'
import { ITEM_SECTIONS, parseDesign, SOURCES, type SourceKey } from '@/lib/engine'
import {
  CATALOGUE,
  DELIVERED_PROFILES,
  evaluateCatalogue,
  evaluateItem,
  findItem,
  getItem,
  type ItemDefinition,
  LIMIT_KEYS,
  LIMITS,
  SEVERITIES,
} from '@/lib/engine/catalogue'
import { listItemSourceKeys, readItemProse } from '@/lib/engine/catalogue/prose'
import { buildContext } from '@/lib/engine/evaluate'
import { CATALOGUE_SOURCES } from '@/lib/engine/sources'
import { findCatalogueProblems } from './catalogue-problems'
import { makeExampleDesign } from './example-design'
import { EXAMPLE_ITEM_IDS, type ItemExample, listExamples } from './examples'
import { findResultProblems } from './result-problems'

const examples = CATALOGUE.flatMap((item) => listExamples(item.id).map((example) => ({ item, example })))

function makeDesignOf(example: ItemExample) {
  const design = makeExampleDesign()
  example.change?.(design)
  return design
}

describe('the catalogue', () => {
  it('is well formed', () => {
    expect(findCatalogueProblems(CATALOGUE)).toEqual([])
  })

  it('covers all three sections with at least 45 items, most of them computed', () => {
    expect(CATALOGUE.length).toBeGreaterThanOrEqual(45)
    for (const section of ITEM_SECTIONS) {
      expect(CATALOGUE.filter((item) => item.section === section).length).toBeGreaterThanOrEqual(15)
    }
    expect(CATALOGUE.filter((item) => item.check !== null).length).toBeGreaterThan(CATALOGUE.length * 0.8)
  })

  it('has no examples of items that are not there', () => {
    expect(EXAMPLE_ITEM_IDS.filter((id) => findItem(id) === null)).toEqual([])
  })

  it('finds items by id', () => {
    expect(findItem('hole-to-bend')?.question).toBe('Are holes kept clear of bends?')
    expect(findItem('no-such-item')).toBeNull()
    expect(() => getItem('no-such-item')).toThrow('no item "no-such-item" in the catalogue')
  })

  it('explains every severity that it uses, and uses every one', () => {
    expect(new Set(CATALOGUE.map((item) => item.severity))).toEqual(new Set(Object.keys(SEVERITIES)))
  })

  it('cites every source that was recorded for it', () => {
    const cited = new Set<SourceKey>([
      ...CATALOGUE.flatMap(listItemSourceKeys),
      ...LIMIT_KEYS.map((key) => LIMITS[key].sourceKey),
      ...DELIVERED_PROFILES.flatMap(({ limits }) => limits.map(({ sourceKey }) => sourceKey as SourceKey)),
      // Stands behind what a workspace makes itself.
      'workspaceRule',
    ])
    expect(Object.keys(CATALOGUE_SOURCES).filter((key) => !cited.has(key as SourceKey))).toEqual([])
    for (const key of cited) expect(SOURCES).toHaveProperty(key)
  })
})

describe('what the test of form refuses', () => {
  const item = getItem('hole-to-bend')
  const problemsOf = (change: Partial<ItemDefinition>) =>
    findCatalogueProblems([{ ...item, ...change }], () => listExamples(item.id))
  const problemsWithout = (verdict: ItemExample['expect']) =>
    findCatalogueProblems([item], (id) => listExamples(id).filter(({ expect: expected }) => expected !== verdict))

  it('accepts a good item', () => expect(problemsOf({})).toEqual([]))
  it('a duplicate id', () => expect(findCatalogueProblems([item, item])).toContain('hole-to-bend: id is used twice'))
  it('an id that is no kebab-case noun', () =>
    expect(problemsOf({ id: 'Hole_To_Bend', prose: readItemProse(item) })).toContain(
      'Hole_To_Bend: id is not in kebab-case',
    ))
  it('a question without its mark', () =>
    expect(problemsOf({ question: 'Holes' })).toContain('hole-to-bend: question does not end in "?"'))
  it('an item without a source', () =>
    expect(problemsOf({ limits: [], sourceKeys: [] })).toContain('hole-to-bend: nothing is cited'))
  it('a missing title', () =>
    expect(problemsOf({ titles: { ...item.titles, fails: '' } })).toContain('hole-to-bend: no title for "fails"'))
  it('equal titles for meeting and failing', () =>
    expect(problemsOf({ titles: { ...item.titles, fails: item.titles.meets } })).toContain(
      'hole-to-bend: the same title for meeting and failing',
    ))
  it('no example of failing', () => expect(problemsWithout('fails')).toContain('hole-to-bend: no example of failing'))
  it('no example of which nobody can tell', () =>
    expect(problemsWithout('not-computed')).toContain('hole-to-bend: no example of which nobody can tell'))
  it('an item that is said to be always decided, and is not', () =>
    expect(
      findCatalogueProblems([getItem('layer-names')], () => [
        ...listExamples('layer-names'),
        { name: 'open', expect: 'not-computed' },
      ]),
    ).toEqual(['layer-names: said to be always decided, and an example is not']))
  it('no example of meeting', () => expect(problemsWithout('meets')).toContain('hole-to-bend: no example of meeting'))
})

describe('examples give the verdict that they name, with outcomes fit to be shown', () => {
  it.each(examples.map(({ item, example }) => [item.id, example.name, item, example] as const))(
    '%s: %s',
    (_id, _name, item, example) => {
      const design = makeDesignOf(example)
      const parsed = parseDesign(design)
      expect(parsed.ok ? [] : parsed.issues).toEqual([])
      // The whole catalogue runs on each: a change made for one item must not drive another to nonsense.
      const results = evaluateCatalogue(buildContext(design, { facts: example.facts ?? {} }), CATALOGUE)
      const result = results.find(({ itemId }) => itemId === item.id)
      expect(result?.verdict, result?.headline).toBe(example.expect)
      // What waits for a person is either theirs to judge, or seen by somebody and not confirmed.
      if (result?.verdict === 'needs-judgment')
        expect(result.basis).toBe(item.judgment === null || item.judgment.isStatement ? 'stated' : 'judgment')
      expect(
        results.flatMap((each) => findResultProblems(each).map((problem) => `${each.itemId}: ${problem}`)),
      ).toEqual([])
    },
  )
})

describe('outcomes', () => {
  it('do not change the design', () => {
    const design = makeExampleDesign()
    const before = structuredClone(design)
    const context = buildContext(design)
    for (const item of CATALOGUE) evaluateItem(item, context)
    expect(design).toEqual(before)
  })
})
