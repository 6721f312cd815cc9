import 'server-only'
import type { ReviewActionEvent } from '@/lib/mail'
import { ACTION_DUES, type ActionsTold, describeDue } from '@/lib/review'
import { maySeeReviewAction } from '../../records/authorization'
import { readWord } from '../../records/stored-words'
import {
  type Letter,
  loadReaders,
  loadSubject,
  makePlace,
  queueLetters,
  type Reader,
  type RecordedAct,
  withoutForeignNames,
} from './readers'

const EVENTS: { readonly [W in ActionsTold<'action-readers'>]: ReviewActionEvent } = {
  'action-taken-on': 'taken-on',
  'action-changed': 'changed',
  'action-reported': 'reported',
  'action-reopened': 'reopened',
  'action-closed': 'closed',
  'action-dropped': 'dropped',
}

/** To the owner, to the person who took it on, and to the leads once it is reported done and waits for one of them. */
export async function queueReviewActionNotices(act: RecordedAct<ActionsTold<'action-readers'>>): Promise<void> {
  const { tx, note, by } = act
  const event = EVENTS[note.action]
  const action = await tx.reviewAction.findUniqueOrThrow({ where: { id: note.subject.id } })
  const { row, subject } = await loadSubject(tx, action.revisionId)
  const isTold = (reader: Reader) =>
    reader.userId === action.ownerId ||
    (event !== 'taken-on' && reader.userId === action.takenOnById) ||
    (event === 'reported' && reader.role === 'lead')
  const said = 'reason' in note.details ? note.details.reason : 'evidence' in note.details ? note.details.evidence : ''
  const due = describeDue({ due: readWord(action.due, ACTION_DUES, 'due date of an action'), dueOn: action.dueOn })
  const letters: Letter[] = []
  for (const reader of await loadReaders(act, subject)) {
    if (!isTold(reader) || !maySeeReviewAction(reader.rights, subject, action) || reader.off.has('action')) continue
    const { foreignNames } = reader
    letters.push({
      reader,
      notice: {
        kind: 'action',
        place: makePlace(row, foreignNames, 'actions', action.id),
        event,
        number: action.number,
        text: withoutForeignNames(action.text, foreignNames),
        by: by.name,
        due,
        isOwner: reader.userId === action.ownerId,
        said: said === '' ? null : withoutForeignNames(said, foreignNames),
      },
      subjectKey: `action:${action.id}`,
    })
  }
  await queueLetters(act, letters)
}
