'use client'

import { useState } from 'react'
import type { Action } from '@/app/_components/ui/action-result'
import { Button } from '@/app/_components/ui/button'
import { FormText } from '@/app/_components/ui/form-fields'
import { FormFoot } from '@/app/_components/ui/form-foot'
import { useActionForm } from '@/app/_components/ui/use-action-form'
import { keepConstructionInput } from '@/lib/inputs'
import { useDraft } from '../draft'

export type KeepAction = Action<{ entryId: string; version: number }>

/** Keeps what is stored as a starting construction of the workspace. */
export function KeepConstruction({ keepAction }: { keepAction: KeepAction }) {
  const { state, stored, isChanged } = useDraft()
  const [isOpen, setOpen] = useState(false)
  const [kept, setKept] = useState<string | null>(null)
  if (!isOpen) {
    return (
      <div className="row no-print">
        <Button onPress={() => setOpen(true)} isDisabled={isChanged}>
          Keep as a starting construction
        </Button>
        <span className="small muted" role="status">
          {isChanged ? 'Save first: what is stored is kept.' : kept === null ? '' : `“${kept}” is kept.`}
        </span>
      </div>
    )
  }
  return (
    <KeepForm
      revisionId={stored.revisionId}
      seenVersion={state.seenVersion}
      keepAction={keepAction}
      onClose={(name) => {
        setOpen(false)
        setKept(name)
      }}
    />
  )
}

interface KeepFormProps {
  readonly revisionId: string
  readonly seenVersion: number
  readonly keepAction: KeepAction
  readonly onClose: (name: string | null) => void
}

function KeepForm({ revisionId, seenVersion, keepAction, onClose }: KeepFormProps) {
  const { form, submit, isPending, refusal } = useActionForm({
    schema: keepConstructionInput,
    action: keepAction,
    defaultValues: { revisionId, seenVersion, name: '', purpose: '' },
    onDone: () => onClose(form.getValues('name')),
  })
  return (
    <form className="form no-print" onSubmit={submit} aria-label="Keep as a starting construction">
      <p className="small">
        Layers, zones, bends and own materials are kept. Everybody on a team of this workspace can see them and begin
        with them; brief, features and plan stay here.
      </p>
      <FormText control={form.control} name="name" label="Name" hint="What the construction does, not the part." />
      <FormText control={form.control} name="purpose" label="Chosen for" hint="When one would begin with it." />
      <FormFoot
        refusal={refusal}
        isPending={isPending}
        label="Keep it"
        pendingLabel="Keeping…"
        onCancel={() => onClose(null)}
      />
    </form>
  )
}
