/**
 * What `lib/data` hands out: plain values that can cross to a client component, never database rows. Times are
 * ISO 8601 in UTC.
 */
export type { AnswerState, Blocker, ProjectRole, Stage } from '@/lib/review'
export type * from './views/checklist'
export type * from './views/companies'
export type * from './views/fabrication'
export type * from './views/files'
export type * from './views/outcome'
export type * from './views/people'
export type * from './views/projects'
export type * from './views/proposals'
export type * from './views/release'
export type * from './views/revision'
export type * from './views/threads'
export type * from './views/workspace'
