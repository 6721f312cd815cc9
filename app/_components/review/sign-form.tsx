'use client'

import { Button } from '@/app/_components/ui/button'
import { FormError } from '@/app/_components/ui/form-error'
import { FormSelect } from '@/app/_components/ui/form-fields'
import { useActionForm } from '@/app/_components/ui/use-action-form'
import type { SecondFactorView } from '@/lib/data'
import { signInputSchema } from '@/lib/inputs'
import type { GrantedCapacity } from '@/lib/review'
import { signRevision } from './actions'
import { BlockerList } from './blocker-list'
import { ConfirmFields, forgetConfirmation, UNCONFIRMED } from './confirm-fields'
import { Meaning } from './meaning'

interface SignFormProps {
  projectId: string
  revisionId: string
  version: number
  contentHash: string
  statement: string
  /** Capacities that were granted to the signer. */
  capacities: readonly GrantedCapacity[]
  factor: SecondFactorView
}

/** Signs exactly the content whose hash is shown: if anything changed meanwhile, the server refuses. */
export function SignForm({
  projectId,
  revisionId,
  version,
  contentHash,
  statement,
  capacities,
  factor,
}: SignFormProps) {
  const { form, submit, isPending, refusal } = useActionForm({
    schema: signInputSchema,
    action: signRevision,
    defaultValues: {
      revisionId,
      seenVersion: version,
      contentHash,
      // Of several capacities the signer chooses one.
      capacity: capacities.length === 1 ? (capacities[0]?.capacity ?? '') : '',
      statement,
      ...UNCONFIRMED,
    },
    // What was typed to confirm one signature must not stand ready for another.
    onDone: () => forgetConfirmation(form),
  })
  const chosen = capacities.find(({ capacity }) => capacity === form.watch('capacity'))
  return (
    <form className="form" onSubmit={submit} aria-label="Sign this content">
      <blockquote className="statement">{statement}</blockquote>
      <p className="small muted">
        SHA-256 of the signed content: <span className="hash">{contentHash}</span>
      </p>
      <FormSelect
        control={form.control}
        name="capacity"
        label="Signing as"
        hint={chosen && `${chosen.statement} Granted by ${chosen.grantedByName}.`}
        options={capacities.map(({ capacity }) => ({ value: capacity, label: capacity }))}
      />
      <Meaning of="sign" />
      <ConfirmFields form={form} factor={factor} />
      <FormError
        refusal={refusal}
        renderBlockers={(blocked) => (
          <BlockerList projectId={projectId} revisionId={revisionId} blockers={blocked.blockers} />
        )}
      />
      <div className="row">
        <Button type="submit" weight="strong" isPending={isPending} pendingLabel="Signing…">
          Sign
        </Button>
      </div>
    </form>
  )
}
