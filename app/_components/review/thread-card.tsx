'use client'

import Link from 'next/link'
import { useState } from 'react'
import { useController } from 'react-hook-form'
import { Button } from '@/app/_components/ui/button'
import { FormCheckbox, FormSelect, FormText, FormTextArea } from '@/app/_components/ui/form-fields'
import { FormFoot } from '@/app/_components/ui/form-foot'
import { ReasonForm } from '@/app/_components/ui/reason-form'
import { Timestamp } from '@/app/_components/ui/timestamp'
import { useActionForm } from '@/app/_components/ui/use-action-form'
import { paths, type RevisionTab, type RevisionTarget } from '@/lib/addresses'
import type { CommentView, ThreadView } from '@/lib/data'
import {
  assignThreadInput,
  closeThreadInput,
  editCommentInput,
  noteOnDrawingInput,
  reopenThreadInput,
  replyInput,
} from '@/lib/inputs'
import { DONE_KINDS, THREAD_KIND_WORDS } from '@/lib/review'
import { assignThread, closeThread, editComment, noteOnDrawing, reopenThread, replyToThread } from './actions'
import { CommentField } from './comment-field'
import { DoneField } from './done-field'
import { FileList } from './file-list'
import { NOBODY_NAMED, useThreadOwners } from './mention-people'
import { UploadForm } from './upload-form'
import { useCommentFiles } from './use-comment-files'

const ANCHOR_TABS: Readonly<Record<ThreadView['anchor']['kind'], RevisionTab>> = {
  revision: 'overview',
  item: 'checklist',
  layer: 'construction',
  zone: 'construction',
  bend: 'bends',
  feature: 'features',
  value: 'brief',
  note: 'plan',
  parameter: 'fabrication',
  artwork: 'artwork',
  proposal: 'proposals',
}

/** By the first word of its id. */
const VALUE_TABS: Readonly<Record<string, RevisionTab>> = {
  brief: 'brief',
  layers: 'construction',
  zones: 'construction',
  bends: 'bends',
}

/** Where the thing stands that a thread is about; of a value and a feature, the entry that it belongs to. */
function findTarget({ kind, id }: ThreadView['anchor']): RevisionTarget {
  const [list = '', entry = ''] = id.split('/')
  if (kind === 'value') return { tab: VALUE_TABS[list] ?? 'overview', id: list === 'brief' ? '' : entry }
  if (kind === 'feature') return { tab: 'features', id: entry }
  return { tab: ANCHOR_TABS[kind], id: kind === 'note' || kind === 'parameter' ? '' : id }
}

interface ThreadCardProps {
  projectId: string
  thread: ThreadView
  maxFileBytes: number
}

/** One thread: what it is about, what was said, and what the reader may do next. */
export function ThreadCard({ projectId, thread, maxFileBytes }: ThreadCardProps) {
  const [act, setAct] = useState<'none' | 'close' | 'reopen' | 'assign' | 'note'>('none')
  const target = findTarget(thread.anchor)
  return (
    <article className="thread" id={`thread-${thread.id}`} aria-labelledby={`thread-title-${thread.id}`}>
      <header>
        <p className="thread-kind" data-kind={thread.kind}>
          {THREAD_KIND_WORDS[thread.kind].label} <span className="muted">· {thread.state}</span>
        </p>
        <h2 id={`thread-title-${thread.id}`}>{thread.title}</h2>
        <p className="muted small">
          on <Link href={paths.target(projectId, thread.revisionId, target)}>{thread.anchor.label}</Link>
          {thread.place !== null && (
            <>
              {' '}
              (
              <Link href={paths.artworkAt(projectId, thread.revisionId, { frame: 'files', ...thread.place })}>
                show the place
              </Link>
              )
            </>
          )}
          , opened by {thread.openedBy.name}, <Timestamp at={thread.openedAt} />
          {thread.company === null ? '; the team only' : `; with ${thread.company.name}`}
        </p>
        {(thread.owner !== null || thread.dueOn !== null) && (
          <p className="small">
            {thread.owner !== null && <>Owner {thread.owner.name}</>}
            {thread.owner !== null && thread.dueOn !== null && ', '}
            {thread.dueOn !== null && (
              <>
                {thread.owner === null ? 'Due' : 'due'} <span className="nowrap">{thread.dueOn}</span>
                {thread.isOverdue && <strong> (overdue)</strong>}
              </>
            )}
          </p>
        )}
      </header>
      <ol className="comments">
        {thread.comments.map((comment) => (
          <Comment
            key={comment.id}
            comment={comment}
            revisionId={thread.revisionId}
            companyId={thread.company?.id ?? null}
            maxFileBytes={maxFileBytes}
          />
        ))}
      </ol>
      {thread.answeredBy !== null && thread.answeredAt !== null && (
        <p className="muted">
          Answered by {thread.answeredBy.name}, <Timestamp at={thread.answeredAt} />.
        </p>
      )}
      {thread.state === 'closed' && thread.closedBy !== null && thread.closedAt !== null && (
        <p className="muted">
          Closed by {thread.closedBy.name}, <Timestamp at={thread.closedAt} />
          {thread.closeReason === null || thread.closeReason === '' ? '.' : `: ${thread.closeReason}`}
          {thread.done !== '' && <span> ({thread.done})</span>}
        </p>
      )}
      {thread.may.reply && act === 'none' && <ReplyForm thread={thread} />}
      {act === 'assign' && <AssignForm thread={thread} onClose={() => setAct('none')} />}
      {act === 'note' && thread.drawingNote !== null && (
        <NoteForm threadId={thread.id} note={thread.drawingNote} onClose={() => setAct('none')} />
      )}
      {act === 'close' && <CloseForm thread={thread} onClose={() => setAct('none')} />}
      {act === 'reopen' && (
        <ReasonForm
          schema={reopenThreadInput}
          action={reopenThread}
          values={{ threadId: thread.id, seenVersion: thread.version }}
          asks="Reason for reopening"
          label="Reopen"
          onClose={() => setAct('none')}
        />
      )}
      {act === 'none' && (
        <div className="row no-print">
          {thread.may.close && <Button onPress={() => setAct('close')}>Close the thread</Button>}
          {thread.may.reopen && <Button onPress={() => setAct('reopen')}>Reopen</Button>}
          {thread.drawingNote !== null && <Button onPress={() => setAct('note')}>Add to the drawing notes</Button>}
          {thread.may.assign && (
            <Button weight="quiet" onPress={() => setAct('assign')}>
              {thread.owner === null && thread.dueOn === null ? 'Set owner and due day' : 'Change owner or due day'}
            </Button>
          )}
        </div>
      )}
    </article>
  )
}

function Comment({
  comment,
  revisionId,
  companyId,
  maxFileBytes,
}: {
  comment: CommentView
  revisionId: string
  companyId: string | null
  maxFileBytes: number
}) {
  const [act, setAct] = useState<'none' | 'edit' | 'attach'>('none')
  return (
    <li>
      <p className="small">
        <strong>{comment.author.name}</strong>{' '}
        <span className="muted">
          {comment.companyName}, <Timestamp at={comment.at} />
        </span>
        {comment.isAnswer && <span className="answer-tag"> answer</span>}
      </p>
      {act === 'edit' ? (
        <EditForm comment={comment} companyId={companyId} onClose={() => setAct('none')} />
      ) : (
        <p className="said">{comment.text}</p>
      )}
      {comment.attachments.length > 0 && <FileList files={comment.attachments} hrefOf={paths.attachment} />}
      {comment.earlierTexts.length > 0 && (
        <details className="small">
          <summary>Edited; earlier wording ({comment.earlierTexts.length})</summary>
          <ul className="plain-list">
            {comment.earlierTexts.map((earlier) => (
              <li key={earlier.at}>
                <Timestamp at={earlier.at} />: <span className="said">{earlier.text}</span>
              </li>
            ))}
          </ul>
        </details>
      )}
      {act === 'attach' && (
        <UploadForm
          purpose="attachment"
          input={{ revisionId, target: { kind: 'comment', commentId: comment.id } }}
          label="Attach a file to this comment"
          hint="A photograph, a sketch, a data sheet."
          buttonLabel="Attach"
          maxBytes={maxFileBytes}
        />
      )}
      {comment.mayEdit && (
        <div className="row no-print">
          {act === 'none' && (
            <>
              <Button weight="quiet" onPress={() => setAct('edit')}>
                Edit
              </Button>
              <Button weight="quiet" onPress={() => setAct('attach')}>
                Attach a file
              </Button>
            </>
          )}
          {act === 'attach' && (
            <Button weight="quiet" onPress={() => setAct('none')}>
              Close
            </Button>
          )}
        </div>
      )}
    </li>
  )
}

function ReplyForm({ thread }: { thread: ThreadView }) {
  const files = useCommentFiles(thread.revisionId)
  const { form, submit, isPending, refusal } = useActionForm({
    schema: replyInput,
    action: replyToThread,
    defaultValues: { threadId: thread.id, text: '', isAnswer: false },
    isResetOnDone: true,
    onDone: ({ commentId }) => files.sendWith(commentId),
  })
  return (
    <form className="form no-print" onSubmit={submit}>
      <CommentField
        control={form.control}
        name="text"
        label="Reply"
        rows={3}
        companyId={thread.company?.id ?? null}
        files={files}
      />
      {thread.may.answer && (
        <FormCheckbox control={form.control} name="isAnswer">
          This answers the question
        </FormCheckbox>
      )}
      <FormFoot refusal={refusal} isPending={isPending} label="Reply" pendingLabel="Sending…" />
    </form>
  )
}

function EditForm({
  comment,
  companyId,
  onClose,
}: {
  comment: CommentView
  companyId: string | null
  onClose: () => void
}) {
  const { form, submit, isPending, refusal } = useActionForm({
    schema: editCommentInput,
    action: editComment,
    defaultValues: { commentId: comment.id, seenVersion: comment.version, text: comment.text },
    onDone: onClose,
  })
  return (
    <form className="form" onSubmit={submit}>
      <CommentField
        control={form.control}
        name="text"
        label="Text"
        hint="The earlier text stays readable."
        companyId={companyId}
      />
      <FormFoot refusal={refusal} isPending={isPending} label="Save the text" onCancel={onClose} />
    </form>
  )
}

function CloseForm({ thread, onClose }: { thread: ThreadView; onClose: () => void }) {
  const { form, submit, isPending, refusal } = useActionForm({
    schema: closeThreadInput,
    action: closeThread,
    defaultValues: { threadId: thread.id, seenVersion: thread.version, reason: '' },
    onDone: onClose,
  })
  const { field, fieldState } = useController({ control: form.control, name: 'done' })
  const { doneOptions } = thread
  return (
    <form className="form" onSubmit={submit}>
      <FormTextArea
        control={form.control}
        name="reason"
        label="How it was settled"
        rows={2}
        isOptional={doneOptions === null}
      />
      {doneOptions !== null && (
        <DoneField
          options={doneOptions}
          kinds={DONE_KINDS}
          value={field.value}
          onChange={field.onChange}
          error={fieldState.error?.message}
        />
      )}
      <FormFoot refusal={refusal} isPending={isPending} label="Close the thread" onCancel={onClose} />
    </form>
  )
}

function AssignForm({ thread, onClose }: { thread: ThreadView; onClose: () => void }) {
  const { form, submit, isPending, refusal } = useActionForm({
    schema: assignThreadInput,
    action: assignThread,
    defaultValues: {
      threadId: thread.id,
      seenVersion: thread.version,
      ownerId: thread.owner?.id ?? '',
      dueOn: thread.dueOn ?? '',
    },
    onDone: onClose,
  })
  const owners = useThreadOwners(thread.company?.id ?? null)
  const { owner } = thread
  // Who left the project stays named until somebody else is.
  const known = owner === null || owners.some(({ value }) => value === owner.id)
  return (
    <form className="form no-print" onSubmit={submit}>
      <FormSelect
        control={form.control}
        name="ownerId"
        label="Owner"
        options={[NOBODY_NAMED, ...owners, ...(known ? [] : [{ value: owner.id, label: owner.name }])]}
        hint="Who is to answer. It waits for them and for nobody else; once it is late, for the leads too."
      />
      <FormText control={form.control} name="dueOn" label="Due day" type="date" isOptional />
      <FormFoot refusal={refusal} isPending={isPending} label="Save owner and due day" onCancel={onClose} />
    </form>
  )
}

function NoteForm({
  threadId,
  note,
  onClose,
}: {
  threadId: string
  note: NonNullable<ThreadView['drawingNote']>
  onClose: () => void
}) {
  const { form, submit, isPending, refusal } = useActionForm({
    schema: noteOnDrawingInput,
    action: noteOnDrawing,
    defaultValues: { threadId, seenVersion: note.designVersion, text: note.text },
    onDone: onClose,
  })
  return (
    <form className="form no-print" onSubmit={submit}>
      <FormTextArea
        control={form.control}
        name="text"
        label="Drawing note"
        rows={3}
        hint="Printed with the notes of the drawing. It changes the design: valid signatures are voided."
      />
      <FormFoot
        refusal={refusal}
        isPending={isPending}
        label="Add to the drawing notes"
        pendingLabel="Saving…"
        onCancel={onClose}
      />
    </form>
  )
}
