import fc from 'fast-check'
import { describe, expect, test } from 'vitest'
import { buildContext, type Design, evaluate } from '@/lib/engine'
import {
  CATALOGUE,
  type CatalogueEdition,
  DELIVERED_PROFILES,
  DELIVERED_TEMPLATE,
  evaluateItem,
  findTemplateProblems,
  getDefaultLimit,
  LIMIT_KEYS,
  LIMITS,
  layProfileLimits,
  makeCatalogue,
  makeLimitLookup,
  newOwnItemSchema,
  type OwnItem,
  type Profile,
  profileSchema,
} from '@/lib/engine/catalogue'
import { listFieldPatterns } from '@/lib/engine/design/fields'
import { readDemoDesign } from '../engine-assembly/demo-design-files'

const DESIGNS: readonly Design[] = [readDemoDesign('skua-rev-a'), readDemoDesign('skua-rev-b')]

const EMPTY: Profile = {
  id: 'own-empty',
  name: 'Empty',
  purpose: 'Nothing.',
  items: [],
  limits: [],
  requiredFields: [],
}
const ITEM = { asked: null, severity: null, decidedWhen: null, isForEveryDesign: false, reason: 'Because.' } as const

const editionOf = (profiles: readonly Profile[], ownItems: OwnItem[] = []): CatalogueEdition => ({
  ...DELIVERED_TEMPLATE,
  ownItems,
  profiles: profiles.map((profile) => structuredClone(profile)) as NonNullable<CatalogueEdition['profiles']>,
  profileIds: profiles.map(({ id }) => id),
})

function resultsOf(design: Design, edition: CatalogueEdition) {
  const { items, profiles, switchedOff } = makeCatalogue(edition)
  const evaluation = evaluate(design, { items, limits: layProfileLimits([], profiles) })
  const results = new Map(evaluation.items.map((result) => [result.itemId, result]))
  return { items: new Map(items.map((item) => [item.id, item])), results, switchedOff }
}

/** How much a state of an item asks of a design; an item that is not asked asks least. */
const RANK = ['not-applicable', 'meets', 'thin-margin', 'needs-judgment', 'not-computed', 'cannot-tell', 'fails']
const SEVERITY = ['advice', 'minor', 'major', 'blocking']
const STAGE = ['fabricator', 'layout', 'early']

/** What became easier to meet from one edition to another. */
function listEased(design: Design, before: CatalogueEdition, after: CatalogueEdition): string[] {
  const [was, is] = [resultsOf(design, before), resultsOf(design, after)]
  return [...was.items].flatMap(([id, old]) => {
    const now = is.items.get(id)
    if (now === undefined) return [`${id} is not asked any more`]
    const verdicts = [was, is].map(({ results }) => RANK.indexOf(results.get(id)?.verdict ?? ''))
    return [
      ...((verdicts[1] ?? 0) < (verdicts[0] ?? 0) ? [`${id} has a better verdict`] : []),
      ...(SEVERITY.indexOf(now.severity) < SEVERITY.indexOf(old.severity) ? [`${id} is less severe`] : []),
      ...(STAGE.indexOf(now.decidedWhen) < STAGE.indexOf(old.decidedWhen) ? [`${id} is decided later`] : []),
    ]
  })
}

const anyLimit = fc
  .constantFrom(...LIMIT_KEYS)
  .chain((key) => {
    const { min, max } = LIMITS[key].allowed
    return fc.record({ key: fc.constant(key), value: fc.double({ min, max, noNaN: true }), isRelaxed: fc.boolean() })
  })
  .map((limit) => ({ ...limit, sourceKey: 'ownChoice', note: '' }))

const anyItem = fc.record({
  itemId: fc.constantFrom(...CATALOGUE.map(({ id }) => id)),
  asked: fc.constantFrom('on' as const, 'off' as const, null),
  severity: fc.constantFrom('blocking' as const, 'major' as const, 'minor' as const, 'advice' as const, null),
  decidedWhen: fc.constantFrom('early' as const, 'layout' as const, 'fabricator' as const, null),
  isForEveryDesign: fc.boolean(),
  reason: fc.constant('Because.'),
})

const anyField = fc.record({
  field: fc.constantFrom(...listFieldPatterns().map(({ pattern }) => pattern)),
  where: fc.constant(null),
  reason: fc.constant('Because.'),
})

const anyProfile = fc
  .record({
    id: fc.constantFrom('own-a', 'own-b', 'own-c', 'own-d', 'own-e'),
    items: fc.uniqueArray(anyItem, { maxLength: 12, selector: ({ itemId }) => itemId }),
    limits: fc.uniqueArray(anyLimit, { maxLength: 8, selector: ({ key }) => key }),
    requiredFields: fc.uniqueArray(anyField, { maxLength: 4, selector: ({ field }) => field }),
    requiredSignatures: fc.option(fc.integer({ min: 1, max: 5 }), { nil: null }),
    leastSurvivalPct: fc.option(fc.constantFrom(50, 90, 99, 99.9), { nil: null }),
  })
  .map((profile): Profile => ({ ...profile, name: profile.id, purpose: 'Any.' }))

const anyProfiles = fc.uniqueArray(anyProfile, { minLength: 1, maxLength: 4, selector: ({ id }) => id })

describe('several profiles', () => {
  test('one more never makes a verdict, a severity or a stage easier', () => {
    fc.assert(
      fc.property(anyProfiles, fc.constantFrom(...DESIGNS), (profiles, design) => {
        expect(listEased(design, editionOf(profiles.slice(1)), editionOf(profiles))).toEqual(
          // The first one alone may switch off and relax; it says so with a reason.
          profiles.length === 1 ? expect.any(Array) : [],
        )
      }),
      { seed: 20_261_129, numRuns: 60 },
    )
  })

  test('the first one eases nothing either, unless it says so', () => {
    const tight = anyProfile.map(
      (profile): Profile => ({
        ...profile,
        items: profile.items.map((item) => ({ ...item, asked: 'on', severity: 'blocking', decidedWhen: 'early' })),
        limits: profile.limits.map((limit) => ({ ...limit, isRelaxed: false })),
      }),
    )
    fc.assert(
      fc.property(tight, fc.constantFrom(...DESIGNS), (profile, design) => {
        expect(listEased(design, DELIVERED_TEMPLATE, editionOf([profile]))).toEqual([])
      }),
      { seed: 20_261_129, numRuns: 40 },
    )
  })

  test('their order does not matter, and one taken twice is one', () => {
    fc.assert(
      fc.property(anyProfiles, (profiles) => {
        const edition = editionOf(profiles)
        const again = { ...edition, profileIds: [...profiles.map(({ id }) => id).reverse(), profiles[0]?.id ?? ''] }
        const [one, other] = [edition, again].map((each) => {
          const { items, switchedOff, profiles: inForce } = makeCatalogue(each)
          const limits = layProfileLimits([], inForce)
          return { results: evaluate(DESIGNS[1] as Design, { items, limits }).items, switchedOff, limits }
        })
        expect(other).toEqual(one)
      }),
      { seed: 20_261_129, numRuns: 20 },
    )
  })

  test('the harder limit wins by its direction, also against those of workspace and fabricator', () => {
    const owner = { kind: 'fabricator', name: 'Redshank Circuits' } as const
    const demand = (id: string, key: string, value: number, isRelaxed = false): Profile => ({
      ...EMPTY,
      id,
      name: id,
      limits: [{ key, value, isRelaxed, sourceKey: 'ownChoice', note: '' }],
    })
    const read = (key: string, profiles: readonly Profile[], value?: number) =>
      makeLimitLookup(layProfileLimits(value === undefined ? [] : [{ key, value, owner }], profiles))(key)
    const ring = (value: number, isRelaxed?: boolean) => demand(`own-${value}`, 'annularRingMm', value, isRelaxed)
    const usual = getDefaultLimit('annularRingMm').value
    expect(read('annularRingMm', [ring(usual + 0.1), ring(usual + 0.2)]).value).toBe(usual + 0.2)
    expect(read('annularRingMm', [ring(usual + 0.1)])).toMatchObject({
      owner: { kind: 'profile', name: `own-${usual + 0.1}` },
      sourceKey: 'ownChoice',
    })
    // Laxer, and not said to be so on purpose: the delivered limit stays.
    expect(read('annularRingMm', [ring(usual - 0.05)]).value).toBe(usual)
    expect(read('annularRingMm', [ring(usual - 0.05, true)]).value).toBe(usual - 0.05)
    // A second profile that does not speak of it keeps the delivered one.
    expect(read('annularRingMm', [ring(usual - 0.05, true), EMPTY]).value).toBe(usual)
    // A limit that somebody set is never relaxed, and is tightened.
    expect(read('annularRingMm', [ring(usual - 0.05, true)], usual + 0.05)).toMatchObject({
      value: usual + 0.05,
      owner,
    })
    expect(read('annularRingMm', [ring(usual + 0.1)], usual - 0.1).value).toBe(usual + 0.1)
    expect(read('damageSumFraction', [demand('own-x', 'damageSumFraction', 0.25)], 0.5).value).toBe(0.25)
    expect(read('damageSumFraction', [demand('own-x', 'damageSumFraction', 0.5)], 0.25).value).toBe(0.25)
  })

  test('an item that one switches off is asked as soon as another is silent about it', () => {
    const off: Profile = {
      ...EMPTY,
      id: 'own-off',
      name: 'Off',
      items: [{ ...ITEM, itemId: 'tear-stop', asked: 'off' }],
    }
    expect(makeCatalogue(editionOf([off])).switchedOff).toMatchObject([
      { itemId: 'tear-stop', reason: 'profile Off: Because.' },
    ])
    expect(makeCatalogue(editionOf([off, EMPTY])).switchedOff).toEqual([])
  })

  test('what a profile changes about an item says which one and why', () => {
    const profile: Profile = {
      ...EMPTY,
      name: 'Flight',
      items: [{ ...ITEM, itemId: 'tear-stop', severity: 'blocking' }],
    }
    const item = makeCatalogue(editionOf([profile])).items.find(({ id }) => id === 'tear-stop')
    expect(item?.becauseOf?.[0]).toMatch(/^Severity blocking, otherwise \w+, because of profile Flight: Because\.$/)
  })

  test('an item that would not apply waits for a person where a profile asks it of every design', () => {
    const design = structuredClone(DESIGNS[1]) as Design
    design.bends = []
    design.features.none.push('bends')
    const profile: Profile = {
      ...EMPTY,
      items: [{ ...ITEM, itemId: 'radius-holder', isForEveryDesign: true }],
    }
    const verdictIn = (edition: CatalogueEdition) => resultsOf(design, edition).results.get('radius-holder')?.verdict
    expect(verdictIn(DELIVERED_TEMPLATE)).toBe('not-applicable')
    expect(verdictIn(editionOf([profile]))).toBe('needs-judgment')
  })
})

describe('the share that must survive', () => {
  const wanting = (id: string, leastSurvivalPct: number): Profile => ({ ...EMPTY, id, name: id, leastSurvivalPct })
  const check = (lifeSurvivalPct: number | null, ...profiles: Profile[]) => {
    const design = structuredClone(DESIGNS[1]) as Design
    design.brief.lifeSurvivalPct = lifeSurvivalPct
    return resultsOf(design, editionOf(profiles)).results.get('profile-fields')
  }

  test('is held to the highest that any profile asks for, by its name', () => {
    const profiles = [wanting('own-a', 90), wanting('own-b', 99)]
    expect(check(99, ...profiles)?.verdict).toBe('meets')
    expect(check(95, ...profiles)).toMatchObject({ verdict: 'fails', headline: expect.stringContaining('99') })
    expect(check(null, ...profiles)).toMatchObject({
      verdict: 'not-computed',
      headline: expect.stringContaining('at least 99 % required by profile own-b'),
    })
  })

  test('never gets easier by one more profile', () => {
    fc.assert(
      fc.property(anyProfiles, fc.constantFrom(null, 50, 95, 99.5), (profiles, stated) => {
        const before = check(stated, ...profiles.slice(1))?.verdict ?? 'not-applicable'
        const after = check(stated, ...profiles)?.verdict ?? 'not-applicable'
        expect(RANK.indexOf(after)).toBeGreaterThanOrEqual(RANK.indexOf(before))
      }),
      { seed: 20_261_129, numRuns: 30 },
    )
  })

  test('asks nothing of a part on which no bend moves', () => {
    const design = structuredClone(DESIGNS[1]) as Design
    for (const bend of design.bends) bend.use = 'fold-once'
    design.brief.lifeSurvivalPct = null
    const { results } = resultsOf(design, editionOf([wanting('own-a', 99)]))
    expect(results.get('profile-fields')?.verdict).toBe('not-applicable')
  })
})

describe('fields that a profile requires', () => {
  const requiring = (field: string, where: { field: string; value: string } | null = null): Profile => ({
    ...EMPTY,
    name: 'Flight',
    requiredFields: [{ field, where, reason: 'Because.' }],
  })
  const check = (design: Design, profile: Profile) =>
    [...resultsOf(design, editionOf([profile])).results.values()].find(({ itemId }) => itemId.startsWith('profile-'))

  test('a missing one is not computed, and names field and profile', () => {
    const design = structuredClone(DESIGNS[1]) as Design
    design.brief.surfaceFinish = null
    const result = check(design, requiring('brief.surfaceFinish'))
    expect(result?.verdict).toBe('not-computed')
    expect(result?.outcomes).toMatchObject([
      {
        missing: [{ path: ['brief', 'surfaceFinish'] }],
        summary: 'Not computed: surface finish is missing, required by profile Flight.',
      },
    ])
    expect(
      check(
        { ...design, brief: { ...design.brief, surfaceFinish: 'immersion-tin' } },
        requiring('brief.surfaceFinish'),
      ),
    ).toMatchObject({ verdict: 'meets', basis: 'typed' })
  })

  test('a dash is no text, an assumed value is not confirmed, and an empty list says nothing', () => {
    const design = structuredClone(DESIGNS[1]) as Design
    design.brief.toleranceScheme = ' - '
    expect(check(design, requiring('brief.toleranceScheme'))?.verdict).toBe('not-computed')
    const [bend] = design.bends
    expect(check(design, requiring('bends.*.insideRadiusMm'))?.verdict).toBe('meets')
    design.assumed = [`bends.${bend?.id}.insideRadiusMm`]
    expect(check(design, requiring('bends.*.insideRadiusMm'))?.headline).toContain('assumed and not confirmed')
    design.features.slits = []
    design.features.none = []
    expect(check(design, requiring('features.slits.*.widthMm'))).toMatchObject({
      itemId: 'profile-layout-fields',
      verdict: 'not-computed',
    })
    design.features.none = ['slits']
    expect(check(design, requiring('features.slits.*.widthMm'))?.verdict).toBe('not-applicable')
  })

  test('is narrowed to entries of one kind; one of which nobody knows the kind is named', () => {
    const design = structuredClone(DESIGNS[1]) as Design
    for (const bend of design.bends) {
      bend.use = 'fold-once'
      bend.requiredCycles = null
    }
    const profile = requiring('bends.*.requiredCycles', { field: 'use', value: 'dynamic' })
    expect(check(design, profile)?.verdict).toBe('not-applicable')
    const [bend] = design.bends
    if (bend !== undefined) bend.use = null
    expect(check(design, profile)?.headline).toContain('nobody knows whether the rule is for it')
    if (bend !== undefined) bend.use = 'dynamic'
    expect(check(design, profile)?.verdict).toBe('not-computed')
  })

  test('a chosen profile that is not there any more is named, never passed over', () => {
    const edition = { ...DELIVERED_TEMPLATE, profileIds: ['own-gone'] }
    const result = resultsOf(DESIGNS[1] as Design, edition).results.get('profile-fields')
    expect(result).toMatchObject({ verdict: 'not-computed' })
    expect(result?.headline).toContain('own-gone')
  })
})

describe('own items that compute', () => {
  const own = (check: OwnItem['check']): OwnItem => ({
    id: 'own-radius-1',
    section: 'geometry',
    severity: 'major',
    question: 'Is every hinge as wide as our tool?',
    why: 'The tool has one mandrel.',
    howToCheck: 'Compare the radius.',
    evidence: '',
    ground: 'Procedure 12',
    decidedWhen: 'early',
    answeredBy: ['member'],
    check,
  })
  const radius = { field: 'bends.*.insideRadiusMm', where: null, upperValue: null } as const
  const verdictOf = (design: Design, check: OwnItem['check']) =>
    resultsOf(design, editionOf([], [own(check)])).results.get('own-radius-1')
  const design = structuredClone(DESIGNS[1]) as Design
  for (const bend of design.bends) Object.assign(bend, { insideRadiusMm: 3, radiusToleranceMm: 0.5 })

  test('meet, have a thin margin over the tolerance, and fail by the rule of all items', () => {
    expect(verdictOf(design, { ...radius, sense: 'at-least', value: 2 })).toMatchObject({
      verdict: 'meets',
      basis: 'typed',
    })
    expect(verdictOf(design, { ...radius, sense: 'at-least', value: 2.8 })?.verdict).toBe('thin-margin')
    expect(verdictOf(design, { ...radius, sense: 'at-least', value: 3.1 })?.verdict).toBe('fails')
    expect(verdictOf(design, { ...radius, sense: 'at-most', value: 3.1 })?.verdict).toBe('thin-margin')
    expect(verdictOf(design, { ...radius, sense: 'within', value: 2.5, upperValue: 3.5 })?.verdict).toBe('meets')
    expect(verdictOf(design, { ...radius, sense: 'within', value: 2.6, upperValue: 3.5 })?.verdict).toBe('thin-margin')
    expect(verdictOf(design, { ...radius, sense: 'within', value: 4, upperValue: 5 })?.verdict).toBe('fails')
    const [outcome] = verdictOf(design, { ...radius, sense: 'at-least', value: 3.1 })?.outcomes ?? []
    expect(outcome?.summary).toMatch(
      /^Inside radius of .+: 3 mm \(2\.5 to 3\.5 mm over tolerances\); at least 3\.1 mm\.$/,
    )
    expect(outcome).toMatchObject({ limit: { owner: { kind: 'workspace', name: 'Procedure 12' } } })
  })

  test('are entered with a field that holds a number, a kind that it has, and ends in their order', () => {
    const { id: _id, ...item } = own({ ...radius, sense: 'at-least', value: 2 })
    const issuesOf = (change: object) => {
      const read = newOwnItemSchema.safeParse({ ...item, check: { ...item.check, ...change } })
      return read.success ? [] : read.error.issues.map(({ path }) => path.join('.'))
    }
    expect(issuesOf({})).toEqual([])
    expect(issuesOf({ field: 'bends.*.gone' })).toEqual(['check.field'])
    expect(issuesOf({ field: 'bends.*.note' })).toEqual(['check.field'])
    expect(issuesOf({ where: { field: 'use', value: 'dynamic' } })).toEqual([])
    expect(issuesOf({ where: { field: 'use', value: 'sometimes' } })).toEqual(['check.where'])
    expect(issuesOf({ where: { field: 'colour', value: 'red' } })).toEqual(['check.where'])
    expect(issuesOf({ upperValue: 3 })).toEqual(['check.upperValue'])
    expect(issuesOf({ sense: 'within' })).toEqual(['check.upperValue'])
    expect(issuesOf({ sense: 'within', upperValue: 1 })).toEqual(['check.upperValue'])
    expect(issuesOf({ value: Number.POSITIVE_INFINITY })).toEqual(['check.value'])
    expect(newOwnItemSchema.safeParse({ ...item, check: undefined }).success).toBe(false)
  })

  test('say what is missing, and never meet on nothing', () => {
    const empty = structuredClone(design)
    empty.bends = []
    empty.features.none = []
    expect(verdictOf(empty, { ...radius, sense: 'at-least', value: 2 })?.verdict).toBe('not-computed')
    empty.features.none = ['bends']
    expect(verdictOf(empty, { ...radius, sense: 'at-least', value: 2 })?.verdict).toBe('not-applicable')
    const cycles = {
      field: 'bends.*.requiredCycles',
      where: null,
      upperValue: null,
      sense: 'at-least',
      value: 1,
    } as const
    const unknown = structuredClone(design)
    for (const bend of unknown.bends) bend.requiredCycles = null
    expect(verdictOf(unknown, cycles)?.headline).toContain('required cycles of ')
    expect(verdictOf(unknown, cycles)?.verdict).toBe('not-computed')
    expect(verdictOf(design, { ...radius, field: 'bends.*.gone', sense: 'at-least', value: 2 })?.verdict).toBe(
      'not-computed',
    )
  })

  test('each numeric field of the dictionary can be computed with, in every demo design', () => {
    // One item is evaluated, not the whole catalogue for each field.
    const contexts = DESIGNS.map((each) => buildContext(each, {}))
    for (const { pattern } of listFieldPatterns()) {
      const check = { field: pattern, where: null, sense: 'at-least' as const, value: -1e9, upperValue: null }
      const item = makeCatalogue(editionOf([], [own(check)])).items.find(({ id }) => id === 'own-radius-1')
      if (item === undefined) throw new Error('the workspace’s item is in the catalogue')
      for (const context of contexts) {
        expect(['meets', 'not-computed', 'not-applicable'], pattern).toContain(evaluateItem(item, context).verdict)
      }
    }
  })
})

describe('delivered profiles', () => {
  test.each(DELIVERED_PROFILES)('$name names what there is', (profile) => {
    const content = { ...structuredClone(profile), id: `own-${profile.id}`, name: `${profile.name} copy` }
    const read = profileSchema.safeParse(content)
    expect(read.success ? [] : read.error.issues).toEqual([])
    if (read.success) expect(findTemplateProblems({ ...DELIVERED_TEMPLATE, profiles: [read.data] })).toEqual([])
    expect(profile.items.length + profile.limits.length + profile.requiredFields.length).toBeGreaterThan(3)
  })

  test('each changes results of a demo design, and all of them together ease nothing against any one', () => {
    const all = { ...DELIVERED_TEMPLATE, profileIds: DELIVERED_PROFILES.map(({ id }) => id) }
    for (const { id } of DELIVERED_PROFILES) {
      const one = { ...DELIVERED_TEMPLATE, profileIds: [id] }
      for (const design of DESIGNS) expect(listEased(design, one, all)).toEqual([])
      expect(makeCatalogue(one).items).not.toEqual(makeCatalogue(DELIVERED_TEMPLATE).items)
    }
  })
})

describe('copper to outline under a profile that asks for more', () => {
  test.each(['wearable-on-skin', 'aerospace-space'])('%s holds an edge cut by laser or die to it too', (id) => {
    const profile = DELIVERED_PROFILES.find((each) => each.id === id)
    if (profile === undefined) throw new Error(`no profile ${id}`)
    const asked = profile.limits.find(({ key }) => key === 'copperToOutlineMm')?.value ?? Number.NaN
    for (const outlineCutBy of ['laser', 'die', 'rout', 'steel-rule'] as const) {
      const verdictAt = (copperToOutlineMm: number) => {
        const design = readDemoDesign('skua-rev-b')
        Object.assign(design.features, { outlineCutBy, copperToOutlineMm })
        return resultsOf(design, editionOf([profile])).results.get('copper-to-outline')?.verdict
      }
      expect([outlineCutBy, verdictAt(asked - 0.05), verdictAt(asked)]).toEqual([outlineCutBy, 'fails', 'meets'])
    }
  })
})
