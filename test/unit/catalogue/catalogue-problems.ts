import { SOURCES } from '@/lib/engine'
import { getLimitDefinition, type ItemDefinition, type ItemVerdict, isLimitKey } from '@/lib/engine/catalogue'
import { readItemProse } from '@/lib/engine/catalogue/prose'
import { type ItemExample, listExamples } from './examples'

const VERDICTS: readonly ItemVerdict[] = [
  'meets',
  'thin-margin',
  'fails',
  'not-computed',
  'not-applicable',
  'needs-judgment',
]

/** Items that always have a verdict where they apply, and why. */
const NEVER_OPEN: Readonly<Record<string, string>> = {
  'layer-names': 'reads the names alone, which every layer has',
  'plan-agreement': 'compares what is both drawn and stated; what is not drawn is asked by the items that need it',
}

/** Everything that makes an item unfit for the catalogue, as `id: reason`. */
export function findCatalogueProblems(
  items: readonly ItemDefinition[],
  examplesOf: (itemId: string) => readonly ItemExample[] = listExamples,
): string[] {
  const seen = new Set<string>()
  return items.flatMap((item) => {
    const problems = findItemProblems(item, examplesOf(item.id))
    if (seen.has(item.id)) problems.push('id is used twice')
    seen.add(item.id)
    return problems.map((problem) => `${item.id}: ${problem}`)
  })
}

function findItemProblems(item: ItemDefinition, examples: readonly ItemExample[]): string[] {
  const problems: string[] = []
  if (!/^[a-z]+(-[a-z]+)*$/.test(item.id)) problems.push('id is not in kebab-case')
  if (!item.question.endsWith('?')) problems.push('question does not end in "?"')
  const prose = readItemProse(item)
  for (const field of ['why', 'howToCheck'] as const) {
    if (!/^[^a-z].*[.]$/.test(prose[field])) problems.push(`${field} is no sentence`)
  }
  if (item.appliesTo.says === '') problems.push('does not say to what it applies')
  if (item.answeredBy.length === 0) problems.push('nobody answers it')
  for (const key of item.limits) {
    if (!isLimitKey(key)) problems.push(`limit "${key}" is not in the dictionary`)
    else if (!Object.hasOwn(SOURCES, getLimitDefinition(key).sourceKey)) problems.push(`limit "${key}" has no source`)
  }
  for (const key of item.sourceKeys) if (!Object.hasOwn(SOURCES, key)) problems.push(`source "${key}" is not recorded`)
  if (item.limits.length === 0 && item.sourceKeys.length === 0) problems.push('nothing is cited')
  for (const verdict of VERDICTS) if (item.titles[verdict] === '') problems.push(`no title for "${verdict}"`)
  return [
    ...problems,
    ...(item.check === null ? findJudgmentProblems(item, examples) : findCheckProblems(item, examples)),
  ]
}

function findJudgmentProblems(item: ItemDefinition, examples: readonly ItemExample[]): string[] {
  const problems: string[] = []
  if (item.judgment === null) problems.push('neither computed nor judged')
  else if (item.judgment.evidence === '') problems.push('asks for no evidence')
  if (!examples.some(({ expect }) => expect === 'needs-judgment')) problems.push('no example')
  return problems
}

function findCheckProblems(item: ItemDefinition, examples: readonly ItemExample[]): string[] {
  const problems: string[] = []
  if (item.titles.meets === item.titles.fails) problems.push('the same title for meeting and failing')
  // Where a person judges what the calculation cannot see, meeting shows as their turn.
  // What somebody recorded as seen waits for a named person, who says where they looked.
  const good: readonly ItemVerdict[] = ['meets', 'needs-judgment']
  if (!examples.some(({ expect }) => good.includes(expect))) problems.push('no example of meeting')
  if (!examples.some(({ expect }) => expect === 'fails')) problems.push('no example of failing')
  // Where a person answers what cannot be computed, an unknown shows as their turn.
  const open: readonly ItemVerdict[] =
    item.judgment?.replacesMissing === true
      ? ['not-computed', 'cannot-tell', 'needs-judgment']
      : ['not-computed', 'cannot-tell']
  const canBeOpen = !Object.hasOwn(NEVER_OPEN, item.id)
  const isOpen = examples.some(({ expect }) => open.includes(expect))
  if (canBeOpen && !isOpen) problems.push('no example of which nobody can tell')
  if (!canBeOpen && isOpen) problems.push('said to be always decided, and an example is not')
  return problems
}
