'use client'

import { recordMeeting } from '@/app/_components/review/actions'
import { FormText, FormTextArea } from '@/app/_components/ui/form-fields'
import { FormFoot } from '@/app/_components/ui/form-foot'
import { SelectField } from '@/app/_components/ui/select-field'
import { useActionForm } from '@/app/_components/ui/use-action-form'
import type { MeetingsView } from '@/lib/data'
import { type RecordMeetingInput, recordMeetingInput } from '@/lib/inputs'
import { DecisionFields } from './decision-fields'

interface MeetingFormProps {
  readonly revisionId: string
  readonly today: string
  readonly people: MeetingsView['people']
  readonly points: readonly { readonly value: string; readonly label: string }[]
}

type Person = RecordMeetingInput['people'][number]

const ATTENDANCE = [
  { value: 'not-asked' as const, label: 'not asked' },
  { value: 'present' as const, label: 'present' },
  { value: 'excused' as const, label: 'excused' },
]

/** Who was there, the agenda, and each decision with what carries it out. */
export function MeetingForm({ revisionId, today, people, points }: MeetingFormProps) {
  const { form, submit, isPending, refusal } = useActionForm({
    schema: recordMeetingInput,
    action: recordMeeting,
    defaultValues: { revisionId, title: '', heldOn: today, agenda: '', people: [], decisions: [] },
  })
  const chosen = form.watch('people') as readonly Person[]
  return (
    <form className="form" onSubmit={submit} aria-label="Record a meeting">
      <FormText control={form.control} name="title" label="Title" />
      <FormText control={form.control} name="heldOn" label="Held on" type="date" />
      <FormTextArea control={form.control} name="agenda" label="Agenda" rows={3} isOptional />
      <fieldset className="stack">
        <legend className="label">Who was asked</legend>
        {people.map(({ userId, name, companyName, isTeam }) => (
          <SelectField
            key={userId}
            label={isTeam ? name : `${name}, ${companyName}`}
            value={chosen.find((person) => person.userId === userId)?.attendance ?? 'not-asked'}
            options={ATTENDANCE}
            onChange={(attendance) => {
              const others = chosen.filter((person) => person.userId !== userId)
              form.setValue('people', attendance === 'not-asked' ? others : [...others, { userId, attendance }], {
                shouldDirty: true,
              })
            }}
          />
        ))}
      </fieldset>
      <DecisionFields
        form={form}
        points={points}
        owners={people.filter(({ isTeam }) => isTeam).map(({ userId, name }) => ({ value: userId, label: name }))}
      />
      <p className="muted small">Minutes cannot be changed afterwards: the next meeting corrects mistakes.</p>
      <FormFoot refusal={refusal} isPending={isPending} label="Record the meeting" pendingLabel="Saving…" />
    </form>
  )
}
