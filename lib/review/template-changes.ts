import {
  type CatalogueEdition,
  DECIDED_WHEN_WORDS,
  getDefaultLimit,
  type ItemDefinition,
  isLimitKey,
  LIMITS,
  layProfileLimits,
  listProfiles,
  makeCatalogue,
  type Profile,
} from '@/lib/engine/catalogue'
import { flexTestRowKey } from '@/lib/engine/flex-tests'
import { inSentence } from '@/lib/engine/units'
import { compareRows, describeRowChanges } from '@/lib/fabrication'

export interface TemplateChange {
  readonly kind:
    | 'item-added'
    | 'item-removed'
    | 'wording'
    | 'roles'
    | 'severity'
    | 'stage'
    | 'limit'
    | 'profile'
    | 'flex-tests'
  /** Null where it is about a limit, a profile or flex tests. */
  readonly itemId: string | null
  readonly sentence: string
  /** What was answered before was answered to another question. */
  readonly reopensAnswer: boolean
}

/** What differs between two versions of a workspace's catalogue, and between the profiles laid over it, as a reviewer would notice it. */
export function compareTemplates(before: CatalogueEdition, after: CatalogueEdition): TemplateChange[] {
  const [was, is] = [makeCatalogue(before), makeCatalogue(after)]
  const old = new Map(was.items.map((item) => [item.id, item]))
  const reasons = new Map(is.switchedOff.map(({ itemId, reason }) => [itemId, reason]))
  const changes: TemplateChange[] = []
  for (const item of is.items) {
    const previous = old.get(item.id)
    old.delete(item.id)
    if (previous === undefined) {
      changes.push({
        kind: 'item-added',
        itemId: item.id,
        sentence: `item added: ${item.question}`,
        reopensAnswer: false,
      })
    } else if (previous !== item) changes.push(...compareItems(previous, item))
  }
  for (const item of old.values()) {
    const reason = reasons.get(item.id)
    const sentence = `${reason === undefined ? 'item removed' : 'item switched off'}: ${item.question}${reason === undefined ? '' : ` (${reason})`}`
    changes.push({ kind: 'item-removed', itemId: item.id, sentence, reopensAnswer: false })
  }
  return [
    ...compareProfiles(before, after),
    ...changes,
    ...compareLimits(before, after),
    ...compareFlexTests(before, after),
  ]
}

function compareFlexTests({ flexTests: before = [] }: CatalogueEdition, { flexTests: after = [] }: CatalogueEdition) {
  const changes = describeRowChanges(compareRows(before, after, flexTestRowKey))
  return changes === null
    ? []
    : [{ kind: 'flex-tests' as const, itemId: null, sentence: `flex tests, ${changes}`, reopensAnswer: false }]
}

function compareItems(before: ItemDefinition, after: ItemDefinition): TemplateChange[] {
  const changes: TemplateChange[] = []
  const add = (kind: TemplateChange['kind'], sentence: string, reopensAnswer = false) =>
    changes.push({ kind, itemId: after.id, sentence, reopensAnswer })
  if (before.question !== after.question) {
    add('wording', `item asks "${after.question}" in place of "${before.question}"`, true)
  }
  const reworded = [
    ...(before.prose?.why === after.prose?.why ? [] : ['why it matters']),
    ...(before.prose?.howToCheck === after.prose?.howToCheck ? [] : ['how to check']),
    ...(before.judgment?.evidence === after.judgment?.evidence ? [] : ['the evidence asked for']),
  ]
  if (reworded.length > 0) {
    // Why something matters is no part of what was answered; how it is checked and on what evidence is.
    const reopens =
      before.prose?.howToCheck !== after.prose?.howToCheck || before.judgment?.evidence !== after.judgment?.evidence
    add('wording', `text of ${reworded.join(' and ')}: ${after.question}`, reopens)
  }
  if (before.severity !== after.severity) {
    add('severity', `severity ${before.severity} to ${after.severity}: ${after.question}`)
  }
  if (before.decidedWhen !== after.decidedWhen) {
    add(
      'stage',
      `decided in ${DECIDED_WHEN_WORDS[after.decidedWhen]}, before in ${DECIDED_WHEN_WORDS[before.decidedWhen]}: ${after.question}`,
    )
  }
  if (before.answeredBy.join() !== after.answeredBy.join()) {
    add(
      'roles',
      `answered by ${after.answeredBy.join(', ')}, before by ${before.answeredBy.join(', ')}: ${after.question}`,
    )
  }
  return changes
}

function compareLimits(before: CatalogueEdition, after: CatalogueEdition): TemplateChange[] {
  const [old, now] = [readLimits(before), readLimits(after)]
  return [...new Set([...old.keys(), ...now.keys()])].filter(isLimitKey).flatMap((key): TemplateChange[] => {
    const { label, unit } = LIMITS[key]
    const usual = getDefaultLimit(key).value
    const [a, b] = [old.get(key), now.get(key)]
    if (a?.value === b?.value && a?.whose === b?.whose) return []
    const write = (limit: SetLimit | undefined) =>
      `${inSentence(limit?.value ?? usual, unit)}${limit === undefined ? ' (default)' : limit.whose}`
    return [
      { kind: 'limit', itemId: null, sentence: `limit ${label}: ${write(a)} to ${write(b)}`, reopensAnswer: false },
    ]
  })
}

interface SetLimit {
  readonly value: number
  /** Of a profile, its name; else empty. */
  readonly whose: string
}

/** Limits that somebody set, with those of the profiles over them. */
function readLimits(edition: CatalogueEdition): Map<string, SetLimit> {
  const own = edition.limits.map(({ key, value }) => ({ key, value, owner: { kind: 'workspace', name: '' } }) as const)
  return new Map(
    layProfileLimits(own, makeCatalogue(edition).profiles).map(({ key, value, owner }) => [
      key,
      { value, whose: owner.kind === 'profile' ? ` (profile ${owner.name})` : '' },
    ]),
  )
}

/** Which profiles are followed, and what became of those that the workspace keeps. */
function compareProfiles(before: CatalogueEdition, after: CatalogueEdition): TemplateChange[] {
  const say = (sentence: string): TemplateChange => ({ kind: 'profile', itemId: null, sentence, reopensAnswer: false })
  const [old, now] = [before, after].map((edition) => new Map(listProfiles(edition).map((each) => [each.id, each])))
  const [was, is] = [before, after].map(({ profileIds = [] }) => new Set(profileIds))
  const name = (id: string) => (now?.get(id) ?? old?.get(id))?.name ?? id
  const changes = [
    ...[...(is ?? [])].filter((id) => was?.has(id) !== true).map((id) => say(`profile followed: ${name(id)}`)),
    ...[...(was ?? [])]
      .filter((id) => is?.has(id) !== true)
      .map((id) => say(`profile no longer followed: ${name(id)}`)),
  ]
  for (const [id, profile] of now ?? []) {
    const previous = old?.get(id)
    if (previous === undefined) changes.push(say(`profile added: ${profile.name}`))
    else if (JSON.stringify(previous) !== JSON.stringify(profile))
      changes.push(say(describeProfileChange(previous, profile)))
  }
  for (const [id, profile] of old ?? [])
    if (now?.has(id) !== true) changes.push(say(`profile removed: ${profile.name}`))
  return changes
}

function describeProfileChange(before: Profile, after: Profile): string {
  const renamed = before.name === after.name ? '' : ` (was ${before.name})`
  const parts = [
    ...(JSON.stringify(before.items) === JSON.stringify(after.items) ? [] : ['items']),
    ...(JSON.stringify(before.limits) === JSON.stringify(after.limits) ? [] : ['limits']),
    ...(JSON.stringify(before.requiredFields) === JSON.stringify(after.requiredFields) ? [] : ['required fields']),
    ...((before.requiredSignatures ?? null) === (after.requiredSignatures ?? null) ? [] : ['people who must sign']),
    ...((before.leastSurvivalPct ?? null) === (after.leastSurvivalPct ?? null) ? [] : ['share that must survive']),
    ...(before.purpose === after.purpose ? [] : ['purpose']),
  ]
  return `profile changed: ${after.name}${renamed}${parts.length === 0 ? '' : `, ${parts.join(' and ')}`}`
}
