'use client'

import { useState } from 'react'
import { Button } from '@/app/_components/ui/button'
import { SideDialog } from '@/app/_components/ui/dialog'
import { FormTextArea } from '@/app/_components/ui/form-fields'
import { FormFoot } from '@/app/_components/ui/form-foot'
import { useActionForm } from '@/app/_components/ui/use-action-form'
import type { SecondFactorView } from '@/lib/data'
import { withdrawSignatureInput } from '@/lib/inputs'
import { withdrawSignature } from './actions'
import { ConfirmFields, UNCONFIRMED } from './confirm-fields'
import { Meaning } from './meaning'

/** A signer withdraws their own signature, with a reason. It stays readable, voided. */
export function TakeBackSignature({ signatureId, factor }: { signatureId: string; factor: SecondFactorView }) {
  const [isOpen, setIsOpen] = useState(false)
  return (
    <div className="no-print">
      <Button weight="quiet" onPress={() => setIsOpen(true)}>
        Withdraw my signature
      </Button>
      <SideDialog title="Withdraw your signature" isOpen={isOpen} onOpenChange={setIsOpen}>
        <ReasonForm signatureId={signatureId} factor={factor} onClose={() => setIsOpen(false)} />
      </SideDialog>
    </div>
  )
}

interface ReasonFormProps {
  readonly signatureId: string
  readonly factor: SecondFactorView
  readonly onClose: () => void
}

function ReasonForm({ signatureId, factor, onClose }: ReasonFormProps) {
  const { form, submit, isPending, refusal } = useActionForm({
    schema: withdrawSignatureInput,
    action: withdrawSignature,
    defaultValues: { signatureId, reason: '', ...UNCONFIRMED },
    onDone: onClose,
  })
  return (
    <form className="form" onSubmit={submit}>
      <p>The signature stays readable as voided, with your reason. It no longer counts for release.</p>
      <FormTextArea control={form.control} name="reason" label="Reason" rows={3} autoFocus />
      <Meaning of="withdraw-signature" />
      <ConfirmFields form={form} factor={factor} />
      <FormFoot
        refusal={refusal}
        isPending={isPending}
        weight="grave"
        label="Withdraw signature"
        pendingLabel="Withdrawing…"
        onCancel={onClose}
      />
    </form>
  )
}
