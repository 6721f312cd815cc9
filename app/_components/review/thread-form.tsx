'use client'

import { useState } from 'react'
import { Button } from '@/app/_components/ui/button'
import { FormError } from '@/app/_components/ui/form-error'
import { FormSelect, FormText } from '@/app/_components/ui/form-fields'
import { SelectField } from '@/app/_components/ui/select-field'
import { useActionForm } from '@/app/_components/ui/use-action-form'
import type { CompanyView, ProjectRole } from '@/lib/data'
import { openThreadInput } from '@/lib/inputs'
import type { AnchorKind } from '@/lib/review'
import { openThread } from './actions'
import { ArtworkPlace } from './artwork-place'
import { CommentField } from './comment-field'
import { NOBODY_NAMED, useThreadOwners } from './mention-people'
import { useCommentFiles } from './use-comment-files'

export interface AnchorOption {
  kind: Exclude<AnchorKind, 'proposal'>
  id: string
  label: string
  /** Of an artwork file, in mm of the file: the place that is asked about. */
  place?: { readonly xMm: number; readonly yMm: number }
}

interface ThreadFormProps {
  revisionId: string
  /** What the thread may be about; the first is chosen. */
  anchors: readonly AnchorOption[]
  fabricators: readonly CompanyView[]
  role: ProjectRole | null
  /** Engineering queries are a fabricator's to raise. */
  mayRaiseQuery: boolean
  /** Shows a button first, the form once it is asked for. */
  isFolded?: boolean
}

const KINDS = [
  { value: 'note', label: 'note' },
  { value: 'should-change', label: 'should change' },
  { value: 'must-change', label: 'must change' },
  { value: 'engineering-query', label: 'engineering query' },
] as const

export function ThreadForm({ isFolded = false, ...rest }: ThreadFormProps) {
  const [isOpen, setIsOpen] = useState(!isFolded)
  if (!isOpen) {
    return (
      <div>
        <Button onPress={() => setIsOpen(true)}>Comment or ask</Button>
      </div>
    )
  }
  return <OpenThreadForm {...rest} {...(isFolded ? { onClose: () => setIsOpen(false) } : {})} />
}

function OpenThreadForm({
  revisionId,
  anchors,
  fabricators,
  role,
  mayRaiseQuery,
  onClose,
}: Omit<ThreadFormProps, 'isFolded'> & { onClose?: () => void }) {
  const [first] = anchors
  const files = useCommentFiles(revisionId)
  const { form, submit, isPending, refusal, isDone } = useActionForm({
    schema: openThreadInput,
    action: openThread,
    defaultValues: {
      revisionId,
      anchor:
        first === undefined ? { kind: 'revision', id: '' } : { kind: first.kind, id: first.id, place: first.place },
      kind: mayRaiseQuery ? 'engineering-query' : 'note',
      title: '',
      text: '',
      ownerId: '',
      dueOn: '',
    },
    isResetOnDone: true,
    // A form with files that were refused stays, so that they can be sent again.
    onDone: ({ commentId }) => files.sendWith(commentId, onClose),
  })
  const anchor = form.watch('anchor')
  const companyId = form.watch('companyId')
  const audience = companyId ?? (role === 'fabricator' ? (fabricators[0]?.id ?? null) : null)
  const owners = useThreadOwners(audience)
  const kinds = mayRaiseQuery ? KINDS : KINDS.filter((kind) => kind.value !== 'engineering-query')
  return (
    <form className="form" onSubmit={submit}>
      {anchors.length > 1 && (
        <SelectField
          label="About"
          searchLabel="Search the places"
          value={`${anchor.kind} ${anchor.id}`}
          options={anchors.map((option) => ({ value: `${option.kind} ${option.id}`, label: option.label }))}
          onChange={(value) => {
            const chosen = anchors.find((option) => `${option.kind} ${option.id}` === value)
            if (chosen !== undefined) form.setValue('anchor', { kind: chosen.kind, id: chosen.id })
          }}
        />
      )}
      {anchor.kind === 'artwork' && (
        <ArtworkPlace place={anchor.place} onChange={(place) => form.setValue('anchor.place', place)} />
      )}
      <FormSelect
        control={form.control}
        name="kind"
        label="Kind"
        options={kinds}
        hint="A must-change or engineering query blocks the revision in fabricator review until it is answered or closed."
      />
      {role !== 'fabricator' && fabricators.length > 0 && (
        <SelectField
          label="Who takes part"
          value={companyId ?? 'team'}
          options={[
            { value: 'team', label: 'the team only' },
            ...fabricators.map((company) => ({ value: company.id, label: `the team and ${company.name}` })),
          ]}
          onChange={(value) => form.setValue('companyId', value === 'team' ? undefined : value)}
        />
      )}
      <FormText control={form.control} name="title" label="Subject" maxLength={160} />
      <CommentField control={form.control} name="text" label="Text" rows={4} companyId={audience} files={files} />
      <div className="row">
        <FormSelect
          control={form.control}
          name="ownerId"
          label="Who should answer"
          options={[NOBODY_NAMED, ...owners]}
        />
        <FormText control={form.control} name="dueOn" label="Answer due" type="date" isOptional />
      </div>
      <FormError refusal={refusal} />
      <div className="row">
        <Button type="submit" isPending={isPending} pendingLabel="Sending…">
          Open the thread
        </Button>
        {onClose !== undefined && (
          <Button weight="quiet" onPress={onClose}>
            Close
          </Button>
        )}
        <span role="status" className="muted">
          {isDone && 'The thread is open.'}
        </span>
      </div>
    </form>
  )
}
