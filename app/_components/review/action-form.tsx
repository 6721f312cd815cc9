'use client'

import { FormSelect, FormText, FormTextArea } from '@/app/_components/ui/form-fields'
import { FormFoot } from '@/app/_components/ui/form-foot'
import { SelectField } from '@/app/_components/ui/select-field'
import { useActionForm } from '@/app/_components/ui/use-action-form'
import type { CompanyView, ReviewActionView } from '@/lib/data'
import { changeActionInput, takeOnActionInput } from '@/lib/inputs'
import { ACTION_DUE_WORDS, ACTION_DUES } from '@/lib/review'
import { changeAction, takeOnAction } from './actions'
import { useMentionable } from './mention-people'

const DUES = ACTION_DUES.map((value) => ({ value, label: ACTION_DUE_WORDS[value] }))
const DUE_ON_HINT = 'Blank where no day is known; needed for "by a date".'

export interface OriginOption {
  kind: 'revision' | 'thread' | 'waiver' | 'item'
  id: string
  label: string
}

interface TakeOnFormProps {
  revisionId: string
  origins: readonly OriginOption[]
  fabricators: readonly CompanyView[]
}

export function TakeOnForm({ revisionId, origins, fabricators }: TakeOnFormProps) {
  const { form, submit, isPending, refusal, isDone } = useActionForm({
    schema: takeOnActionInput,
    action: takeOnAction,
    defaultValues: {
      revisionId,
      origin: { kind: 'revision', id: '' },
      text: '',
      ownerId: '',
      due: 'before-release',
      dueOn: '',
    },
    isResetOnDone: true,
  })
  const origin = form.watch('origin')
  const companyId = form.watch('companyId')
  const owners = useMentionable(companyId ?? null).map(({ id, name }) => ({ value: id, label: name }))
  return (
    <form className="form" onSubmit={submit}>
      <SelectField
        label="Comes from"
        value={`${origin.kind} ${origin.id}`}
        options={origins.map(({ kind, id, label }) => ({ value: `${kind} ${id}`, label }))}
        onChange={(value) => {
          const chosen = origins.find(({ kind, id }) => `${kind} ${id}` === value)
          if (chosen !== undefined) form.setValue('origin', { kind: chosen.kind, id: chosen.id })
        }}
      />
      <FormTextArea control={form.control} name="text" label="What is to be done" rows={3} />
      {fabricators.length > 0 && (
        <SelectField
          label="Who sees it"
          hint="An action from a fabricator’s thread is always seen by that fabricator."
          value={companyId ?? 'team'}
          options={[
            { value: 'team', label: 'the team only' },
            ...fabricators.map((company) => ({ value: company.id, label: `the team and ${company.name}` })),
          ]}
          onChange={(value) => form.setValue('companyId', value === 'team' ? undefined : value)}
        />
      )}
      <FormSelect control={form.control} name="ownerId" label="Owner" options={owners} />
      <FormSelect
        control={form.control}
        name="due"
        label="Due"
        options={DUES}
        hint="What is due before release blocks the signature and the release."
      />
      <FormText control={form.control} name="dueOn" label="Date" type="date" isOptional hint={DUE_ON_HINT} />
      <FormFoot
        refusal={refusal}
        isPending={isPending}
        label="Take on the action"
        pendingLabel="Saving…"
        done={isDone && 'The action was added.'}
      />
    </form>
  )
}

export function ChangeForm({ action, onClose }: { action: ReviewActionView; onClose: () => void }) {
  const { form, submit, isPending, refusal } = useActionForm({
    schema: changeActionInput,
    action: changeAction,
    defaultValues: {
      actionId: action.id,
      seenVersion: action.version,
      ownerId: action.owner.id,
      due: action.due,
      dueOn: action.dueOn ?? '',
      reason: '',
    },
    onDone: onClose,
  })
  const owners = useMentionable(action.company?.id ?? null).map(({ id, name }) => ({ value: id, label: name }))
  return (
    <form className="form no-print" onSubmit={submit}>
      <FormSelect control={form.control} name="ownerId" label="Owner" options={owners} />
      <FormSelect control={form.control} name="due" label="Due" options={DUES} />
      <FormText control={form.control} name="dueOn" label="Date" type="date" isOptional hint={DUE_ON_HINT} />
      <FormTextArea control={form.control} name="reason" label="Reason" rows={2} />
      <FormFoot refusal={refusal} isPending={isPending} label="Change the action" onCancel={onClose} />
    </form>
  )
}
