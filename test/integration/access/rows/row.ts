import type * as data from '@/lib/data'
import type { Actor } from '@/lib/data'
import type { PersonName } from '@/test/factories/people'
import type { AccessScene } from '../scene'

/** What a call came to: carried out, refused with a reason to act on, or not this person's to do or to know of. */
export type Reached = 'ok' | data.ActRefusal['kind']
export type Cell = Reached | 'not-allowed' | 'not-found'

type PlaceInView = 'workspace' | 'project' | 'revision' | 'draft' | 'brackenfold-thread' | 'brackenfold' | 'nothing'

export interface AccessRow {
  /** The function of lib/data, and the case where one function has several. */
  readonly name: keyof typeof data
  readonly of?: string
  readonly run: (actor: Actor, scene: AccessScene) => Promise<unknown>
  /** What those who may do it get: each call is made so that it changes nothing that another cell rests on. */
  readonly reached: Reached
  readonly may: readonly PersonName[]
  /** Those who could do it, and get another answer for want of something that the scene does not give them. */
  readonly otherwise?: Partial<Record<PersonName, Reached>>
  /** Anyone who sees the thing and may not do it is told so; to everybody else it does not exist. */
  readonly seenBy: PlaceInView
}

export const LEADS: readonly PersonName[] = ['lead', 'secondLead']
export const TEAM: readonly PersonName[] = [...LEADS, 'member']
/** Those who review and comment. */
export const REVIEWERS: readonly PersonName[] = [...TEAM, 'quality']
export const READERS: readonly PersonName[] = [...REVIEWERS, 'observer', 'auditor']
/** Those who keep Brackenfold's sheets, and all of its people. */
export const KEEPERS: readonly PersonName[] = ['fabricator', 'sheetWriter']
export const BRACKENFOLD: readonly PersonName[] = [...KEEPERS, 'companyMember']
export const FABRICATORS: readonly PersonName[] = [...BRACKENFOLD, 'rivalFabricator']
export const PROJECT: readonly PersonName[] = [...READERS, ...FABRICATORS]
export const EVERYBODY: readonly PersonName[] = [...PROJECT, 'admin', 'outsider', 'impostor']

export const SEEN_BY: Readonly<Record<PlaceInView, readonly PersonName[]>> = {
  workspace: EVERYBODY,
  project: PROJECT,
  revision: PROJECT,
  draft: READERS,
  'brackenfold-thread': [...READERS, ...BRACKENFOLD],
  brackenfold: [...TEAM, ...BRACKENFOLD, 'admin'],
  nothing: [],
}

/** A version that nobody has seen. */
export const UNSEEN = 999_999
