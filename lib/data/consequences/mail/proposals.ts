import 'server-only'
import { PROPOSAL_EVENTS, type ProposalEvent } from '@/lib/mail'
import type { RevisionSubject } from '@/lib/review'
import { mayOnRevision, maySeeProposal } from '../../records/authorization'
import {
  findMentioned,
  loadForeignNames,
  loadReaders,
  loadSubject,
  makePlace,
  makeWanted,
  queueTo,
  type Reader,
  type TrailEvent,
  withoutForeignNames,
} from './readers'

type ProposalAction = `proposal-${ProposalEvent}`

export function isProposalAction(action: string): action is ProposalAction {
  return PROPOSAL_EVENTS.some((event) => action === `proposal-${event}`)
}

interface ProposalPart {
  readonly companyId: string | null
  readonly proposedById: string
  readonly proposedByCompanyId: string
}

/**
 * A proposal is written about to whoever decides and to the fabricator that takes part; the decision to whoever proposed
 * it, their colleagues at a fabricator and whoever wrote in its thread.
 */
export async function queueProposalNotices(trailEvent: TrailEvent, action: ProposalAction): Promise<void> {
  const { tx, note, by } = trailEvent
  const event = action.replace('proposal-', '') as ProposalEvent
  const proposal = await tx.proposal.findUniqueOrThrow({ where: { id: note.subject.id } })
  const thread = await tx.thread.findUniqueOrThrow({
    where: { id: proposal.threadId },
    include: { comments: { orderBy: { ordinal: 'asc' } } },
  })
  const { row, subject } = await loadSubject(tx, proposal.revisionId)
  const readers = (await loadReaders(trailEvent, subject)).filter(({ standing }) =>
    maySeeProposal(standing, subject, proposal),
  )
  const text = (event === 'made' ? thread.comments[0]?.text : proposal.decisionNote) ?? ''
  const mentioned = findMentioned(text, readers)
  const authors = new Set(thread.comments.map(({ authorId }) => authorId))
  const changes = readSentences(note.details?.changes)

  for (const reader of readers) {
    const isTold =
      event === 'made'
        ? isAsked(reader, proposal, subject)
        : authors.has(reader.userId) ||
          isOnItsSide(reader, proposal) ||
          (event === 'withdrawn' && isAsked(reader, proposal, subject))
    const foreignNames = await loadForeignNames(tx, reader.fabricatorCompanyId)
    const title = withoutForeignNames(proposal.title, foreignNames)
    const said = text === '' ? null : withoutForeignNames(text, foreignNames)
    const place = makePlace(row, foreignNames, `/proposals/${encodeURIComponent(proposal.id)}`)
    if (isTold && !reader.off.has('proposal')) {
      const mayDecide = event === 'made' && mayOnRevision(reader.standing, 'proposal:decide', subject)
      await queueTo(
        trailEvent,
        reader,
        {
          kind: 'proposal',
          place,
          event,
          title,
          by: by.name,
          changes: changes.filter((sentence) => withoutForeignNames(sentence, foreignNames) !== null),
          text: said,
          mayDecide,
          wanted: mayDecide ? makeWanted('accept or decline it', row) : null,
        },
        `thread:${thread.id}`,
      )
    } else if (mentioned.has(reader.userId) && !reader.off.has('mention')) {
      const thing = { threadKind: 'proposed change', title, anchor: null }
      const wanted = makeWanted('read it and reply', row)
      const notice = { kind: 'mention' as const, place, ...thing, by: by.name, text: said, wanted }
      await queueTo(trailEvent, reader, notice, `thread:${thread.id}`)
    }
  }
}

/** Whoever decides, and the fabricator that the team named; nobody is asked about a proposal of their own side. */
function isAsked(reader: Reader, proposal: ProposalPart, subject: RevisionSubject): boolean {
  if (mayOnRevision(reader.standing, 'proposal:decide', subject)) return true
  return isOfFabricator(reader, proposal.companyId) && proposal.companyId !== proposal.proposedByCompanyId
}

function isOnItsSide(reader: Reader, proposal: ProposalPart): boolean {
  return (
    reader.userId === proposal.proposedById ||
    isOfFabricator(reader, proposal.proposedByCompanyId) ||
    isOfFabricator(reader, proposal.companyId)
  )
}

function isOfFabricator({ fabricatorCompanyId }: Reader, companyId: string | null): boolean {
  return fabricatorCompanyId !== null && fabricatorCompanyId === companyId
}

function readSentences(value: unknown): readonly string[] {
  return Array.isArray(value) ? value.filter((entry) => typeof entry === 'string') : []
}
