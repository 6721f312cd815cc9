'use client'

import { FormTextArea } from '@/app/_components/ui/form-fields'
import { FormFoot } from '@/app/_components/ui/form-foot'
import { useActionForm } from '@/app/_components/ui/use-action-form'
import type { SignOffView } from '@/lib/data'
import { followSignOffPolicyInput } from '@/lib/inputs'
import { followSignOffPolicy } from './actions'

interface FollowPolicyProps {
  readonly revisionId: string
  readonly version: number
  readonly toFollow: NonNullable<SignOffView['toFollow']>
  readonly mayFollow: boolean
}

/** The project has another policy by now: what following it would change, and the act, with its reason. */
export function FollowPolicy({ revisionId, version, toFollow, mayFollow }: FollowPolicyProps) {
  const { form, submit, isPending, refusal } = useActionForm({
    schema: followSignOffPolicyInput,
    action: followSignOffPolicy,
    defaultValues: { revisionId, seenVersion: version, toVersion: toFollow.version, reason: '' },
  })
  return (
    <div className="stack" id="policy">
      <p>
        {toFollow.changes.length === 0
          ? 'The project has a sign-off policy. This revision is not under it yet.'
          : 'The project has another sign-off policy. This revision keeps its own until a lead puts it under that one:'}
      </p>
      {toFollow.changes.length > 0 && (
        <ul className="changes">
          {toFollow.changes.map(({ direction, sentence }) => (
            <li key={sentence}>
              {direction}: {sentence}
            </li>
          ))}
        </ul>
      )}
      {mayFollow && (
        <form className="form" onSubmit={submit} aria-label="Put the revision under the policy of the project">
          <FormTextArea
            control={form.control}
            name="reason"
            label="Reason"
            hint="It is recorded in the trail. Signatures cover the policy, so they are voided."
            rows={2}
          />
          <FormFoot
            refusal={refusal}
            isPending={isPending}
            label="Follow the policy of the project"
            pendingLabel="Saving…"
          />
        </form>
      )}
    </div>
  )
}
