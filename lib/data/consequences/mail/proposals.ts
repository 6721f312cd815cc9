import 'server-only'
import type { ProposalEvent } from '@/lib/mail'
import type { ActionsTold, RevisionSubject } from '@/lib/review'
import { mayOnRevision, maySeeProposal } from '../../records/authorization'
import {
  findMentioned,
  type Letter,
  loadReaders,
  loadSubject,
  makePlace,
  makeWanted,
  queueLetters,
  type Reader,
  type RecordedAct,
  withoutForeignNames,
} from './readers'

interface ProposalPart {
  readonly audienceCompanyId: string | null
  readonly proposedById: string
  readonly proposedByCompanyId: string
}

/**
 * A proposal is written about to the person who decides and to the fabricator that takes part; the decision to the person who proposed
 * it, their colleagues at a fabricator and anyone who wrote in its thread.
 */
const EVENTS: { readonly [W in ActionsTold<'proposal-readers'>]: ProposalEvent } = {
  'proposal-made': 'made',
  'proposal-accepted': 'accepted',
  'proposal-declined': 'declined',
  'proposal-withdrawn': 'withdrawn',
}

export async function queueProposalNotices(act: RecordedAct<ActionsTold<'proposal-readers'>>): Promise<void> {
  const { tx, note, by } = act
  const event = EVENTS[note.action]
  const proposal = await tx.proposal.findUniqueOrThrow({ where: { id: note.subject.id } })
  const thread = await tx.thread.findUniqueOrThrow({
    where: { id: proposal.threadId },
    include: { comments: { orderBy: { ordinal: 'asc' } } },
  })
  const { row, subject } = await loadSubject(tx, proposal.revisionId)
  const readers = (await loadReaders(act, subject)).filter(({ rights }) => maySeeProposal(rights, subject, proposal))
  const text = (event === 'made' ? thread.comments[0]?.text : proposal.decisionNote) ?? ''
  const mentioned = findMentioned(text, readers)
  const authors = new Set(thread.comments.map(({ authorId }) => authorId))
  const changes = note.action === 'proposal-made' ? note.details.changes : []

  const letters: Letter[] = []
  for (const reader of readers) {
    const isTold =
      event === 'made'
        ? isAsked(reader, proposal, subject)
        : authors.has(reader.userId) ||
          isOnItsSide(reader, proposal) ||
          (event === 'withdrawn' && isAsked(reader, proposal, subject))
    const { foreignNames } = reader
    const title = withoutForeignNames(proposal.title, foreignNames)
    const said = text === '' ? null : withoutForeignNames(text, foreignNames)
    const place = makePlace(row, foreignNames, 'proposals', proposal.id)
    if (isTold && !reader.off.has('proposal')) {
      const mayDecide = event === 'made' && mayOnRevision(reader.rights, 'proposal:decide', subject)
      letters.push({
        reader,
        notice: {
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
        subjectKey: `thread:${thread.id}`,
      })
    } else if (mentioned.has(reader.userId) && !reader.off.has('mention')) {
      const thing = { threadKind: 'proposed change', title, anchor: null }
      const wanted = makeWanted('read it and reply', row)
      const notice = { kind: 'mention' as const, place, ...thing, by: by.name, text: said, wanted }
      letters.push({ reader, notice, subjectKey: `thread:${thread.id}` })
    }
  }
  await queueLetters(act, letters)
}

/** Those who decide, and the fabricator that the team named; nobody is asked about a proposal of their own side. */
function isAsked(reader: Reader, proposal: ProposalPart, subject: RevisionSubject): boolean {
  if (mayOnRevision(reader.rights, 'proposal:decide', subject)) return true
  return (
    isOfFabricator(reader, proposal.audienceCompanyId) && proposal.audienceCompanyId !== proposal.proposedByCompanyId
  )
}

function isOnItsSide(reader: Reader, proposal: ProposalPart): boolean {
  return (
    reader.userId === proposal.proposedById ||
    isOfFabricator(reader, proposal.proposedByCompanyId) ||
    isOfFabricator(reader, proposal.audienceCompanyId)
  )
}

function isOfFabricator({ fabricatorCompanyId }: Reader, companyId: string | null): boolean {
  return fabricatorCompanyId !== null && fabricatorCompanyId === companyId
}
