'use client'

import { type ReactNode, useState } from 'react'
import { ActionButton } from '@/app/_components/ui/action-button'
import { Button } from '@/app/_components/ui/button'
import { SideDialog } from '@/app/_components/ui/dialog'
import { FormTextArea } from '@/app/_components/ui/form-fields'
import { FormFoot } from '@/app/_components/ui/form-foot'
import { useActionForm } from '@/app/_components/ui/use-action-form'
import type { RevisionView, SecondFactorView } from '@/lib/data'
import { sendBackInput, withdrawInput } from '@/lib/inputs'
import { advanceRevision, sendBackRevision, withdrawRevision } from './actions'
import { ConfirmFields, UNCONFIRMED } from './confirm-fields'
import { Meaning } from './meaning'
import { STAGE_WORDS } from './words'

type Stage = RevisionView['stage']

const NEXT: Partial<Record<Stage, Stage>> = {
  preparing: 'early-review',
  'early-review': 'fabricator-review',
  'fabricator-review': 'awaiting-signature',
}

const BEFORE: Partial<Record<Stage, Stage>> = {
  'early-review': 'preparing',
  'fabricator-review': 'early-review',
  'awaiting-signature': 'fabricator-review',
}

interface MovePanelProps {
  revisionId: string
  version: number
  stage: Stage
  may: RevisionView['may']
  blockerCount: number
  factor: SecondFactorView
}

/** Stage changes. Release is on the sign-off screen, after the signature. */
export function MovePanel({ revisionId, version, stage, may, blockerCount, factor }: MovePanelProps) {
  const next = NEXT[stage]
  const before = BEFORE[stage]
  if (!may.advance && !may.sendBack && !may.withdraw) return null
  return (
    <div className="row no-print">
      {may.advance && next !== undefined && blockerCount === 0 && (
        <ActionButton
          action={advanceRevision}
          input={{ revisionId, seenVersion: version }}
          weight="strong"
          pendingLabel="Moving…"
        >
          Move to {STAGE_WORDS[next]}
        </ActionButton>
      )}
      {may.sendBack && before !== undefined && (
        <MoveWithReason
          label={`Send back to ${STAGE_WORDS[before]}`}
          renderForm={(onClose) => (
            <SendBackForm label={`Send back to ${STAGE_WORDS[before]}`} {...{ revisionId, version, onClose }} />
          )}
        />
      )}
      {may.withdraw && (
        <MoveWithReason
          label="Withdraw the revision"
          isGrave
          renderForm={(onClose) => <WithdrawForm {...{ revisionId, version, factor, onClose }} />}
        />
      )}
    </div>
  )
}

interface MoveWithReasonProps {
  label: string
  isGrave?: boolean
  renderForm: (onClose: () => void) => ReactNode
}

function MoveWithReason({ label, isGrave = false, renderForm }: MoveWithReasonProps) {
  const [isOpen, setIsOpen] = useState(false)
  return (
    <>
      <Button weight={isGrave ? 'quiet' : 'plain'} onPress={() => setIsOpen(true)}>
        {label}
      </Button>
      <SideDialog title={label} isOpen={isOpen} onOpenChange={setIsOpen}>
        {renderForm(() => setIsOpen(false))}
      </SideDialog>
    </>
  )
}

interface FormProps {
  readonly revisionId: string
  readonly version: number
  readonly onClose: () => void
}

function SendBackForm({ label, revisionId, version, onClose }: FormProps & { readonly label: string }) {
  const { form, submit, isPending, refusal } = useActionForm({
    schema: sendBackInput,
    action: sendBackRevision,
    defaultValues: { revisionId, seenVersion: version, reason: '' },
    onDone: onClose,
  })
  return (
    <form className="form" onSubmit={submit}>
      <p>Answers, threads and signatures stay readable. A signature on this revision is voided.</p>
      <FormTextArea control={form.control} name="reason" label="Reason" rows={3} autoFocus />
      <FormFoot
        refusal={refusal}
        isPending={isPending}
        weight="strong"
        label={label}
        pendingLabel="Moving…"
        onCancel={onClose}
      />
    </form>
  )
}

function WithdrawForm({ revisionId, version, factor, onClose }: FormProps & { readonly factor: SecondFactorView }) {
  const { form, submit, isPending, refusal } = useActionForm({
    schema: withdrawInput,
    action: withdrawRevision,
    defaultValues: { revisionId, seenVersion: version, reason: '', ...UNCONFIRMED },
    onDone: onClose,
  })
  return (
    <form className="form" onSubmit={submit}>
      <p>
        A withdrawn revision stays readable but cannot proceed. A package that was already released remains valid as a
        file: tell everyone who has it.
      </p>
      <FormTextArea control={form.control} name="reason" label="Reason" rows={3} autoFocus />
      <Meaning of="withdraw-revision" />
      <ConfirmFields form={form} factor={factor} />
      <FormFoot
        refusal={refusal}
        isPending={isPending}
        weight="grave"
        label="Withdraw the revision"
        pendingLabel="Withdrawing…"
        onCancel={onClose}
      />
    </form>
  )
}
