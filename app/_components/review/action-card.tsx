'use client'

import Link from 'next/link'
import { useState } from 'react'
import { Button } from '@/app/_components/ui/button'
import { FormTextArea } from '@/app/_components/ui/form-fields'
import { FormFoot } from '@/app/_components/ui/form-foot'
import { ReasonForm } from '@/app/_components/ui/reason-form'
import { Timestamp } from '@/app/_components/ui/timestamp'
import { useActionForm } from '@/app/_components/ui/use-action-form'
import { paths, type RevisionTab } from '@/lib/addresses'
import type { ReviewActionView } from '@/lib/data'
import { closeActionInput, dropActionInput, reopenActionInput, reportActionInput } from '@/lib/inputs'
import { ACTION_STATE_WORDS, describeDue } from '@/lib/review'
import { ChangeForm } from './action-form'
import { closeAction, dropAction, reopenAction, reportAction } from './actions'
import { FileList } from './file-list'
import { UploadForm } from './upload-form'

const ORIGIN_TABS: Readonly<Record<ReviewActionView['origin']['kind'], RevisionTab>> = {
  revision: 'overview',
  thread: 'threads',
  condition: 'sign-off',
  waiver: 'checklist',
  item: 'checklist',
  meeting: 'meetings',
}

type Act = 'none' | 'report' | 'attach' | 'close' | 'drop' | 'reopen' | 'change'

/** One action: what is to be done by whom and by when, what shows that it was, and what the reader may do next. */
export function ActionCard({
  projectId,
  action,
  maxFileBytes,
}: {
  projectId: string
  action: ReviewActionView
  maxFileBytes: number
}) {
  const [act, setAct] = useState<Act>('none')
  const onClose = () => setAct('none')
  const settling = { values: { actionId: action.id, seenVersion: action.version }, onClose }
  const { origin } = action
  // Of what an item or a thread says, the page has the place; a waiver stands with its item.
  const id = origin.kind === 'item' || origin.kind === 'thread' ? origin.id : null
  return (
    <article className="thread" id={action.id} aria-labelledby={`action-${action.id}`}>
      <header>
        <p className="thread-kind" data-kind={action.isOverdue ? 'must-change' : 'note'}>
          action {action.number}{' '}
          <span className="muted">
            · {ACTION_STATE_WORDS[action.state]}
            {action.isOverdue && ', overdue'}
          </span>
        </p>
        <h3 id={`action-${action.id}`}>{action.text}</h3>
        <p className="muted small">
          due {describeDue(action)}; owner {action.owner.name}, {action.ownerCompanyName}
          {action.isAfterRelease && '; taken on after the release'}
        </p>
        <p className="muted small">
          from{' '}
          <Link href={paths.target(projectId, action.revisionId, { tab: ORIGIN_TABS[origin.kind], id })}>
            {origin.label}
          </Link>
          , taken on by {action.takenOnBy.name}, <Timestamp at={action.takenOnAt} />
          {action.company === null ? '; the team only' : `; with ${action.company.name}`}
        </p>
      </header>
      {action.reportedBy !== null && action.reportedAt !== null && (
        <p>
          Reported done by {action.reportedBy.name}, <Timestamp at={action.reportedAt} />
        </p>
      )}
      {action.evidence !== '' && <p className="said">{action.evidence}</p>}
      {action.attachments.length > 0 && <FileList files={action.attachments} hrefOf={paths.attachment} />}
      {action.closedBy !== null && action.closedAt !== null && (
        <p className="muted">
          {action.state === 'dropped' ? 'Dropped' : 'Closed'} by {action.closedBy.name},{' '}
          <Timestamp at={action.closedAt} />
          {action.closeNote === '' ? '.' : `: ${action.closeNote}`}
        </p>
      )}
      {act === 'none' && <Choices action={action} onChoose={setAct} />}
      {act === 'report' && <ReportForm action={action} onClose={onClose} />}
      {act === 'attach' && (
        <>
          <UploadForm
            purpose="attachment"
            input={{ revisionId: action.revisionId, target: { kind: 'action', actionId: action.id } }}
            label="Attach evidence"
            hint="A test report, a measurement, a photograph."
            buttonLabel="Attach"
            maxBytes={maxFileBytes}
          />
          <Button weight="quiet" onPress={onClose}>
            Close
          </Button>
        </>
      )}
      {act === 'close' && (
        <ReasonForm
          schema={closeActionInput}
          action={closeAction}
          asks="What you checked"
          isOptional
          label="Close the action"
          {...settling}
        />
      )}
      {act === 'drop' && (
        <ReasonForm
          schema={dropActionInput}
          action={dropAction}
          asks="Why it is no longer needed"
          label="Drop the action"
          {...settling}
        />
      )}
      {act === 'reopen' && (
        <ReasonForm
          schema={reopenActionInput}
          action={reopenAction}
          asks="Reason for reopening"
          label="Reopen"
          {...settling}
        />
      )}
      {act === 'change' && <ChangeForm action={action} onClose={onClose} />}
    </article>
  )
}

function Choices({ action: { may }, onChoose }: { action: ReviewActionView; onChoose: (act: Act) => void }) {
  return (
    <div className="row no-print">
      {may.report && <Button onPress={() => onChoose('report')}>Report it done</Button>}
      {may.report && (
        <Button weight="quiet" onPress={() => onChoose('attach')}>
          Attach evidence
        </Button>
      )}
      {may.close && <Button onPress={() => onChoose('close')}>Close</Button>}
      {may.reopen && <Button onPress={() => onChoose('reopen')}>Reopen</Button>}
      {may.change && (
        <Button weight="quiet" onPress={() => onChoose('change')}>
          Change owner or date
        </Button>
      )}
      {may.drop && (
        <Button weight="quiet" onPress={() => onChoose('drop')}>
          Drop
        </Button>
      )}
    </div>
  )
}

function ReportForm({ action, onClose }: { action: ReviewActionView; onClose: () => void }) {
  const { form, submit, isPending, refusal } = useActionForm({
    schema: reportActionInput,
    action: reportAction,
    defaultValues: { actionId: action.id, seenVersion: action.version, evidence: action.evidence },
    onDone: onClose,
  })
  return (
    <form className="form no-print" onSubmit={submit}>
      <FormTextArea control={form.control} name="evidence" label="What shows that it was done" rows={3} />
      <FormFoot refusal={refusal} isPending={isPending} label="Report it done" onCancel={onClose} />
    </form>
  )
}
