/**
 * What `lib/data` returns: plain values that can cross to a client component, never database rows. Times are
 * ISO 8601 in UTC.
 */

export type { AnswerState, Blocker, ProjectRole, Stage } from '@/lib/review'
export type { AccessEventView, AccessKind, AccessLogView } from './access'
export type * from './act-result'
export type * from './artwork'
export type * from './checklist'
export type * from './companies'
export type * from './fabrication'
export type * from './files'
export type * from './issues'
export type * from './library'
export type * from './meetings'
export type * from './people'
export type * from './projects'
export type * from './proposals'
export type * from './release'
export type * from './review-actions'
export type * from './revision'
export type * from './sign-off'
export type * from './threads'
export type * from './workspace'
