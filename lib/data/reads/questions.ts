import 'server-only'
import { now } from '@/lib/config'
import {
  asksSomething,
  countRounds,
  isLate,
  isOpenStage,
  type Question,
  type QuestionFigures,
  type QuestionFilter,
  summariseQuestions,
  THREAD_KINDS,
  THREAD_STATES,
} from '@/lib/review'
import type { Prisma } from '../generated/sqlite/client'
import { type Actor, findRevisionScope, maySeeThread, type PersonRights, SCOPE_COLUMNS } from '../records/authorization'
import { readWord } from '../records/stored-words'
import type { TransactionClient } from '../store/client'
import type { ThreadView } from '../views'
import { loadNames } from './fabrication-sheets'
import { type Paged, takePage } from './paged'
import { read } from './read'

/** A question that is not closed, with its place. */
export interface AskedQuestion {
  readonly threadId: string
  readonly projectId: string
  readonly projectName: string
  readonly revisionId: string
  readonly revisionLabel: string
  /** The fabricator that takes part; empty for the team alone. */
  readonly fabricatorName: string
  readonly kind: ThreadView['kind']
  readonly title: string
  readonly anchorLabel: string
  readonly state: 'open' | 'answered'
  readonly openedAt: string
  readonly openDays: number
  readonly rounds: number
  /** Null where nobody is named. */
  readonly ownerId: string | null
  /** Empty where nobody is named. */
  readonly ownerName: string
  readonly isOwn: boolean
  readonly dueOn: string | null
  readonly isOverdue: boolean
}

/** Questions of one project with one fabricator, or within the team. */
interface QuestionGroup {
  readonly projectId: string
  readonly projectName: string
  readonly fabricatorName: string
  readonly figures: QuestionFigures
}

/** Which of the questions that are not closed a list holds. */
const ASKED_KEPT: Readonly<Record<QuestionFilter, (question: AskedQuestion) => boolean>> = {
  all: () => true,
  overdue: ({ isOverdue }) => isOverdue,
  own: ({ isOwn, state }) => isOwn && state === 'open',
  'without-owner': ({ ownerId, state }) => ownerId === null && state === 'open',
  answered: ({ state }) => state === 'answered',
}

export interface QuestionsView {
  readonly all: QuestionFigures
  /** By the name of the project, then of the fabricator. */
  readonly groups: Paged<QuestionGroup>
  /** How many each filter keeps, on all pages. */
  readonly counts: Readonly<Record<QuestionFilter, number>>
  /** Overdue ones first, then by due day, then the oldest. */
  readonly asked: Paged<AskedQuestion>
}

const DAY_MS = 86_400_000

/**
 * Questions of all projects that the person may see: what is open, and what it took until the others were agreed. Figures and counts
 * are of all of them; those that are not closed, and figures by project, come one page at a time.
 *
 * @param filter  which of those that are not closed
 * @param page  of questions, from 1; after the last one there are no rows
 * @param groupPage  of figures by project and fabricator, likewise
 */
export function listQuestions(
  actor: Actor,
  filter: QuestionFilter = 'all',
  page = 1,
  groupPage = 1,
): Promise<QuestionsView> {
  return read(actor, async ({ tx, rights }) => {
    const rows = await findThreads(tx, rights.userId)
    const at = now().toISOString()
    const found = rows.flatMap((row) => toFound(rights, row) ?? [])
    const asked = found.flatMap((one) => toAsked(one, rights, at) ?? []).sort(byUrgency)
    const kept = asked.filter(ASKED_KEPT[filter])
    const shown = takePage(kept, page)
    const names = await loadNames(
      tx,
      shown.flatMap(({ ownerId }) => ownerId ?? []),
    )
    const groups = new Map<string, { readonly first: Found; readonly questions: Question[] }>()
    for (const one of found) {
      const key = JSON.stringify([one.place.projectName, one.place.projectId, one.place.fabricatorName])
      const group = groups.get(key)
      if (group === undefined) groups.set(key, { first: one, questions: [one.question] })
      else group.questions.push(one.question)
    }
    return {
      all: summariseQuestions(
        found.map(({ question }) => question),
        at,
      ),
      groups: {
        rows: takePage(
          [...groups.entries()].sort(([one], [other]) => (one < other ? -1 : 1)),
          groupPage,
        ).map(([, { first, questions }]) => ({
          projectId: first.place.projectId,
          projectName: first.place.projectName,
          fabricatorName: first.place.fabricatorName,
          figures: summariseQuestions(questions, at),
        })),
        total: groups.size,
      },
      counts: {
        all: asked.length,
        overdue: asked.filter(ASKED_KEPT.overdue).length,
        own: asked.filter(ASKED_KEPT.own).length,
        'without-owner': asked.filter(ASKED_KEPT['without-owner']).length,
        answered: asked.filter(ASKED_KEPT.answered).length,
      },
      asked: {
        rows: shown.map((one) => ({ ...one, ownerName: one.ownerId === null ? '' : (names.get(one.ownerId) ?? '') })),
        total: kept.length,
      },
    }
  })
}

/** Threads at a time: what hangs on them is asked for by their ids, of which a statement takes about a thousand. */
const THREADS_AT_ONCE = 500

/** Of all projects of this person, the oldest first. */
async function findThreads(tx: TransactionClient, userId: string): Promise<readonly ThreadRow[]> {
  const rows: ThreadRow[] = []
  for (;;) {
    const last = rows.at(-1)
    const next = await tx.thread.findMany({
      where: { revision: { project: { memberships: { some: { userId } } } } },
      select: PARTS,
      orderBy: [{ openedAt: 'asc' }, { id: 'asc' }],
      take: THREADS_AT_ONCE,
      ...(last === undefined ? {} : { cursor: { id: last.id }, skip: 1 }),
    })
    rows.push(...next)
    if (next.length < THREADS_AT_ONCE) return rows
  }
}

const PARTS = {
  id: true,
  audienceCompanyId: true,
  openedByCompanyId: true,
  openedById: true,
  anchorKind: true,
  anchorLabel: true,
  kind: true,
  title: true,
  state: true,
  openedAt: true,
  closedAt: true,
  ownerId: true,
  dueOn: true,
  audienceCompany: { select: { name: true } },
  comments: { select: { authorId: true, companyId: true }, orderBy: { ordinal: 'asc' } },
  revision: { select: SCOPE_COLUMNS },
} as const satisfies Prisma.ThreadSelect

type ThreadRow = Prisma.ThreadGetPayload<{ select: typeof PARTS }>
type Place = Omit<
  AskedQuestion,
  'state' | 'openedAt' | 'openDays' | 'rounds' | 'ownerId' | 'ownerName' | 'isOwn' | 'dueOn' | 'isOverdue'
>

interface Found {
  readonly place: Place
  readonly question: Question
}

/** Null for what the person may not see, and for what asks nothing. */
function toFound(rights: PersonRights, row: ThreadRow): Found | null {
  // A live signature plays no part in what may be seen or said.
  const scope = findRevisionScope(rights, row.revision, false)
  if (scope === null || !maySeeThread(rights, scope.subject, row)) return null
  if (!asksSomething(row)) return null
  const { revision } = row
  const { stage } = scope.subject
  return {
    place: {
      threadId: row.id,
      projectId: revision.projectId,
      projectName: revision.project.name,
      revisionId: revision.id,
      revisionLabel: revision.label,
      fabricatorName: row.audienceCompany?.name ?? '',
      kind: readWord(row.kind, THREAD_KINDS, 'kind of thread'),
      title: row.title,
      anchorLabel: row.anchorLabel,
    },
    question: {
      state: readWord(row.state, THREAD_STATES, 'state of a thread'),
      openedAt: row.openedAt.toISOString(),
      closedAt: row.closedAt?.toISOString() ?? null,
      dueOn: row.dueOn,
      ownerId: row.ownerId,
      // As long as people can comment.
      isLive: isOpenStage(stage) || stage === 'released',
      rounds: countRounds(row.comments, row),
    },
  }
}

/** Its owner is named once it is known to be on the page. */
function toAsked({ place, question }: Found, rights: PersonRights, at: string): AskedQuestion | null {
  const { state, ownerId, openedAt, dueOn, rounds, isLive } = question
  if (state === 'closed' || !isLive) return null
  return {
    ...place,
    state,
    openedAt,
    openDays: Math.floor((Date.parse(at) - Date.parse(openedAt)) / DAY_MS),
    rounds,
    ownerId,
    ownerName: '',
    isOwn: ownerId === rights.userId,
    dueOn,
    isOverdue: isLate(question, at.slice(0, 10)),
  }
}

function byUrgency(one: AskedQuestion, other: AskedQuestion): number {
  if (one.isOverdue !== other.isOverdue) return one.isOverdue ? -1 : 1
  return (
    compare(one.dueOn ?? '9999', other.dueOn ?? '9999') ||
    compare(one.openedAt, other.openedAt) ||
    compare(one.threadId, other.threadId)
  )
}

const compare = (one: string, other: string): number => (one === other ? 0 : one < other ? -1 : 1)
