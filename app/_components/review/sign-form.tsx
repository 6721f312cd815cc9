'use client'

import { Button } from '@/app/_components/ui/button'
import { FormError } from '@/app/_components/ui/form-error'
import { FormSelect, FormText } from '@/app/_components/ui/form-fields'
import { useActionForm } from '@/app/_components/ui/use-action-form'
import type { SecondFactorView } from '@/lib/data'
import { signInputSchema } from '@/lib/inputs'
import { signRevision } from './actions'
import { BlockerList } from './blocker-list'
import { ConfirmFields, forgetConfirmation, UNCONFIRMED } from './confirm-fields'

interface SignFormProps {
  projectId: string
  revisionId: string
  version: number
  contentHash: string
  statement: string
  /** Capacities to choose from; empty: one of the signer's own words. */
  capacities: readonly string[]
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
      capacity: capacities.length === 0 ? 'lead engineer' : capacities.length === 1 ? (capacities[0] ?? '') : '',
      statement,
      ...UNCONFIRMED,
    },
    // What was typed to confirm one signature must not stand ready for another.
    onDone: () => forgetConfirmation(form),
  })
  return (
    <form className="form" onSubmit={submit}>
      <blockquote className="statement">{statement}</blockquote>
      <p className="small muted">
        SHA-256 of the signed content: <span className="hash">{contentHash}</span>
      </p>
      {capacities.length === 0 ? (
        <FormText control={form.control} name="capacity" label="Signing as" />
      ) : (
        <FormSelect
          control={form.control}
          name="capacity"
          label="Signing as"
          options={capacities.map((name) => ({ value: name, label: name }))}
        />
      )}
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
