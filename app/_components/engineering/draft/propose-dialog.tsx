'use client'

import { useRouter } from 'next/navigation'
import { useEffect, useMemo, useState } from 'react'
import { proposeChange } from '@/app/_components/review/actions'
import type { ShownRefusal } from '@/app/_components/ui/action-result'
import { SideDialog } from '@/app/_components/ui/dialog'
import { FormSelect, FormText, FormTextArea } from '@/app/_components/ui/form-fields'
import { FormFoot } from '@/app/_components/ui/form-foot'
import { SelectField } from '@/app/_components/ui/select-field'
import { useActionForm } from '@/app/_components/ui/use-action-form'
import { paths } from '@/lib/addresses'
import { proposeChangeInput } from '@/lib/inputs'
import { compareDesigns } from '@/lib/review'
import { useDraft } from './draft-context'
import { dropKeptDraft } from './kept-draft'
import type { ProposingContext } from './stored-revision'

const KINDS = [
  { value: 'note', label: 'note' },
  { value: 'should-change', label: 'should change' },
  { value: 'must-change', label: 'must change' },
] as const

/** Changes listed before the rest is only counted. */
const MAX_CHANGES_SHOWN = 8

interface ProposeDialogProps {
  readonly proposing: ProposingContext
  readonly onClose: () => void
  /** Somebody saved meanwhile: the draft is to be brought onto the present design first. */
  readonly onStale: (refusal: Extract<ShownRefusal, { kind: 'stale' }>) => void
}

/** Sends the draft as a proposal instead of saving it. The design as stored stays as it is until it is accepted. */
export function ProposeDialog({ proposing, onClose, onStale }: ProposeDialogProps) {
  const { state, read, stored, dispatch, setProposing } = useDraft()
  const router = useRouter()
  // The draft as it was when the dialog opened: behind the dialog nobody edits it.
  const [proposed] = useState(() => read().design)
  const changes = useMemo(() => compareDesigns(state.stored, proposed), [state.stored, proposed])
  const { form, submit, isPending, refusal } = useActionForm({
    schema: proposeChangeInput,
    action: proposeChange,
    defaultValues: {
      revisionId: stored.revisionId,
      seenVersion: state.seenVersion,
      design: proposed,
      title: '',
      why: '',
      kind: 'should-change',
    },
    onDone: ({ proposalId }) => {
      // The draft has become the proposal: nothing of it is left unsaved.
      dispatch({ type: 'replace', design: state.stored })
      dropKeptDraft(stored.revisionId)
      setProposing(false)
      onClose()
      router.push(paths.proposal(proposing.projectId, stored.revisionId, proposalId))
    },
  })
  const companyId = form.watch('companyId')
  useEffect(() => {
    if (refusal?.kind === 'stale') onStale(refusal)
  }, [refusal, onStale])
  return (
    <SideDialog
      title="Propose these changes"
      isOpen
      onOpenChange={(isOpen) => {
        if (!isOpen) onClose()
      }}
      isBusy={isPending}
    >
      <ul className="changes small">
        {changes.slice(0, MAX_CHANGES_SHOWN).map((change) => (
          <li key={`${change.path.join('/')} ${change.sentence}`}>{change.sentence}</li>
        ))}
        {changes.length > MAX_CHANGES_SHOWN && <li>and {changes.length - MAX_CHANGES_SHOWN} more</li>}
      </ul>
      <form className="form" onSubmit={submit}>
        <FormText control={form.control} name="title" label="Subject" maxLength={120} />
        <FormTextArea control={form.control} name="why" label="Why" rows={4} />
        <FormSelect
          control={form.control}
          name="kind"
          label="Kind"
          options={KINDS}
          hint="A must-change blocks the revision in fabricator review until it is settled."
        />
        {!proposing.isFabricator && proposing.fabricators.length > 0 && (
          <SelectField
            label="Who takes part"
            value={companyId ?? 'team'}
            options={[
              { value: 'team', label: 'the team only' },
              ...proposing.fabricators.map(({ id, name }) => ({ value: id, label: `the team and ${name}` })),
            ]}
            onChange={(value) => form.setValue('companyId', value === 'team' ? undefined : value)}
          />
        )}
        <FormFoot
          refusal={refusal}
          isPending={isPending}
          weight="strong"
          label="Propose"
          pendingLabel="Proposing…"
          onCancel={onClose}
        />
      </form>
    </SideDialog>
  )
}
