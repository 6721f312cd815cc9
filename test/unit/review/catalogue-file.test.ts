import { describe, expect, test } from 'vitest'
import { buildContext } from '@/lib/engine'
import { type CatalogueTemplate, evaluateItem, makeCatalogue, type OwnItem } from '@/lib/engine/catalogue'
import { makeCatalogueFile, readCatalogueFile } from '@/lib/review'
import { hashJson } from '@/lib/review/canonical'
import { makeExampleDesign } from '../catalogue/example-design'

/*
 * A catalogue comes from another house: whatever is wrong with the file is refused with its place and reason, and nothing is read half.
 */

const RADIUS: OwnItem = {
  id: 'own-radius',
  section: 'geometry',
  severity: 'major',
  question: 'Is each inside radius at least 2 mm?',
  why: 'A lesson.',
  howToCheck: 'Look at the bends.',
  evidence: '',
  ground: 'House rule 12',
  decidedWhen: 'early',
  answeredBy: ['member'],
  check: { field: 'bends.*.insideRadiusMm', where: null, sense: 'at-least', value: 2, upperValue: null },
}
const PROFILE = {
  id: 'own-flight',
  name: 'Flight',
  purpose: 'Parts that fly.',
  items: [],
  limits: [],
  requiredFields: [],
}
const GOOD: CatalogueTemplate = { ownItems: [RADIUS], itemChanges: [], limits: [], profiles: [PROFILE] }

/** A file as it would be written, with a hash that fits: only its content is wrong. */
const fileOf = (content: object): string =>
  JSON.stringify({ ...JSON.parse(makeCatalogueFile(GOOD)), content, sha256: hashJson(content) })
const withOwn = (change: object) => fileOf({ ...GOOD, ownItems: [{ ...RADIUS, ...change }] })
const withCheck = (change: object) => withOwn({ check: { ...RADIUS.check, ...change } })
const withProfile = (change: object) => fileOf({ ...GOOD, profiles: [{ ...PROFILE, ...change }] })

const change = (itemId: string) => ({
  itemId,
  isOff: true,
  reason: 'Not for us.',
  question: null,
  why: null,
  howToCheck: null,
  answeredBy: null,
})

/** What is wrong, the place that must be named, and what the reason must say. */
const ATTACKS: readonly (readonly [name: string, text: string, path: string, reason: string])[] = [
  ['nothing', '', '', 'not JSON'],
  ['half a file', fileOf(GOOD).slice(0, 200), '', 'not JSON'],
  ['a file of half a million characters', `${fileOf(GOOD)}${' '.repeat(500_000)}`, '', 'more than'],
  ['brackets nested a hundred thousand deep', '['.repeat(100_000) + ']'.repeat(100_000), '', 'not a catalogue'],
  [
    'content nested forty thousand deep',
    JSON.stringify({ ...JSON.parse(fileOf(GOOD)), content: '@' }).replace(
      '"@"',
      '['.repeat(40_000) + ']'.repeat(40_000),
    ),
    'content',
    '',
  ],
  ['a number in place of it', '7', '', 'not a catalogue'],
  [
    'a version of tomorrow',
    JSON.stringify({ ...JSON.parse(fileOf(GOOD)), formatVersion: 2 }),
    'formatVersion',
    'later version',
  ],
  [
    'a version below the first',
    JSON.stringify({ ...JSON.parse(fileOf(GOOD)), formatVersion: 0 }),
    'formatVersion',
    'not a version',
  ],
  ['a prototype', fileOf(GOOD).replace('{', '{"__proto__":{"format":"x"},'), '__proto__', 'not a field'],
  ['a list that is missing', fileOf({ ownItems: [], itemChanges: [] }), 'content.limits', ''],
  ['a list that is a text', fileOf({ ...GOOD, limits: 'none' }), 'content.limits', ''],
  ['a field more', fileOf({ ...GOOD, severityOverrides: [] }), 'content', 'severityOverrides'],
  [
    'two own items of one id',
    fileOf({ ...GOOD, ownItems: [RADIUS, { ...RADIUS, question: 'Another?' }] }),
    'content',
    'id of another own item',
  ],
  ['the id of a delivered item', withOwn({ id: 'bend-strain' }), 'content.ownItems.0.id', 'not the id of an own item'],
  ['an id of a path', withOwn({ id: 'own-../../etc' }), 'content.ownItems.0.id', 'not the id of an own item'],
  ['a question of blanks', withOwn({ question: '   ' }), 'content.ownItems.0.question', 'empty'],
  ['a question of 301 characters', withOwn({ question: 'x'.repeat(301) }), 'content.ownItems.0.question', '300'],
  ['nobody who answers', withOwn({ answeredBy: [] }), 'content.ownItems.0.answeredBy', 'nobody'],
  ['a severity of its own', withOwn({ severity: 'fatal' }), 'content.ownItems.0.severity', ''],
  [
    'a field that is none',
    withCheck({ field: 'bends.*.gone' }),
    'content.ownItems.0.check.field',
    'not a field of the design',
  ],
  ['a field of texts', withCheck({ field: 'bends.*.note' }), 'content.ownItems.0.check.field', 'no single number'],
  ['a formula in place of a number', withCheck({ value: '=1+1' }), 'content.ownItems.0.check.value', 'number'],
  ['a number beyond all', fileOf(GOOD).replace('"value":2', '"value":1e999'), 'content.ownItems.0.check.value', ''],
  ['an upper end without a window', withCheck({ upperValue: 3 }), 'content.ownItems.0.check.upperValue', 'alone'],
  [
    'a window upside down',
    withCheck({ sense: 'within', value: 3, upperValue: 2 }),
    'content.ownItems.0.check.upperValue',
    'below the lower end',
  ],
  [
    'a kind that entries have not',
    withCheck({ where: { field: 'use', value: 'thrown' } }),
    'content.ownItems.0.check.where',
    'not a kind',
  ],
  [
    'a change of an item that is none',
    fileOf({ ...GOOD, itemChanges: [change('no-such-item')] }),
    'content',
    'no delivered item',
  ],
  [
    'one item changed twice',
    fileOf({ ...GOOD, itemChanges: [change('wear'), change('wear')] }),
    'content',
    'changed twice',
  ],
  [
    'a limit that is none',
    fileOf({ ...GOOD, limits: [{ key: 'noSuchMm', value: 1, note: '' }] }),
    'content',
    'noSuchMm',
  ],
  [
    'a limit beyond its range',
    fileOf({ ...GOOD, limits: [{ key: 'crossingAngleDeg', value: -5, note: '' }] }),
    'content',
    '',
  ],
  [
    'two profiles of one id',
    fileOf({ ...GOOD, profiles: [PROFILE, { ...PROFILE, name: 'Other' }] }),
    'content',
    'id of another one',
  ],
  ['the name of a delivered profile', withProfile({ name: 'medical' }), 'content', 'another profile'],
  [
    'a profile that asks an item that is none',
    withProfile({
      items: [
        { itemId: 'no-such', asked: 'on', severity: null, decidedWhen: null, isForEveryDesign: false, reason: 'So.' },
      ],
    }),
    'content',
    'no item',
  ],
  [
    'a limit from a source that is none',
    withProfile({ limits: [{ key: 'crossingAngleDeg', value: 80, isRelaxed: false, sourceKey: 'gossip', note: '' }] }),
    'content.profiles.0.limits.0.sourceKey',
    'not a source',
  ],
  [
    'half a signature',
    withProfile({ requiredSignatures: 0.5 }),
    'content.profiles.0.requiredSignatures',
    'whole number',
  ],
  [
    'survival of more than all',
    withProfile({ leastSurvivalPct: 101 }),
    'content.profiles.0.leastSurvivalPct',
    'less than 100',
  ],
]

describe('a catalogue from a file', () => {
  test('is read as it was written', () => {
    expect(readCatalogueFile(makeCatalogueFile(GOOD))).toEqual({ ok: true, content: GOOD })
    expect(readCatalogueFile(fileOf(GOOD))).toEqual({ ok: true, content: GOOD })
  })

  test.each(ATTACKS)('%s is refused with its place and reason', (_, text, path, reason) => {
    const read = readCatalogueFile(text)
    expect(read.ok).toBe(false)
    if (read.ok) return
    expect(read.issues.map((issue) => issue.path.join('.'))).toContain(path)
    const found = read.issues.find((issue) => issue.path.join('.') === path)
    expect(found?.message).toContain(reason)
    expect(found?.message).not.toBe('')
  })

  test('that is wrong in several ways names each', () => {
    const read = readCatalogueFile(
      fileOf({ ...GOOD, itemChanges: [change('no-such-item')], limits: [{ key: 'noSuchMm', value: 1, note: '' }] }),
    )
    expect(read).toMatchObject({ ok: false, issues: { length: 2 } })
  })

  test('holds texts as texts: a formula or markup in a question is nothing but a question', () => {
    const question = '=HYPERLINK("http://x.example";"<script>")?'
    const read = readCatalogueFile(withOwn({ question }))
    expect(read).toMatchObject({ ok: true, content: { ownItems: [{ question }] } })
  })
})

describe('an own item with a calculation', () => {
  const verdictOf = (changeDesign: (design: ReturnType<typeof makeExampleDesign>) => void, own = RADIUS) => {
    const design = makeExampleDesign()
    changeDesign(design)
    const item = makeCatalogue({ ...GOOD, ownItems: [own] }).items.find(({ id }) => id === own.id)
    if (item === undefined) throw new RangeError('the item of the workspace is not asked')
    return evaluateItem(item, buildContext(design))
  }
  const first = (design: ReturnType<typeof makeExampleDesign>) => design.bends[0] ?? ({} as never)

  test('meets, has a thin margin, fails and is open by the same rule as every other', () => {
    const width: OwnItem = {
      ...RADIUS,
      check: { field: 'features.conductors.*.widthMm', where: null, sense: 'at-least', value: 0.4, upperValue: null },
    }
    const conductor = (design: ReturnType<typeof makeExampleDesign>) => design.features.conductors[0] ?? ({} as never)
    expect(
      verdictOf((d) => {
        for (const bend of d.bends) bend.insideRadiusMm = 5
      }),
    ).toMatchObject({ verdict: 'meets', basis: 'typed' })
    expect(
      verdictOf((d) => {
        for (const bend of d.bends) Object.assign(bend, { insideRadiusMm: 2.1, radiusToleranceMm: 0.3 })
      }).verdict,
    ).toBe('thin-margin')
    expect(
      verdictOf((d) => {
        first(d).insideRadiusMm = 1
      }).verdict,
    ).toBe('fails')
    expect(
      verdictOf((d) => {
        conductor(d).widthMm = null
      }, width).verdict,
    ).toBe('not-computed')
    expect(verdictOf(() => {}, width).verdict).toBe('meets')
  })

  test('never meets on a list that nobody filled, nor on a field that a later delivery dropped', () => {
    expect(
      verdictOf((d) => {
        d.bends = []
      }).verdict,
    ).toBe('not-computed')
    const dropped: OwnItem = {
      ...RADIUS,
      check: { field: 'bends.*.gone', where: null, sense: 'at-least', value: 1, upperValue: null },
    }
    expect(verdictOf(() => {}, dropped).verdict).not.toBe('meets')
    expect(verdictOf(() => {}, dropped).verdict).not.toBe('not-applicable')
  })
})
