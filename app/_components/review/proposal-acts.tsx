'use client'

import { useState } from 'react'
import { Button } from '@/app/_components/ui/button'
import { FormTextArea } from '@/app/_components/ui/form-fields'
import { FormFoot } from '@/app/_components/ui/form-foot'
import { ReasonForm } from '@/app/_components/ui/reason-form'
import { useActionForm } from '@/app/_components/ui/use-action-form'
import type { ProposalView } from '@/lib/data'
import { decideProposalInput, withdrawProposalInput } from '@/lib/inputs'
import { decideProposal, withdrawProposal } from './actions'

type Act = 'none' | 'accept' | 'decline' | 'withdraw'

/** What the reader may do with a proposal; each act asks for its reason first. */
export function ProposalActs({ proposal }: { proposal: ProposalView }) {
  const [act, setAct] = useState<Act>('none')
  const close = () => setAct('none')
  if (act === 'withdraw')
    return (
      <ReasonForm
        schema={withdrawProposalInput}
        action={withdrawProposal}
        values={{ proposalId: proposal.id }}
        asks="Reason for withdrawing"
        isOptional
        label="Withdraw the proposal"
        pendingLabel="Withdrawing…"
        onClose={close}
      />
    )
  if (act !== 'none') return <DecideForm key={act} proposal={proposal} decision={act} onClose={close} />
  return (
    <div className="row no-print">
      {proposal.may.decide && (
        <>
          <Button weight="strong" onPress={() => setAct('accept')} isDisabled={proposal.obstacles.length > 0}>
            Accept
          </Button>
          <Button onPress={() => setAct('decline')}>Decline</Button>
        </>
      )}
      {proposal.may.withdraw && <Button onPress={() => setAct('withdraw')}>Withdraw</Button>}
    </div>
  )
}

interface FormProps {
  proposal: ProposalView
  onClose: () => void
}

function DecideForm({ proposal, decision, onClose }: FormProps & { decision: 'accept' | 'decline' }) {
  const { form, submit, isPending, refusal } = useActionForm({
    schema: decideProposalInput,
    action: decideProposal,
    defaultValues: { proposalId: proposal.id, seenVersion: proposal.designVersion, decision, reason: '' },
    onDone: onClose,
  })
  const isAccept = decision === 'accept'
  return (
    <form className="form no-print" onSubmit={submit}>
      {isAccept && (
        <p>
          Accepting applies the change to the current design, version {proposal.designVersion}, evaluates it, and voids
          signatures and declarations on the current content.
        </p>
      )}
      <FormTextArea
        control={form.control}
        name="reason"
        label={isAccept ? 'Reason for accepting' : 'Reason for declining'}
        rows={3}
      />
      <FormFoot
        refusal={refusal}
        isPending={isPending}
        weight="strong"
        label={isAccept ? 'Accept the change' : 'Decline the change'}
        pendingLabel={isAccept ? 'Accepting…' : 'Declining…'}
        onCancel={onClose}
      />
    </form>
  )
}
