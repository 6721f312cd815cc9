'use client'

import { useState } from 'react'
import { Button } from '@/app/_components/ui/button'
import { SideDialog } from '@/app/_components/ui/dialog'
import { FormError } from '@/app/_components/ui/form-error'
import { FormTextArea } from '@/app/_components/ui/form-fields'
import { FormFoot } from '@/app/_components/ui/form-foot'
import { Timestamp } from '@/app/_components/ui/timestamp'
import { useActionForm } from '@/app/_components/ui/use-action-form'
import type { RevisionView, SecondFactorView } from '@/lib/data'
import { declareReviewedInput, withdrawReviewInput } from '@/lib/inputs'
import { declareReviewed, withdrawReview } from './actions'
import { ConfirmFields, forgetConfirmation, UNCONFIRMED } from './confirm-fields'
import { Meaning } from './meaning'

interface ReviewPanelProps {
  readonly revision: Pick<RevisionView, 'id' | 'version' | 'signOff' | 'may'>
  readonly factor: SecondFactorView
}

/** Who declared design and artwork reviewed, and the form for somebody who made none of it. */
export function ReviewPanel({ revision, factor }: ReviewPanelProps) {
  const { reviews, whyNoReview } = revision.signOff
  const hasOwn = reviews.some(({ counts, mayWithdraw }) => counts && mayWithdraw)
  return (
    <div className="stack">
      {reviews.length === 0 ? (
        <p className="muted">Nobody has declared the content reviewed yet.</p>
      ) : (
        <ul className="signatures">
          {reviews.map((review) => (
            <li key={review.id}>
              <p>
                <strong>{review.name}</strong>, {review.role}, <Timestamp at={review.madeAt} />{' '}
                <span className={review.counts ? 'muted' : 'voided'}>
                  {review.isWithdrawn
                    ? 'withdrawn'
                    : review.counts
                      ? 'on the present content'
                      : 'on earlier content, or by an author of it: does not count'}
                </span>
              </p>
              {review.note !== '' && <p className="said">{review.note}</p>}
              {review.mayWithdraw && <WithdrawReview reviewId={review.id} factor={factor} />}
            </li>
          ))}
        </ul>
      )}
      {revision.may.review && whyNoReview !== '' && <p className="muted">{whyNoReview}</p>}
      {revision.may.review && whyNoReview === '' && !hasOwn && (
        <DeclareForm key={revision.version} revisionId={revision.id} version={revision.version} factor={factor} />
      )}
    </div>
  )
}

function DeclareForm({
  revisionId,
  version,
  factor,
}: {
  revisionId: string
  version: number
  factor: SecondFactorView
}) {
  const { form, submit, isPending, refusal, isDone } = useActionForm({
    schema: declareReviewedInput,
    action: declareReviewed,
    defaultValues: { revisionId, seenVersion: version, note: '', ...UNCONFIRMED },
    onDone: () => forgetConfirmation(form),
  })
  return (
    <form className="form" onSubmit={submit} aria-label="Declare the content reviewed">
      <FormTextArea control={form.control} name="note" label="What you looked at, and how" rows={2} />
      <Meaning of="declare-reviewed" />
      <ConfirmFields form={form} factor={factor} />
      <FormFoot
        refusal={refusal}
        isPending={isPending}
        weight="strong"
        label="Declare reviewed"
        pendingLabel="Declaring…"
        done={isDone && 'Declared.'}
      />
    </form>
  )
}

function WithdrawReview({ reviewId, factor }: { reviewId: string; factor: SecondFactorView }) {
  const [isOpen, setIsOpen] = useState(false)
  const { form, submit, isPending, refusal } = useActionForm({
    schema: withdrawReviewInput,
    action: withdrawReview,
    defaultValues: { reviewId, reason: '', ...UNCONFIRMED },
    onDone: () => setIsOpen(false),
  })
  return (
    <div className="no-print">
      <Button weight="quiet" onPress={() => setIsOpen(true)}>
        Withdraw my review
      </Button>
      <SideDialog title="Withdraw your review" isOpen={isOpen} onOpenChange={setIsOpen}>
        <form className="form" onSubmit={submit}>
          <Meaning of="withdraw-review" />
          <FormTextArea control={form.control} name="reason" label="Reason" rows={3} autoFocus />
          <ConfirmFields form={form} factor={factor} />
          <FormError refusal={refusal} />
          <div className="row">
            <Button type="submit" weight="grave" isPending={isPending} pendingLabel="Withdrawing…">
              Withdraw review
            </Button>
            <Button onPress={() => setIsOpen(false)} isDisabled={isPending}>
              Cancel
            </Button>
          </div>
        </form>
      </SideDialog>
    </div>
  )
}
