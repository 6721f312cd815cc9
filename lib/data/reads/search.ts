import 'server-only'
import type { RevisionTarget } from '@/lib/addresses'
import { CATALOGUE } from '@/lib/engine/catalogue'
import { groupBy } from '@/lib/engine/numerics'
import type { Prisma } from '../generated/sqlite/client'
import {
  type Actor,
  findRevisionScope,
  mayInProject,
  maySeeThread,
  type PersonRights,
  type RevisionScope,
  SCOPE_COLUMNS,
} from '../records/authorization'
import { isVisibleTo } from '../records/loaded-revision'
import { foldName } from '../records/names'
import { passAnswersOn } from '../records/successors'
import { loadTemplates, type TemplateRecord } from '../records/template-record'
import { isIndexed, type Searched, searchWords } from '../store/word-search'
import { isInView } from './projects'
import { type ReadContext, read } from './read'

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
  /** Kinds of which there may be older ones that were not counted. */
  readonly atLeast: readonly SearchKind[]
}

const MOST_OF_A_KIND = 30
/**
 * Of each kind the newest that hold the words are looked at, and counted; more are told of, not counted: a search costs the same in a workspace of any
 * size. More than are shown, since some may be nothing for this person. Our choice.
 */
const MOST_LOOKED_AT = 50
const EXCERPT_SIGNS = 140

const NOTHING: SearchView = { hits: [], counts: { project: 0, thread: 0, item: 0 }, atLeast: [] }

/**
 * Projects, threads with their comments, and items with their answers, newest first, within what the person may see. Every word must occur, at
 * least the beginning of one; letter case, width and spacing do not matter. The databases' indexes of words tell where to look; what they say is looked at here.
 */
export function searchReviews(actor: Actor, text: string): Promise<SearchView> {
  const words = foldName(text).split(' ').filter(Boolean)
  const indexed = words.filter(isIndexed)
  return read(actor, async ({ tx, rights }) => {
    if (indexed.length === 0) return NOTHING
    const search: Search = { tx, rights, words, indexed }
    const found = [await findProjects(search), await findThreads(search), await findItems(search)]
    return {
      hits: found.flatMap(({ hits }) => hits.slice(0, MOST_OF_A_KIND)),
      counts: {
        project: found[0]?.hits.length ?? 0,
        thread: found[1]?.hits.length ?? 0,
        item: found[2]?.hits.length ?? 0,
      },
      atLeast: SEARCH_KINDS.filter((_, at) => found[at]?.isMore === true),
    }
  })
}

interface Search extends ReadContext {
  readonly words: readonly string[]
  /** Those of them that an index of words knows. */
  readonly indexed: readonly string[]
}

interface Found {
  readonly hits: readonly SearchHit[]
  readonly isMore: boolean
}

function lookUp({ tx, rights }: Search, searched: Searched, words: readonly string[]) {
  return searchWords(tx, searched, { userId: rights.userId, words, most: MOST_LOOKED_AT })
}

/** Beyond these a text of many short words would ask the index for each question of the catalogue. */
const MOST_COMBINATIONS = 6

/**
 * What a reason may have to hold: every word, or those that a question of the catalogue as delivered lacks, where it holds the others. A question that a
 * workspace worded itself is looked at where every word is in the reason, or in the question.
 */
function listMissing(words: readonly string[]): readonly (readonly string[])[] {
  const combinations = new Map<string, readonly string[]>([[words.join(' '), words]])
  for (const { question } of CATALOGUE) {
    const missing = words.filter((word) => !holdsFolded([word], [foldQuestion(question)]))
    if (missing.length > 0) combinations.set(missing.join(' '), missing)
  }
  return [...combinations.values()].slice(0, MOST_COMBINATIONS)
}

async function findProjects(search: Search): Promise<Found> {
  const { tx, rights, words } = search
  const { ids, isMore } = await lookUp(search, 'project', search.indexed)
  const projects = await tx.project.findMany({ where: { id: { in: [...ids] } }, orderBy: { createdAt: 'desc' } })
  const hits = projects
    .filter(({ id, name, description }) => holds(words, name, description) && mayInProject(rights, 'project:view', id))
    .map(
      ({ id, name, description }): SearchHit => ({
        kind: 'project',
        projectId: id,
        projectName: name,
        revisionId: null,
        revisionLabel: null,
        title: name,
        excerpt: shorten(description, words),
        target: { tab: 'overview', id: null },
      }),
    )
  return { hits, isMore }
}

async function findThreads(search: Search): Promise<Found> {
  const { tx, rights, words } = search
  const { ids, isMore } = await lookUp(search, 'thread', search.indexed)
  const threads = await tx.thread.findMany({
    where: { id: { in: [...ids] } },
    select: { ...THREAD_PARTS, revision: { select: SCOPE_COLUMNS } },
    orderBy: [{ openedAt: 'desc' }, { id: 'desc' }],
  })
  const hits = threads.flatMap(({ revision, ...thread }) => {
    const at = findRevision(rights, revision)
    return at === null ? [] : searchThreads({ rights, words, ...at }, [thread])
  })
  return { hits, isMore }
}

/**
 * Items whose question or answer holds the words. A question is asked in every revision: of those the newest are looked at. An answer may hold the words that its
 * question lacks: the newest that do are looked at.
 */
async function findItems(search: Search): Promise<Found> {
  const { tx, rights, words, indexed } = search
  const newest = await tx.revision.findMany({
    where: { project: { memberships: { some: { userId: rights.userId } } } },
    select: { id: true },
    orderBy: [{ createdAt: 'desc' }, { id: 'desc' }],
    take: MOST_LOOKED_AT + 1,
  })
  const answered: Awaited<ReturnType<typeof lookUp>>[] = []
  for (const missing of listMissing(indexed)) answered.push(await lookUp(search, 'answered-revision', missing))
  const ids = [...newest.slice(0, MOST_LOOKED_AT).map(({ id }) => id), ...answered.flatMap((found) => found.ids)]
  const revisions = await tx.revision.findMany({
    where: { id: { in: [...new Set(ids)] } },
    select: { ...SCOPE_COLUMNS, templateVersion: true, profilesJson: true },
    orderBy: [{ createdAt: 'desc' }, { id: 'desc' }],
  })
  const inView = revisions.flatMap((row) => {
    const at = findRevision(rights, row)
    return at === null ? [] : [{ row, ...at }]
  })
  const templates = await loadTemplates(
    tx,
    inView.map(({ row }) => row),
  )
  const asked = [
    ...new Set(
      templates.flatMap(({ items }) => items.filter(({ question }) => holdsFolded(words, [foldQuestion(question)]))),
    ),
  ]
  const answers = groupBy(
    await tx.answer.findMany({
      where: {
        OR: [
          { revisionId: { in: answered.flatMap((found) => found.ids) } },
          // Of the others the answers to what is found by its question, to show them.
          { revisionId: { in: inView.map(({ row }) => row.id) }, itemId: { in: asked.map(({ id }) => id) } },
        ],
      },
      select: ANSWER_PARTS,
    }),
    ({ revisionId }) => revisionId,
  )
  const hits = inView.flatMap(({ row, ...at }, index) => {
    const template = templates[index]
    return template === undefined ? [] : searchItems({ rights, words, ...at }, answers.get(row.id) ?? [], template)
  })
  const isAskedMore = newest.length > MOST_LOOKED_AT && asked.length > 0
  return { hits, isMore: isAskedMore || answered.some(({ isMore }) => isMore) }
}

type ScopeRow = Prisma.RevisionGetPayload<{ select: typeof SCOPE_COLUMNS }>

/** Null for who may not see the revision. */
function findRevision(rights: PersonRights, row: ScopeRow): Pick<RevisionSearch, 'scope' | 'place'> | null {
  if (!isInView(rights, row)) return null
  // A live signature plays no part in what may be seen.
  const scope = findRevisionScope(rights, row, false)
  if (scope === null) return null
  const place = {
    projectId: row.projectId,
    projectName: row.project.name,
    revisionId: row.id,
    revisionLabel: row.label,
  }
  return { scope, place }
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
  const answerTo = new Map(answers.map((answer) => [answer.itemId, answer]))
  return items.flatMap((item): SearchHit[] => {
    const answer = answerTo.get(item.id)
    const reason = answer !== undefined && isVisibleTo(scope.fabricatorCompanyId, answer.companyId) ? answer.reason : ''
    if (!holdsFolded(words, [foldQuestion(item.question), foldName(reason)])) return []
    const target = { tab: 'checklist', id: item.id } as const
    return [{ kind: 'item', ...place, title: item.question, excerpt: shorten(reason, words), target }]
  })
}

function holds(words: readonly string[], ...texts: readonly string[]): boolean {
  return holdsFolded(words, texts.map(foldName))
}

function holdsFolded(words: readonly string[], folded: readonly string[]): boolean {
  return words.every((word) => folded.some((text) => text.includes(word)))
}

/** Questions are the same in every revision, and folded once. */
const foldedQuestions = new Map<string, string>()
const MOST_FOLDED = 2000

function foldQuestion(question: string): string {
  const known = foldedQuestions.get(question)
  if (known !== undefined) return known
  if (foldedQuestions.size >= MOST_FOLDED) foldedQuestions.clear()
  const folded = foldName(question)
  foldedQuestions.set(question, folded)
  return folded
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
