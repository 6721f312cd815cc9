'use client'

import { useState } from 'react'
import { useController, useWatch } from 'react-hook-form'
import { Button } from '@/app/_components/ui/button'
import { FormSelect, FormText, FormTextArea } from '@/app/_components/ui/form-fields'
import { FormFoot } from '@/app/_components/ui/form-foot'
import { useActionForm } from '@/app/_components/ui/use-action-form'
import type { ConditionView, DoneOptions, PersonView } from '@/lib/data'
import { type DecideConditionInput, decideConditionInput } from '@/lib/inputs'
import { ACTION_DUE_WORDS, ACTION_DUES } from '@/lib/review'
import { decideCondition } from './actions'
import { DoneField } from './done-field'

type Decision = DecideConditionInput['decision']

interface ConditionActsProps {
  condition: ConditionView
  options: DoneOptions
  team: readonly PersonView[]
}

/** What the lead can make of a fabricator's condition. */
export function ConditionActs({ condition, options, team }: ConditionActsProps) {
  const [decision, setDecision] = useState<Decision | null>(null)
  if (decision !== null) {
    return (
      <DecideForm
        key={decision}
        condition={condition}
        options={options}
        team={team}
        decision={decision}
        onClose={() => setDecision(null)}
      />
    )
  }
  return (
    <div className="row no-print">
      <Button onPress={() => setDecision('take-over')}>Take over</Button>
      <Button onPress={() => setDecision('action')}>Make it an action</Button>
      <Button onPress={() => setDecision('decline')}>Decline</Button>
    </div>
  )
}

const LABELS: Readonly<Record<Decision, string>> = {
  'take-over': 'Take the condition over',
  decline: 'Decline the condition',
  action: 'Make it an action',
}

function DecideForm({
  condition,
  options,
  team,
  decision,
  onClose,
}: ConditionActsProps & { decision: Decision; onClose: () => void }) {
  const { form, submit, isPending, refusal } = useActionForm({
    schema: decideConditionInput,
    action: decideCondition,
    defaultValues: {
      conditionId: condition.id,
      seenVersion: condition.version,
      decision,
      reason: '',
      ...(decision === 'action' ? { action: { text: '', ownerId: '', dueOn: '' } } : {}),
    },
    onDone: onClose,
  })
  const { field, fieldState } = useController({ control: form.control, name: 'done' })
  const due = useWatch({ control: form.control, name: 'action.due' })
  return (
    <form className="form no-print" onSubmit={submit}>
      {decision === 'take-over' && (
        <>
          <p className="muted">The fabricator then declares again, on the changed content.</p>
          <DoneField
            options={options}
            kinds={['fields', 'proposal']}
            value={field.value}
            onChange={field.onChange}
            error={fieldState.error?.message}
          />
        </>
      )}
      {decision === 'action' && (
        <>
          <FormTextArea control={form.control} name="action.text" label="What is to be done" rows={2} />
          <FormSelect
            control={form.control}
            name="action.ownerId"
            label="Owner"
            options={team.map(({ id, name }) => ({ value: id, label: name }))}
          />
          <FormSelect
            control={form.control}
            name="action.due"
            label="Due"
            options={ACTION_DUES.map((value) => ({ value, label: ACTION_DUE_WORDS[value] }))}
          />
          {due !== undefined && (
            <FormText
              control={form.control}
              name="action.dueOn"
              label={due === 'date' ? 'Date' : 'Planned for'}
              type="date"
              isOptional={due !== 'date'}
            />
          )}
        </>
      )}
      <FormTextArea
        control={form.control}
        name="reason"
        label={decision === 'decline' ? 'Reason for declining' : 'Remark'}
        rows={2}
        isOptional={decision !== 'decline'}
        {...(decision === 'decline'
          ? { hint: 'The fabricator reads it, and declares without the condition or not at all.' }
          : {})}
      />
      <FormFoot refusal={refusal} isPending={isPending} label={LABELS[decision]} onCancel={onClose} />
    </form>
  )
}
