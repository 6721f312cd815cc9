import 'server-only'
import type { ConditionEvent } from '@/lib/mail'
import { type ActionsTold, describeCondition } from '@/lib/review'
import type { TransactionClient } from '../../store/client'
import {
  type Letter,
  loadReaders,
  loadSubject,
  makePlace,
  makeWanted,
  queueLetters,
  type RecordedAct,
  withoutForeignNames,
} from './readers'

type Told = RecordedAct<ActionsTold<'condition-readers'>>

const EVENTS: Readonly<Record<Told['note']['action'], ConditionEvent>> = {
  'condition-taken-over': 'taken-over',
  'condition-declined': 'declined',
  'condition-made-action': 'action',
  'taken-off-release': 'taken-off',
  'put-back-on-release': 'put-back',
}

/**
 * To the people of the fabricator whose condition or part in the release was decided.
 * No other fabricator learns of it.
 */
export async function queueConditionNotices(act: Told): Promise<void> {
  const { tx, note, by } = act
  const { row, subject } = await loadSubject(tx, note.revisionId ?? '')
  const { company, condition, text } = await describe(tx, note)
  const letters: Letter[] = []
  for (const reader of await loadReaders(act, subject)) {
    if (reader.fabricatorCompanyId !== company.id || reader.off.has('condition')) continue
    const { foreignNames } = reader
    letters.push({
      reader,
      notice: {
        kind: 'condition',
        place: makePlace(row, foreignNames, 'sign-off'),
        event: EVENTS[note.action],
        companyName: company.name,
        by: by.name,
        condition: condition === null ? null : withoutForeignNames(condition, foreignNames),
        text: withoutForeignNames(text, foreignNames),
        wanted:
          note.action === 'condition-declined' || note.action === 'condition-taken-over'
            ? makeWanted('look at it and declare again', row)
            : null,
      },
      subjectKey: `revision:${row.id}`,
    })
  }
  await queueLetters(act, letters)
}

async function describe(tx: TransactionClient, note: Told['note']) {
  if (note.subject.kind === 'company') {
    const company = await tx.company.findUniqueOrThrow({ where: { id: note.subject.id } })
    return { company, condition: null, text: note.details.reason }
  }
  const condition = await tx.declarationCondition.findUniqueOrThrow({
    where: { id: note.subject.id },
    include: { declaration: { include: { company: true } } },
  })
  const done = 'done' in note.details ? (note.details.done ?? '') : ''
  const { reason } = note.details
  const said = note.action === 'condition-made-action' ? `${note.details.action} (due ${note.details.due})` : done
  return {
    company: condition.declaration.company,
    condition: describeCondition(condition),
    text: [said, reason].filter((part) => part !== '').join('\n'),
  }
}
