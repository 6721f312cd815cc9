'use client'

import { useState } from 'react'
import { Button } from '@/app/_components/ui/button'
import { SideDialog } from '@/app/_components/ui/dialog'
import { FormTextArea } from '@/app/_components/ui/form-fields'
import { FormFoot } from '@/app/_components/ui/form-foot'
import { useActionForm } from '@/app/_components/ui/use-action-form'
import type { DifferenceView } from '@/lib/data'
import { acknowledgeDifferenceInput, takeUpDifferenceInput } from '@/lib/inputs'
import { acknowledgeDifference, takeUpDifference } from './actions'

interface DifferenceActsProps {
  readonly revisionId: string
  readonly version: number
  readonly difference: DifferenceView
}

/** What a lead or quality may do about one difference. */
export function DifferenceActs({ revisionId, version, difference }: DifferenceActsProps) {
  const [isOpen, setIsOpen] = useState(false)
  const { mayLetStand, mayTakeUp, acknowledgementId } = difference
  if (!mayLetStand && !mayTakeUp) return null
  const title = mayLetStand ? 'Let the difference stand' : 'Reopen the difference'
  const label = mayLetStand ? 'Let it stand' : 'Take it up again'
  const close = () => setIsOpen(false)
  return (
    <div className="no-print">
      <Button weight="quiet" onPress={() => setIsOpen(true)} aria-label={`${label}: ${difference.fact}`}>
        {label}
      </Button>
      <SideDialog title={title} isOpen={isOpen} onOpenChange={setIsOpen}>
        {mayLetStand ? (
          <LetStandForm revisionId={revisionId} version={version} difference={difference} onDone={close} />
        ) : (
          <TakeUpForm acknowledgementId={acknowledgementId ?? ''} onDone={close} />
        )}
      </SideDialog>
    </div>
  )
}

function LetStandForm({ revisionId, version, difference, onDone }: DifferenceActsProps & { onDone: () => void }) {
  const { form, submit, isPending, refusal } = useActionForm({
    schema: acknowledgeDifferenceInput,
    action: acknowledgeDifference,
    defaultValues: { revisionId, seenVersion: version, key: difference.key, reason: '' },
    onDone,
  })
  return (
    <form className="form" onSubmit={submit}>
      <p>
        {difference.fact}: {difference.said}, but {difference.against}. With your reason this becomes part of what is
        signed.
      </p>
      <FormTextArea control={form.control} name="reason" label="Why it may stand" rows={3} autoFocus />
      <FormFoot refusal={refusal} isPending={isPending} label="Let it stand" pendingLabel="Saving…" />
    </form>
  )
}

function TakeUpForm({ acknowledgementId, onDone }: { acknowledgementId: string; onDone: () => void }) {
  const { form, submit, isPending, refusal } = useActionForm({
    schema: takeUpDifferenceInput,
    action: takeUpDifference,
    defaultValues: { acknowledgementId, reason: '' },
    onDone,
  })
  return (
    <form className="form" onSubmit={submit}>
      <FormTextArea control={form.control} name="reason" label="Reason" rows={3} autoFocus />
      <FormFoot refusal={refusal} isPending={isPending} label="Take it up again" pendingLabel="Saving…" />
    </form>
  )
}
