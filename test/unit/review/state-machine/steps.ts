import type { ActionDue, ConditionState, DeclarationVerdict, Move, ThreadKind, ThreadState } from '@/lib/review'
import {
  ADMIN,
  AUDITOR,
  BRACKENFOLD,
  FABRICATOR,
  LEAD,
  MEMBER,
  OBSERVER,
  OSTREL,
  OTHER_FABRICATOR,
  OUTSIDER,
  QUALITY,
  SECOND_LEAD,
} from '../snapshot-factory'

/** What a step of a drawn review is, and who takes part. */
export const ACTORS = {
  lead: LEAD,
  second: SECOND_LEAD,
  member: MEMBER,
  quality: QUALITY,
  auditor: AUDITOR,
  fabricator: FABRICATOR,
  observer: OBSERVER,
  admin: ADMIN,
  outsider: OUTSIDER,
}
export type ActorName = keyof typeof ACTORS

export const FABRICATORS = {
  brackenfold: { companyId: BRACKENFOLD, companyName: 'Brackenfold Circuits', rights: FABRICATOR },
  ostrel: { companyId: OSTREL, companyName: 'Ostrel Flexible', rights: OTHER_FABRICATOR },
}
export type CompanyName = keyof typeof FABRICATORS

export type Step =
  | { kind: 'move'; move: Move; actor: ActorName; reason: string }
  | { kind: 'sign'; actor: ActorName }
  | { kind: 'edit'; actor: ActorName; radiusMm: number }
  | { kind: 'evaluate' }
  | { kind: 'answer'; actor: ActorName; state: 'meets' | 'concern' | 'open'; reason: string }
  | { kind: 'declare'; company: CompanyName; verdict: DeclarationVerdict }
  | { kind: 'decide'; actor: ActorName; state: ConditionState }
  | { kind: 'take-off'; actor: ActorName; company: CompanyName }
  | { kind: 'thread'; thread: ThreadKind; state: ThreadState }
  | { kind: 'review'; actor: ActorName }
  | { kind: 'take-on'; actor: ActorName; owner: ActorName; due: ActionDue }
  | { kind: 'settle-action'; actor: ActorName; to: 'reported' | 'closed' | 'dropped' }
  | { kind: 'take-back'; actor: ActorName }
  | { kind: 'withdraw-review' }
  | { kind: 'let-stand'; actor: ActorName }
  | { kind: 'waive'; proposer: ActorName; approver: ActorName }
