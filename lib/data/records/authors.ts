import 'server-only'
import { AUTHORED_PARTS, type Author } from '@/lib/review'
import type { RevisionRecord } from './revision-record'
import { getPersonName } from './revision-record'

type Part = Author['parts'][number]

const isAuthored = (part: string): part is Part => (AUTHORED_PARTS as readonly string[]).includes(part)

/**
 * Who made the content, from who changed what: the person who began the revision other than by a copy, every change of design or
 * artwork by the company's own people, and those of them who proposed what was accepted. A copy brings the authors of what was
 * copied along as changes of its first version (`carryAuthorsOver`), since pressing the button makes nothing.
 *
 * Not from what the viewer may see: everybody is shown one drawing, and a fabricator's people are no authors.
 */
export function listAuthors(record: RevisionRecord): Author[] {
  const parts = new Map<string, Set<Part>>()
  const versions = new Map<string, number[]>()
  const add = (userId: string, part: Part) => parts.set(userId, (parts.get(userId) ?? new Set()).add(part))
  if (record.basedOnId === null) add(record.createdById, 'design')
  for (const { userId, companyId, part, version } of record.edits) {
    if (companyId !== null || !isAuthored(part)) continue
    add(userId, part)
    if (version > CARRIED_VERSION) versions.set(userId, [...(versions.get(userId) ?? []), version])
  }
  for (const { userId, version } of listAcceptedProposers(record)) {
    add(userId, 'design')
    versions.set(userId, [...(versions.get(userId) ?? []), version])
  }
  return [...parts].map(([userId, own]) => {
    const made = versions.get(userId) ?? []
    return {
      userId,
      name: getPersonName(record, userId),
      parts: AUTHORED_PARTS.filter((part) => own.has(part)),
      changes:
        made.length === 0
          ? null
          : { count: made.length, firstVersion: Math.min(...made), lastVersion: Math.max(...made) },
    }
  })
}

/** Those who made the design, artwork aside. */
export function listDesignAuthorIds(record: RevisionRecord): readonly string[] {
  return listAuthors(record)
    .filter(({ parts }) => parts.includes('design'))
    .map(({ userId }) => userId)
}

/** The version that a new revision has: its edits, if any, came with the copy. */
export const CARRIED_VERSION = 1

/** People of the company whose proposals were taken into the design; those of fabricators are theirs, and no authorship here. */
function listAcceptedProposers(record: RevisionRecord) {
  return record.proposals.flatMap(({ state, proposedById, proposedByCompanyId, madeVersion }) => {
    const isOwn = record.companies.get(proposedByCompanyId)?.kind !== 'fabricator'
    return state === 'accepted' && isOwn ? [{ userId: proposedById, version: madeVersion ?? CARRIED_VERSION + 1 }] : []
  })
}
