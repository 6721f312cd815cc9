import type { Rights } from './rights'
import type {
  AccountSubject,
  CommentSubject,
  CompanySubject,
  ItemSubject,
  ProjectSubject,
  ProposalSubject,
  ReviewActionSubject,
  RevisionSubject,
  SignatureSubject,
  ThreadSubject,
  WaiverSubject,
  WorkspaceSubject,
} from './subjects'

/** Every action there is, with the kind of thing that it is done to. */
export interface ActionSubjects {
  'workspace:view': WorkspaceSubject
  'settings:edit': WorkspaceSubject
  'limits:edit-workspace': WorkspaceSubject
  'catalogue:edit': WorkspaceSubject
  'account:manage': WorkspaceSubject
  'backup:make': WorkspaceSubject
  'signing-key:rotate': WorkspaceSubject
  'trail:check': WorkspaceSubject
  'mail:view': WorkspaceSubject
  'project:create': WorkspaceSubject
  'library:view': WorkspaceSubject
  'library:edit': WorkspaceSubject
  'company:confirm': WorkspaceSubject
  'account:edit-own': AccountSubject
  'company:view': CompanySubject
  'company:view-inside': CompanySubject
  'company:view-access': CompanySubject
  'company:view-matrix': CompanySubject
  'company:view-shelf': CompanySubject
  'company:view-rates': CompanySubject
  'company:view-versions': CompanySubject
  'company:admit': CompanySubject
  'company:take-part': CompanySubject
  'company:share': CompanySubject
  'limits:edit-fabricator': CompanySubject
  'sheet:edit': CompanySubject
  'project:view': ProjectSubject
  'project:view-access': ProjectSubject
  'project:edit': ProjectSubject
  'project:invite': ProjectSubject
  'project:remove-person': ProjectSubject
  'policy:edit': ProjectSubject
  'capacity:grant': ProjectSubject
  'revision:create': ProjectSubject
  'revision:copy-elsewhere': RevisionSubject
  'construction:keep': RevisionSubject
  'revision:view': RevisionSubject
  'revision:view-trail': RevisionSubject
  'revision:edit': RevisionSubject
  'revision:share': RevisionSubject
  'revision:comment': RevisionSubject
  'revision:raise-query': RevisionSubject
  'revision:sign': RevisionSubject
  'signature:withdraw': SignatureSubject
  'revision:release': RevisionSubject
  'revision:withdraw': RevisionSubject
  'stage:move': RevisionSubject
  'policy:follow': RevisionSubject
  'review:declare': RevisionSubject
  'declaration:make': RevisionSubject
  'condition:decide': RevisionSubject
  'difference:let-stand': RevisionSubject
  'minutes:view': RevisionSubject
  'meeting:record': RevisionSubject
  'need:state': RevisionSubject
  'need:report': RevisionSubject
  'need:accept': RevisionSubject
  'release:choose-fabricators': RevisionSubject
  'proposal:make': RevisionSubject
  'proposal:decide': RevisionSubject
  'proposal:view': ProposalSubject
  'proposal:withdraw': ProposalSubject
  'package:download': RevisionSubject
  'item:answer': ItemSubject
  'waiver:propose': RevisionSubject
  'waiver:approve': WaiverSubject
  'waiver:decline': WaiverSubject
  'thread:view': ThreadSubject
  'thread:reply': ThreadSubject
  'thread:answer': ThreadSubject
  'thread:assign': ThreadSubject
  'thread:close': ThreadSubject
  'comment:edit': CommentSubject
  'review-action:take-on': RevisionSubject
  'review-action:view': ReviewActionSubject
  'review-action:change': ReviewActionSubject
  'review-action:report': ReviewActionSubject
  'review-action:close': ReviewActionSubject
  'review-action:drop': ReviewActionSubject
  'review-action:reopen': ReviewActionSubject
}

export type Action = keyof ActionSubjects

export type Rule<S> = (rights: Rights, subject: S) => boolean

/** One entry per action, and the compiler refuses a missing one: what it is done to, who may, and how a refusal says it. */
export type Rules = {
  readonly [A in Action]: {
    readonly subject: ActionSubjects[A]['kind']
    /** As a refusal says it after `You may not`. Null where nobody is told: what they may not do is not there for them. */
    readonly mayNot: string | null
    readonly rule: Rule<ActionSubjects[A]>
  }
}
