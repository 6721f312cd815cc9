'use client'

import { useState } from 'react'
import { CheckboxField } from '@/app/_components/ui/choice-fields'
import { FormFoot } from '@/app/_components/ui/form-foot'
import { useAction } from '@/app/_components/ui/use-action'
import { MAIL_KIND_LABELS, OPTIONAL_MAIL_KINDS, type OptionalMailKind } from '@/lib/mail'
import { setMailChoices } from '../actions'

/** What the person is written to about, a tick each. */
export function MailChoicesForm({ kinds: saved }: { kinds: readonly OptionalMailKind[] }) {
  const [kinds, setKinds] = useState(saved)
  const [isDone, setIsDone] = useState(false)
  const { send, isPending, refusal } = useAction(setMailChoices)
  const toggle = (kind: OptionalMailKind, isOn: boolean) => {
    setIsDone(false)
    setKinds(OPTIONAL_MAIL_KINDS.filter((known) => (known === kind ? isOn : kinds.includes(known))))
  }
  return (
    <form
      className="form"
      onSubmit={(event) => {
        event.preventDefault()
        send({ kinds: [...kinds] }, () => setIsDone(true))
      }}
    >
      <fieldset className="stack">
        <legend className="field-label">Messages you receive</legend>
        {OPTIONAL_MAIL_KINDS.map((kind) => (
          <CheckboxField key={kind} isSelected={kinds.includes(kind)} onChange={(isOn) => toggle(kind, isOn)}>
            {MAIL_KIND_LABELS[kind]}
          </CheckboxField>
        ))}
      </fieldset>
      <FormFoot refusal={refusal} isPending={isPending} label="Save" pendingLabel="Saving…" done={isDone && 'Saved.'} />
    </form>
  )
}
