import { hashJson } from './canonical'
import { CONDITION_WORDS, DECLARATION_VERDICTS, DECLARATION_WORDS, describeCondition } from './declared'
import type { SignedCondition, SignedContent, SignedDeclaration } from './signed-content'
import { nameThreadKind, type SignedThread } from './snapshot'
import type { VoidingChange } from './voiding-changes'

type Declared = Pick<SignedContent, 'declarations'>
type Threads = Pick<SignedContent, 'threads'>

/** What fabricators said or the lead decided between two signed contents, a sentence each. */
export function describeDeclaredChanges(before: Declared, after: Declared): VoidingChange[] {
  if (before.declarations === undefined || after.declarations === undefined) {
    return before.declarations === after.declarations
      ? []
      : [{ sentence: 'signatures now cover the declarations of fabricators, their conditions, and open threads' }]
  }
  const old = new Map(before.declarations.map((entry) => [entry.companyId, entry]))
  return after.declarations.flatMap((entry) => {
    const was = old.get(entry.companyId)
    if (was !== undefined && hashJson(was) === hashJson(entry)) return []
    return describeCompany(was, entry).map((sentence) => ({ sentence, about: entry.companyId }))
  })
}

function describeCompany(was: SignedDeclaration | undefined, now: SignedDeclaration): string[] {
  const name = now.companyName
  if (was?.takenOffBecause !== now.takenOffBecause && (was !== undefined || now.takenOffBecause !== '')) {
    return [
      now.takenOffBecause === ''
        ? `${name} put back on this release`
        : `${name} taken off this release: ${now.takenOffBecause}`,
    ]
  }
  if (was === undefined || was.madeAt !== now.madeAt) {
    if (now.verdict === null) return [`${name} now sees the revision`]
    const conditions = now.conditions.map(describeCondition)
    const list = conditions.length === 0 ? '' : `: ${conditions.join('; ')}`
    return [`declaration of ${name}: ${nameVerdict(was?.verdict ?? null)} to ${nameVerdict(now.verdict)}${list}`]
  }
  const moved = now.conditions.flatMap((condition, at) => describeConditionMove(name, was.conditions[at], condition))
  if (moved.length > 0) return moved
  // That a word is on earlier content follows from the change of the content, which is named already.
  if (was.standing === 'outdated' || now.standing === 'outdated') return []
  return [`standing of ${name}: ${say(was.standing)} to ${say(now.standing)}`]
}

function describeConditionMove(name: string, was: SignedCondition | undefined, now: SignedCondition): string[] {
  if (was === undefined || hashJson(was) === hashJson(now)) return []
  return [
    `condition of ${name}, ${CONDITION_WORDS[was.state]} to ${CONDITION_WORDS[now.state]}: ${describeCondition(now)}`,
  ]
}

const say = (word: string) => word.replaceAll('-', ' ')

function nameVerdict(verdict: string | null): string {
  if (verdict === null) return 'none'
  const known = DECLARATION_VERDICTS.find((candidate) => candidate === verdict)
  return known === undefined ? verdict : DECLARATION_WORDS[known]
}

/** Threads that were opened, settled or went on between two signed contents. */
export function describeThreadChanges(before: Threads, after: Threads): VoidingChange[] {
  if (before.threads === undefined || after.threads === undefined) return []
  const old = new Map(before.threads.map((thread) => [thread.id, thread]))
  const changes: VoidingChange[] = []
  const add = ({ kind, title, companyName, audienceCompanyId }: SignedThread, happened: (named: string) => string) =>
    changes.push({
      sentence: happened(`${nameThreadKind(kind)} "${title}" of ${companyName}`),
      about: audienceCompanyId,
    })
  for (const thread of after.threads) {
    const was = old.get(thread.id)
    old.delete(thread.id)
    if (was === undefined) add(thread, (named) => `${named} opened`)
    else if (was.state !== thread.state) add(thread, (named) => `${named} ${was.state} to ${thread.state}`)
    else if (was.textHash !== thread.textHash) add(thread, (named) => `new text in ${named}`)
  }
  for (const thread of old.values()) add(thread, (named) => `${named} closed`)
  return changes
}

/** What is to be done before or after the release, as it was taken on, changed or dropped. */
export function describeActionChanges(
  before: Pick<SignedContent, 'actions'>,
  after: Pick<SignedContent, 'actions'>,
): string[] {
  const old = new Map((before.actions ?? []).map((action) => [action.number, action]))
  const changes: string[] = []
  for (const action of after.actions ?? []) {
    const was = old.get(action.number)
    old.delete(action.number)
    if (was === undefined) changes.push(`action ${action.number} taken on: ${action.text}`)
    else if (hashJson(was) !== hashJson(action)) changes.push(`action ${action.number} changed: ${action.text}`)
  }
  for (const { number, text } of old.values()) changes.push(`action ${number} dropped: ${text}`)
  return changes
}
