import { type ItemSubject, isAllowed, type ProjectRole, type Rights } from './policy'
import { isOpenStage, STAGE_LABELS } from './stages'

/** Who answers an item, in words. Lead engineer and members answer alike: the team does. */
export function nameAnswerers(answeredBy: readonly ProjectRole[]): string {
  const isTeam = answeredBy.some((role) => role === 'lead' || role === 'member')
  const isFabricator = answeredBy.includes('fabricator')
  if (isTeam && isFabricator) return 'the team (lead engineer or member) or a fabricator'
  return isFabricator ? 'a fabricator with whom the revision is shared' : 'the team (lead engineer or member)'
}

/** Why this person cannot answer an item now, and who can; empty where they can. */
export function explainNoAnswer(rights: Rights, subject: ItemSubject): string {
  if (isAllowed(rights, 'item:answer', subject)) return ''
  if (!isOpenStage(subject.stage)) {
    return `The revision is ${STAGE_LABELS[subject.stage]}: its answers can no longer change.`
  }
  if (subject.hasLiveSignature && isAllowed(rights, 'item:answer', { ...subject, hasLiveSignature: false })) {
    return subject.answeredBy.some((role) => role === 'lead' || role === 'member')
      ? 'The revision is signed: only a lead engineer can change this answer now, and that voids the signature.'
      : 'The revision is signed: this answer cannot change while the signature stands.'
  }
  return `Answered by ${nameAnswerers(subject.answeredBy)}.`
}
