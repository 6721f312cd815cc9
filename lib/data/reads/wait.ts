import 'server-only'
import type { ReviewSnapshot, RevisionSubject } from '@/lib/review'
import type { PersonRights } from '../records/authorization'
import type { LoadedRevision } from '../records/loaded-revision'
import type { WaitView } from '../views'

/** What decides whether something waits for this person. */
export interface WaitContext {
  readonly loaded: LoadedRevision
  readonly snapshot: ReviewSnapshot
  readonly rights: PersonRights
  readonly subject: RevisionSubject
  readonly fabricatorCompanyId: string | null
}

export type Wait = Pick<WaitView, 'since' | 'reason' | 'nextAct' | 'target'>
