'use client'

import { Button } from '@/app/_components/ui/button'
import { FormError } from '@/app/_components/ui/form-error'
import { FormCheckbox, FormNumber, FormRadio, FormText, FormTextArea } from '@/app/_components/ui/form-fields'
import { Timestamp } from '@/app/_components/ui/timestamp'
import { useActionForm } from '@/app/_components/ui/use-action-form'
import type { RevisionView, SecondFactorView, WaiverView } from '@/lib/data'
import { decideWaiverInput, proposeWaiverInput } from '@/lib/inputs'
import { describeFollows } from '@/lib/review'
import { decideWaiver, proposeWaiver } from './actions'
import { ConfirmFields, UNCONFIRMED } from './confirm-fields'
import { Meaning } from './meaning'
import { WAIVER_WORDS } from './words'

interface WaiverPanelProps {
  revisionId: string
  item: RevisionView['items'][number]
  may: RevisionView['may']
  factor: SecondFactorView
}

/** Waivers of one item: those there are, the decision on one that waits, and the proposal of a new one. */
export function WaiverPanel({ revisionId, item, may, factor }: WaiverPanelProps) {
  const isAsked = ['fails', 'cannot-tell', 'thin-margin'].includes(item.result.verdict) || item.state === 'concern'
  const isPending = item.waivers.some(
    (waiver) => waiver.covers && !waiver.isLapsed && (waiver.state === 'proposed' || waiver.state === 'approved'),
  )
  const follows = describeFollows(item.follows)
  if (item.waivers.length === 0 && !(isAsked && may.proposeWaiver)) return null
  return (
    <div className="stack">
      <h4 className="label">Waiver</h4>
      {item.waivers.map((waiver) => (
        <WaiverRecord key={waiver.id} waiver={waiver} mayApprove={may.approveWaiver} factor={factor} />
      ))}
      {follows !== '' && <p className="muted small">{follows}. A waiver of that item covers this one.</p>}
      {item.followers.length > 0 && (
        <p className="muted small">
          A waiver of this item covers what follows from it, as it stands now:{' '}
          {item.followers.map(({ question }) => question).join(' ')}
        </p>
      )}
      {isAsked && may.proposeWaiver && !isPending && follows === '' && (
        <ProposeForm revisionId={revisionId} itemId={item.itemId} />
      )}
    </div>
  )
}

interface WaiverRecordProps {
  waiver: WaiverView
  /** Approving waivers is the person's to do, if perhaps not this one. */
  mayApprove: boolean
  factor: SecondFactorView
}

function WaiverRecord({ waiver, mayApprove, factor }: WaiverRecordProps) {
  return (
    <div className="stack">
      <p>
        <strong>
          {WAIVER_WORDS[waiver.state]}
          {!waiver.covers && ', no longer valid: the numbers have changed since'}
          {waiver.isLapsed && `, lapsed: it was valid until ${waiver.validUntil}`}
        </strong>{' '}
        <span className="muted">
          {waiver.proposedBy.name}, <Timestamp at={waiver.proposedAt} />
        </span>
      </p>
      <p>{waiver.reason}</p>
      {waiver.consequence !== '' && <p>Consequence: {waiver.consequence}</p>}
      {describeLimits(waiver) !== '' && <p className="muted">{describeLimits(waiver)}</p>}
      {waiver.decidedBy !== null && waiver.decidedAt !== null && (
        <p className="muted">
          Decided by {waiver.decidedBy.name}, <Timestamp at={waiver.decidedAt} />
          {waiver.decisionNote === '' ? '.' : `: ${waiver.decisionNote}`}
        </p>
      )}
      {waiver.whyNotApprove !== '' && mayApprove && (
        <p className="muted small">You cannot approve it: {waiver.whyNotApprove}.</p>
      )}
      {waiver.state === 'proposed' && waiver.mayDecide && <DecideForm waiver={waiver} factor={factor} />}
    </div>
  )
}

function describeLimits(waiver: WaiverView): string {
  const parts = [
    ...(waiver.quantityLimit === null ? [] : [`for at most ${waiver.quantityLimit} parts`]),
    ...(waiver.validUntil === null ? [] : [`until ${waiver.validUntil}`]),
    ...(waiver.needsCustomerConsent
      ? [waiver.customerConsent === '' ? 'the customer must agree' : `customer’s consent: ${waiver.customerConsent}`]
      : []),
  ]
  return parts.join('; ')
}

function ProposeForm({ revisionId, itemId }: { revisionId: string; itemId: string }) {
  const { form, submit, isPending, refusal } = useActionForm({
    schema: proposeWaiverInput,
    action: proposeWaiver,
    defaultValues: {
      revisionId,
      itemId,
      reason: '',
      consequence: '',
      validUntil: '',
      quantityLimit: null,
      needsCustomerConsent: false,
    },
    isResetOnDone: true,
  })
  return (
    <form className="form" onSubmit={submit}>
      <FormTextArea
        control={form.control}
        name="reason"
        label="Why release against this item"
        hint="Why it is acceptable for this part, and what limits the risk. A lead engineer or quality approves or declines it, as the sign-off policy says."
        rows={3}
      />
      <FormTextArea
        control={form.control}
        name="consequence"
        label="Consequence"
        hint="What may happen to the parts because of it."
        rows={2}
        isOptional
      />
      <FormText control={form.control} name="validUntil" label="Valid until" type="date" isOptional />
      <FormNumber control={form.control} name="quantityLimit" label="At most" unit="parts" isOptional />
      <FormCheckbox control={form.control} name="needsCustomerConsent">
        The customer must agree
      </FormCheckbox>
      <FormError refusal={refusal} />
      <div className="row">
        <Button type="submit" isPending={isPending}>
          Propose a waiver
        </Button>
      </div>
    </form>
  )
}

function DecideForm({ waiver, factor }: { waiver: WaiverView; factor: SecondFactorView }) {
  const { form, submit, isPending, refusal } = useActionForm({
    schema: decideWaiverInput,
    action: decideWaiver,
    // Nothing is chosen beforehand: to approve is a decision.
    defaultValues: { waiverId: waiver.id, reason: '', customerConsent: '', ...UNCONFIRMED },
  })
  return (
    <form className="form" onSubmit={submit}>
      <FormRadio
        control={form.control}
        name="decision"
        label="Your decision"
        options={[
          { value: 'approve', label: 'approve' },
          { value: 'decline', label: 'decline' },
        ]}
      />
      <FormTextArea control={form.control} name="reason" label="Comment" rows={2} hint="Required when declining." />
      {form.watch('decision') === 'approve' && waiver.needsCustomerConsent && (
        <FormTextArea
          control={form.control}
          name="customerConsent"
          label="Customer’s consent"
          rows={2}
          hint="Who agreed, when, and where that is on record."
        />
      )}
      {form.watch('decision') === 'approve' && (
        <>
          <Meaning of="approve-waiver" />
          <ConfirmFields form={form} factor={factor} />
        </>
      )}
      <FormError refusal={refusal} />
      <div className="row">
        <Button type="submit" isPending={isPending}>
          Record the decision
        </Button>
      </div>
    </form>
  )
}
