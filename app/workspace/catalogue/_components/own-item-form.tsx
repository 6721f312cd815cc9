'use client'

import { Controller } from 'react-hook-form'
import { CheckboxField } from '@/app/_components/ui/choice-fields'
import { FormSelect, FormText, FormTextArea } from '@/app/_components/ui/form-fields'
import { FormFoot } from '@/app/_components/ui/form-foot'
import { useActionForm } from '@/app/_components/ui/use-action-form'
import { type OwnItem, SEVERITIES } from '@/lib/engine/catalogue'
import { ITEM_SECTION_WORDS, ITEM_SECTIONS } from '@/lib/engine/results'
import { addOwnItemInput, changeOwnItemInput, removeOwnItemInput } from '@/lib/inputs'
import { addOwnItem, changeOwnItem, removeOwnItem } from '../actions'
import type { ItemControl } from './controls'
import { OwnCheckFields } from './own-check-fields'
import { RoleChecks } from './role-checks'

const SECTION_OPTIONS = ITEM_SECTIONS.map((value) => ({
  value,
  label: ITEM_SECTION_WORDS[value],
}))
const SEVERITY_OPTIONS = (['blocking', 'major', 'minor', 'advice'] as const).map((value) => ({
  value,
  label: value,
  note: SEVERITIES[value],
}))
const STAGES = [
  { value: 'early', label: 'the fabricators look' },
  { value: 'layout', label: 'the fabricators’ review is left' },
  { value: 'fabricator', label: 'signature' },
] as const

interface FormProps {
  version: number
  onClose: () => void
}

export function AddOwnItemForm({ version, onClose }: FormProps) {
  const { form, submit, isPending, refusal } = useActionForm({
    schema: addOwnItemInput,
    action: addOwnItem,
    defaultValues: {
      seenVersion: version,
      item: {
        section: 'materials',
        severity: 'major',
        question: '',
        why: '',
        howToCheck: '',
        evidence: '',
        ground: '',
        decidedWhen: 'fabricator',
        answeredBy: ['member'],
      },
    },
    onDone: onClose,
  })
  return (
    <form className="form" onSubmit={submit} aria-label="A new item">
      <ItemFields control={form.control} />
      <FormFoot
        refusal={refusal}
        isPending={isPending}
        weight="strong"
        label="Add the item"
        pendingLabel="Saving…"
        onCancel={onClose}
      />
    </form>
  )
}

export function ChangeOwnItemForm({ item, version, onClose }: FormProps & { item: OwnItem }) {
  const { form, submit, isPending, refusal } = useActionForm({
    schema: changeOwnItemInput,
    action: changeOwnItem,
    defaultValues: { seenVersion: version, item, reason: '' },
    onDone: onClose,
  })
  return (
    <form className="form" onSubmit={submit} aria-label={`Change: ${item.question}`}>
      {/* The fields of a new item and of one that is there are the same; only the latter knows its id. */}
      <ItemFields control={form.control as unknown as ItemControl} />
      <FormText control={form.control} name="reason" label="Why it is changed" />
      <FormFoot
        refusal={refusal}
        isPending={isPending}
        weight="strong"
        label="Save the item"
        pendingLabel="Saving…"
        onCancel={onClose}
      />
    </form>
  )
}

export function RemoveOwnItemForm({ item, version, onClose }: FormProps & { item: OwnItem }) {
  const { form, submit, isPending, refusal } = useActionForm({
    schema: removeOwnItemInput,
    action: removeOwnItem,
    defaultValues: { seenVersion: version, itemId: item.id, reason: '' },
    onDone: onClose,
  })
  return (
    <form className="form" onSubmit={submit} aria-label={`Remove: ${item.question}`}>
      <p>Reviews that use an earlier version keep the item and its answers.</p>
      <FormText control={form.control} name="reason" label="Why it is removed" />
      <FormFoot
        refusal={refusal}
        isPending={isPending}
        weight="strong"
        label="Remove the item"
        pendingLabel="Saving…"
        onCancel={onClose}
      />
    </form>
  )
}

function ItemFields({ control }: { control: ItemControl }) {
  return (
    <>
      <FormText control={control} name="item.question" label="Question" />
      <FormSelect control={control} name="item.section" label="Section" options={SECTION_OPTIONS} />
      <FormSelect control={control} name="item.severity" label="Severity" options={SEVERITY_OPTIONS} />
      <FormTextArea control={control} name="item.why" label="Why it matters" rows={2} />
      <FormTextArea control={control} name="item.howToCheck" label="How to check it" rows={2} />
      <OwnCheckFields control={control} />
      <FormText
        control={control}
        name="item.ground"
        label="Ground"
        hint="Where it comes from: a procedure, a lesson from an earlier part."
      />
      <FormSelect control={control} name="item.decidedWhen" label="Must be answered before" options={STAGES} />
      <Controller
        control={control}
        name="item.onlyWithProfile"
        render={({ field }) => (
          <CheckboxField
            isSelected={field.value === true}
            onChange={(isSelected) => field.onChange(isSelected ? true : undefined)}
          >
            Asked only where a profile switches it on
          </CheckboxField>
        )}
      />
      <Controller
        control={control}
        name="item.answeredBy"
        render={({ field, fieldState }) => (
          <RoleChecks value={field.value} onChange={field.onChange} error={fieldState.error?.message} />
        )}
      />
    </>
  )
}
