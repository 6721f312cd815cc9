import {
  type CatalogueTemplate,
  DECIDED_WHEN_WORDS,
  getDefaultLimit,
  type ItemDefinition,
  isLimitKey,
  LIMITS,
  makeCatalogue,
} from '@/lib/engine/catalogue'
import { inSentence } from '@/lib/engine/units'

export interface TemplateChange {
  readonly kind: 'item-added' | 'item-removed' | 'wording' | 'roles' | 'severity' | 'stage' | 'limit'
  /** Null where it is about a limit. */
  readonly itemId: string | null
  readonly sentence: string
  /** What was answered before was answered to another question. */
  readonly reopensAnswer: boolean
}

/** What differs between two versions of a workspace's catalogue, as a reviewer would notice it. */
export function compareTemplates(before: CatalogueTemplate, after: CatalogueTemplate): TemplateChange[] {
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
  return [...changes, ...compareLimits(before, after)]
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

function compareLimits(before: CatalogueTemplate, after: CatalogueTemplate): TemplateChange[] {
  const old = new Map(before.limits.map(({ key, value }) => [key, value]))
  const now = new Map(after.limits.map(({ key, value }) => [key, value]))
  return [...new Set([...old.keys(), ...now.keys()])].filter(isLimitKey).flatMap((key): TemplateChange[] => {
    const { label, unit } = LIMITS[key]
    const usual = getDefaultLimit(key).value
    const [a, b] = [old.get(key) ?? usual, now.get(key) ?? usual]
    if (a === b && old.has(key) === now.has(key)) return []
    const write = (value: number, isOwn: boolean) => `${inSentence(value, unit)}${isOwn ? '' : ' (default)'}`
    const sentence = `limit ${label}: ${write(a, old.has(key))} to ${write(b, now.has(key))}`
    return [{ kind: 'limit', itemId: null, sentence, reopensAnswer: false }]
  })
}
