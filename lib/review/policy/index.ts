import type { Action, ActionSubjects, Rules } from './actions'
import { COMPANIES_RULES } from './companies-rules'
import { PROJECTS_RULES } from './projects-rules'
import { REVIEW_RULES } from './review-rules'
import { REVISIONS_RULES } from './revisions-rules'
import type { Rights } from './rights'
import { WORKSPACE_RULES } from './workspace-rules'

export type { Action, ActionSubjects } from './actions'
export * from './rights'
export type * from './subjects'
export { findMemberships } from './who'

/** Who may do what: one table, by what it is done to. The compiler refuses an action without its rule. */
const RULES: Rules = {
  ...WORKSPACE_RULES,
  ...COMPANIES_RULES,
  ...PROJECTS_RULES,
  ...REVISIONS_RULES,
  ...REVIEW_RULES,
}

export const ACTIONS = Object.keys(RULES) as readonly Action[]

/**
 * May this person do this to that? The one question of authorisation, asked by screens and by the data layer alike.
 * Whatever it does not know (an action, a role, a stage, a mismatched subject) is refused: a rank that is missing
 * must never compare as high enough.
 */
export function isAllowed<A extends Action>(rights: Rights, action: A, subject: ActionSubjects[A]): boolean {
  if (!Object.hasOwn(RULES, action) || subject.kind !== RULES[action].subject) return false
  return RULES[action].rule(rights, subject) === true
}

/** The kind of thing that an action is done to. */
export function getSubjectKind<A extends Action>(action: A): ActionSubjects[A]['kind'] {
  return RULES[action].subject
}

/** An action in the words of a mayNot: `change this revision`. */
export function describeAct(action: Action): string {
  return RULES[action].mayNot ?? 'do this'
}
