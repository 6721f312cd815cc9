import 'server-only'
import type { RevisionTarget } from '@/lib/addresses'
import { groupBy } from '@/lib/engine/numerics'
import type { Prisma } from '../generated/sqlite/client'
import {
  type Actor,
  findRevisionScope,
  maySeeThread,
  type PersonRights,
  type RevisionScope,
  SCOPE_COLUMNS,
} from '../records/authorization'
import { isVisibleTo } from '../records/loaded-revision'
import { foldName } from '../records/names'
import { passAnswersOn } from '../records/successors'
import { loadTemplates, type TemplateRecord } from '../records/template-record'
import { isInView } from './projects'
import { read } from './read'

export const SEARCH_KINDS = ['project', 'thread', 'item'] as const
export type SearchKind = (typeof SEARCH_KINDS)[number]

/** Something that holds every word that was looked for. */
export interface SearchHit {
  readonly kind: SearchKind
  readonly projectId: string
  readonly projectName: string
  /** Null for a project as a whole. */
  readonly revisionId: string | null
  readonly revisionLabel: string | null
  readonly title: string
  /** The text around the first word, where it is not the title. */
  readonly excerpt: string
  readonly target: RevisionTarget
}

export interface SearchView {
  readonly hits: readonly SearchHit[]
  /** How many there are of each kind, shown or not. */
  readonly counts: Readonly<Record<SearchKind, number>>
}

const MOST_OF_A_KIND = 30
const EXCERPT_SIGNS = 140

/**
 * Projects, threads with their comments, and items with their answers, newest revision first, within what the person may
 * see. Letter case, width and spacing do not matter; every word must occur.
 */
export function searchReviews(actor: Actor, text: string): Promise<SearchView> {
  const words = foldName(text).split(' ').filter(Boolean)
  return read(actor, async ({ tx, rights }) => {
    if (words.length === 0) return { hits: [], counts: { project: 0, thread: 0, item: 0 } }
    const ofThem = { memberships: { some: { userId: rights.userId } } }
    const projects = await tx.project.findMany({ where: ofThem, orderBy: { createdAt: 'desc' } })
    const hits: SearchHit[] = projects
      .filter(({ name, description }) => holds(words, name, description))
      .map(({ id, name, description }) => ({
        kind: 'project',
        projectId: id,
        projectName: name,
        revisionId: null,
        revisionLabel: null,
        title: name,
        excerpt: shorten(description, words),
        target: { tab: 'overview', id: null },
      }))
    const revisions = await tx.revision.findMany({
      where: { project: ofThem },
      select: {
        ...SCOPE_COLUMNS,
        templateVersion: true,
        profilesJson: true,
      },
      orderBy: [{ createdAt: 'desc' }, { id: 'asc' }],
    })
    const inView = revisions.filter((candidate) => isInView(rights, candidate))
    const templates = await loadTemplates(tx, inView)
    // One statement reads the threads of all revisions, and one the answers.
    const threads = groupBy(
      await tx.thread.findMany({
        where: { revision: { project: ofThem } },
        select: THREAD_PARTS,
        orderBy: [{ openedAt: 'desc' }, { id: 'asc' }],
      }),
      ({ revisionId }) => revisionId,
    )
    const answers = groupBy(
      await tx.answer.findMany({ where: { revision: { project: ofThem } }, select: ANSWER_PARTS }),
      ({ revisionId }) => revisionId,
    )
    for (const [at, row] of inView.entries()) {
      const template = templates[at]
      // A live signature plays no part in what may be seen.
      const scope = findRevisionScope(rights, row, false)
      if (template === undefined || scope === null) continue
      const place = {
        projectId: row.projectId,
        projectName: row.project.name,
        revisionId: row.id,
        revisionLabel: row.label,
      }
      const search: RevisionSearch = { rights, scope, words, place }
      hits.push(
        ...searchThreads(search, threads.get(row.id) ?? []),
        ...searchItems(search, answers.get(row.id) ?? [], template),
      )
    }
    return limit(hits)
  })
}

const THREAD_PARTS = {
  id: true,
  revisionId: true,
  title: true,
  anchorLabel: true,
  audienceCompanyId: true,
  openedById: true,
  openedByCompanyId: true,
  comments: { select: { text: true }, orderBy: { ordinal: 'asc' } },
} as const satisfies Prisma.ThreadSelect

const ANSWER_PARTS = {
  revisionId: true,
  itemId: true,
  state: true,
  reason: true,
  answeredAt: true,
  version: true,
  companyId: true,
} as const satisfies Prisma.AnswerSelect

type ThreadRow = Prisma.ThreadGetPayload<{ select: typeof THREAD_PARTS }>
type AnswerRow = Prisma.AnswerGetPayload<{ select: typeof ANSWER_PARTS }>

interface RevisionSearch {
  readonly rights: PersonRights
  readonly scope: RevisionScope
  readonly words: readonly string[]
  readonly place: Pick<SearchHit, 'projectId' | 'projectName' | 'revisionId' | 'revisionLabel'>
}

function searchThreads({ rights, scope, words, place }: RevisionSearch, threads: readonly ThreadRow[]): SearchHit[] {
  return threads
    .filter((thread) => maySeeThread(rights, scope.subject, thread))
    .flatMap((thread): SearchHit[] => {
      const texts = [thread.title, thread.anchorLabel, ...thread.comments.map(({ text }) => text)]
      if (!holds(words, ...texts)) return []
      const said = thread.comments.find(({ text }) => words.some((word) => foldName(text).includes(word)))
      const excerpt = shorten(said?.text ?? '', words)
      return [{ kind: 'thread', ...place, title: thread.title, excerpt, target: { tab: 'threads', id: thread.id } }]
    })
}

function searchItems(
  { scope, words, place }: RevisionSearch,
  rows: readonly AnswerRow[],
  { items }: TemplateRecord,
): SearchHit[] {
  const answers = passAnswersOn(rows)
  return items.flatMap((item): SearchHit[] => {
    const answer = answers.find(({ itemId }) => itemId === item.id)
    const reason = answer !== undefined && isVisibleTo(scope.fabricatorCompanyId, answer.companyId) ? answer.reason : ''
    if (!holds(words, item.question, reason)) return []
    const target = { tab: 'checklist', id: item.id } as const
    return [{ kind: 'item', ...place, title: item.question, excerpt: shorten(reason, words), target }]
  })
}

function holds(words: readonly string[], ...texts: readonly string[]): boolean {
  const folded = foldName(texts.join('\n'))
  return words.every((word) => folded.includes(word))
}

/** About one line, beginning a little before the first word that is found. */
function shorten(text: string, words: readonly string[]): string {
  const line = text.replaceAll(/\s+/g, ' ').trim()
  if (line.length <= EXCERPT_SIGNS) return line
  const lower = line.toLowerCase()
  const first = Math.min(...words.map((word) => lower.indexOf(word)).filter((index) => index >= 0))
  const from = Number.isFinite(first) ? Math.max(0, Math.min(first - 30, line.length - EXCERPT_SIGNS)) : 0
  const part = line.slice(from, from + EXCERPT_SIGNS)
  return `${from > 0 ? '…' : ''}${part}${from + EXCERPT_SIGNS < line.length ? '…' : ''}`
}

function limit(hits: readonly SearchHit[]): SearchView {
  const of = (kind: SearchKind) => hits.filter((hit) => hit.kind === kind)
  return {
    hits: SEARCH_KINDS.flatMap((kind) => of(kind).slice(0, MOST_OF_A_KIND)),
    counts: { project: of('project').length, thread: of('thread').length, item: of('item').length },
  }
}
