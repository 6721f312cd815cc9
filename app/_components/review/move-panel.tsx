'use client'

import { useState } from 'react'
import { ActionButton } from '@/app/_components/ui/action-button'
import type { Action } from '@/app/_components/ui/action-result'
import { Button } from '@/app/_components/ui/button'
import { SideDialog } from '@/app/_components/ui/dialog'
import { FormError } from '@/app/_components/ui/form-error'
import { FormTextArea } from '@/app/_components/ui/form-fields'
import { useActionForm } from '@/app/_components/ui/use-action-form'
import type { RevisionView } from '@/lib/data'
import { sendBackInput } from '@/lib/inputs'
import { advanceRevision, sendBackRevision, withdrawRevision } from './actions'
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
}

/** Stage changes. Release is on the sign-off screen, after the signature. */
export function MovePanel({ revisionId, version, stage, may, blockerCount }: MovePanelProps) {
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
          text="Answers, threads and signatures stay readable. A signature on this revision is voided."
          action={sendBackRevision}
          revisionId={revisionId}
          version={version}
        />
      )}
      {may.withdraw && (
        <MoveWithReason
          label="Withdraw the revision"
          text="A withdrawn revision stays readable but cannot proceed. A package that was already released remains valid as a file: tell everyone who has it."
          action={withdrawRevision}
          revisionId={revisionId}
          version={version}
          isGrave
        />
      )}
    </div>
  )
}

interface MoveWithReasonProps {
  label: string
  text: string
  action: Action<unknown>
  revisionId: string
  version: number
  isGrave?: boolean
}

function MoveWithReason({ label, text, action, revisionId, version, isGrave = false }: MoveWithReasonProps) {
  const [isOpen, setIsOpen] = useState(false)
  return (
    <>
      <Button weight={isGrave ? 'quiet' : 'plain'} onPress={() => setIsOpen(true)}>
        {label}
      </Button>
      <SideDialog title={label} isOpen={isOpen} onOpenChange={setIsOpen}>
        <ReasonForm
          label={label}
          text={text}
          action={action}
          revisionId={revisionId}
          version={version}
          isGrave={isGrave}
          onClose={() => setIsOpen(false)}
        />
      </SideDialog>
    </>
  )
}

function ReasonForm({
  label,
  text,
  action,
  revisionId,
  version,
  isGrave,
  onClose,
}: MoveWithReasonProps & { onClose: () => void }) {
  // Sending back and withdrawing take the same input.
  const { form, submit, isPending, refusal } = useActionForm({
    schema: sendBackInput,
    action,
    defaultValues: { revisionId, seenVersion: version, reason: '' },
    onDone: onClose,
  })
  return (
    <form className="form" onSubmit={submit}>
      <p>{text}</p>
      <FormTextArea control={form.control} name="reason" label="Reason" rows={3} autoFocus />
      <FormError refusal={refusal} />
      <div className="row">
        <Button type="submit" weight={isGrave ? 'grave' : 'strong'} isPending={isPending} pendingLabel="Moving…">
          {label}
        </Button>
        <Button onPress={onClose} isDisabled={isPending}>
          Cancel
        </Button>
      </div>
    </form>
  )
}
