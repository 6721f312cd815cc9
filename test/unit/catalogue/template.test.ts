import { describe, expect, test } from 'vitest'
import { type Design, evaluate } from '@/lib/engine'
import {
  type CatalogueTemplate,
  catalogueTemplateSchema,
  DELIVERED_TEMPLATE,
  findTemplateProblems,
  getDefaultLimit,
  type ItemChange,
  makeCatalogue,
  type OwnItem,
  USUAL_ITEMS,
} from '@/lib/engine/catalogue'
import { readItemProse } from '@/lib/engine/catalogue/prose'
import { findStartingConstruction } from '@/lib/engine/starting-constructions'
import { compareTemplates } from '@/lib/review'

const OWN: OwnItem = {
  id: 'own-glue-line-1',
  section: 'materials',
  severity: 'major',
  question: 'Is the glue line of the chest patch clear of the skin side?',
  why: 'Adhesive that squeezes out there irritates the skin.',
  howToCheck: 'Look at the first articles under a lens.',
  evidence: 'Photograph of three parts.',
  ground: 'Lesson of the first Pipit build',
  decidedWhen: 'fabricator',
  answeredBy: ['member', 'fabricator'],
}

const KEPT: ItemChange = {
  itemId: 'tear-stop',
  isOff: false,
  reason: 'Our procedure names the part',
  question: null,
  why: null,
  howToCheck: null,
  answeredBy: null,
}

const withChanges = (changes: Partial<CatalogueTemplate>): CatalogueTemplate => ({ ...DELIVERED_TEMPLATE, ...changes })

function makeDesign(): Design {
  const template = findStartingConstruction('double-sided')
  if (template === null) throw new Error('no starting construction')
  return template.makeDesign('Pipit')
}

describe('an edition of the catalogue', () => {
  test('as delivered holds the very items that are delivered', () => {
    const { items, switchedOff } = makeCatalogue(DELIVERED_TEMPLATE)
    expect(items).toEqual(USUAL_ITEMS)
    expect(switchedOff).toEqual([])
  })

  test('own items stand at the end of their section and wait for a person', () => {
    const { items } = makeCatalogue(withChanges({ ownItems: [OWN] }))
    expect(items).toHaveLength(USUAL_ITEMS.length + 1)
    const at = items.findIndex(({ id }) => id === OWN.id)
    expect(items[at + 1]?.section).toBe('geometry')
    expect(items[at - 1]?.section).toBe('materials')
    const result = evaluate(makeDesign(), { items }).items.find(({ itemId }) => itemId === OWN.id)
    expect(result).toMatchObject({ basis: 'judgment', verdict: 'needs-judgment', outcomes: [] })
    expect(result?.headline).toBe('Is the glue line of the chest patch clear of the skin side.')
  })

  test('an item that is switched off is not evaluated and stands with its reason', () => {
    const template = withChanges({ itemChanges: [{ ...KEPT, isOff: true, reason: 'The outline is moulded in' }] })
    const { items, switchedOff } = makeCatalogue(template)
    expect(items.some(({ id }) => id === 'tear-stop')).toBe(false)
    expect(switchedOff).toMatchObject([{ itemId: 'tear-stop', reason: 'The outline is moulded in' }])
    expect(evaluate(makeDesign(), { items }).items).toHaveLength(USUAL_ITEMS.length - 1)
  })

  test('changed wording and roles leave the calculation what it is', () => {
    const change: ItemChange = {
      ...KEPT,
      itemId: 'bend-strain',
      question: 'Does the copper of each hinge stay within its strain?',
      answeredBy: ['lead'],
    }
    const { items } = makeCatalogue(withChanges({ itemChanges: [change] }))
    const [before, after] = [USUAL_ITEMS, items].map((list) => list.find(({ id }) => id === 'bend-strain'))
    expect(after).toMatchObject({ question: change.question, answeredBy: ['lead'], prose: {} })
    expect(before).toBeDefined()
    if (before !== undefined && after !== undefined) expect(readItemProse(after)).toEqual(readItemProse(before))
    expect(after?.check).toBe(before?.check)
    expect(evaluate(makeDesign(), { items }).items).toEqual(evaluate(makeDesign()).items)
  })

  test('an item that a later delivery dropped is passed over', () => {
    const template = withChanges({ itemChanges: [{ ...KEPT, itemId: 'gone-since', isOff: true }] })
    expect(makeCatalogue(template).items).toEqual(USUAL_ITEMS)
    expect(findTemplateProblems(template)).toEqual(['There is no delivered item "gone-since".'])
  })

  test('what cannot be used is named', () => {
    expect(findTemplateProblems(withChanges({ ownItems: [OWN, OWN] }))).toHaveLength(1)
    expect(findTemplateProblems(withChanges({ itemChanges: [KEPT, KEPT] }))).toEqual([
      'The item "tear-stop" is changed twice.',
    ])
    const limits = [{ key: 'crossingAngleDeg', value: 95, note: '' }]
    expect(findTemplateProblems(withChanges({ limits }))[0]).toContain('between 0 and 90 deg')
    const paths = (item: unknown) => {
      const read = catalogueTemplateSchema.safeParse({ ...DELIVERED_TEMPLATE, ownItems: [item] })
      return read.success ? [] : read.error.issues.map(({ path }) => path.join('.'))
    }
    expect(paths(OWN)).toEqual([])
    expect(paths({ ...OWN, id: 'bend-strain' })).toEqual(['ownItems.0.id'])
    expect(paths({ ...OWN, question: '  ' })).toEqual(['ownItems.0.question'])
    expect(paths({ ...OWN, answeredBy: ['observer'] })).toEqual(['ownItems.0.answeredBy.0'])
    expect(paths({ ...OWN, answeredBy: [] })).toEqual(['ownItems.0.answeredBy'])
    expect(paths({ ...OWN, severity: 'grave' })).toEqual(['ownItems.0.severity'])
  })
})

describe('differences between two editions', () => {
  const sentences = (before: CatalogueTemplate, after: CatalogueTemplate) =>
    compareTemplates(before, after).map(({ sentence }) => sentence)
  const own = withChanges({ ownItems: [OWN] })

  test('an edition does not differ from itself', () => {
    expect(compareTemplates(own, structuredClone(own))).toEqual([])
  })

  test('items added, removed and switched off, with the reason', () => {
    expect(sentences(DELIVERED_TEMPLATE, own)).toEqual([`item added: ${OWN.question}`])
    expect(sentences(own, DELIVERED_TEMPLATE)).toEqual([`item removed: ${OWN.question}`])
    const off = withChanges({ itemChanges: [{ ...KEPT, isOff: true }] })
    expect(sentences(DELIVERED_TEMPLATE, off)[0]).toMatch(/^item switched off: .* \(Our procedure names the part\)$/)
    expect(sentences(off, DELIVERED_TEMPLATE)[0]).toMatch(/^item added: /)
  })

  test('an answer is asked for again where the question, the way to check it or the evidence is another', () => {
    const change = (part: Partial<OwnItem>) => compareTemplates(own, withChanges({ ownItems: [{ ...OWN, ...part }] }))
    expect(change({ question: 'Is it clear?' })).toMatchObject([{ kind: 'wording', reopensAnswer: true }])
    expect(change({ howToCheck: 'Feel it.' })).toMatchObject([{ kind: 'wording', reopensAnswer: true }])
    expect(change({ evidence: 'A sample.' })).toMatchObject([{ kind: 'wording', reopensAnswer: true }])
    expect(change({ why: 'It itches.' })).toMatchObject([{ kind: 'wording', reopensAnswer: false }])
    expect(change({ severity: 'minor' })).toMatchObject([{ kind: 'severity', reopensAnswer: false }])
    expect(change({ answeredBy: ['lead'] })).toMatchObject([{ kind: 'roles', reopensAnswer: false }])
    expect(change({ decidedWhen: 'early' })).toMatchObject([{ kind: 'stage', reopensAnswer: false }])
  })

  test('limits with their units, and whose the other value is', () => {
    const { value } = getDefaultLimit('crossingAngleDeg')
    const limits = [{ key: 'crossingAngleDeg', value: 80, note: '' }]
    const [there] = sentences(DELIVERED_TEMPLATE, withChanges({ limits }))
    expect(there).toContain(`${value}° (default) to 80°`)
    const [back] = sentences(withChanges({ limits }), DELIVERED_TEMPLATE)
    expect(back).toContain(`80° to ${value}° (default)`)
  })
})
