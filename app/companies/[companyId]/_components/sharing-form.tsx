'use client'

import { MATRIX_SHARING_WORDS, SHEET_SHARING_WORDS } from '@/app/_components/fabrication/sharing-words'
import { Button } from '@/app/_components/ui/button'
import { FormError } from '@/app/_components/ui/form-error'
import { FormRadio } from '@/app/_components/ui/form-fields'
import { useActionForm } from '@/app/_components/ui/use-action-form'
import { companySharingInput } from '@/lib/inputs'
import type { Sharing } from '@/lib/review'
import { setCompanySharing } from '../../actions'

const MATRIX = [
  {
    value: 'not-shared',
    label: MATRIX_SHARING_WORDS['not-shared'],
    note: 'not used for the team’s results, nor are your flex tests',
  },
  {
    value: 'checked',
    label: MATRIX_SHARING_WORDS.checked,
    note: 'the team sees the verdict and a range (well inside, near or outside), never the limit; flex tests are not used',
  },
  {
    value: 'shown',
    label: MATRIX_SHARING_WORDS.shown,
    note: 'the team sees every row and limit, and your flex tests count',
  },
] as const

const SHEET = [
  { value: 'not-shared', label: SHEET_SHARING_WORDS['not-shared'] },
  { value: 'shown', label: SHEET_SHARING_WORDS.shown },
] as const

interface SharingFormProps {
  readonly companyId: string
  /** Left out where it is about further projects. */
  readonly projectId?: string
  readonly sharing: Sharing
  readonly seenVersion: number
}

/** What a project's team gets of the company's sheets. */
export function SharingForm({ companyId, projectId, sharing, seenVersion }: SharingFormProps) {
  const { form, submit, isPending, refusal, isDone } = useActionForm({
    schema: companySharingInput,
    action: setCompanySharing,
    defaultValues: { companyId, ...(projectId === undefined ? {} : { projectId }), ...sharing, seenVersion },
  })
  return (
    <form className="form" onSubmit={submit}>
      <FormRadio control={form.control} name="matrix" label="Capability matrix and limits" options={MATRIX} />
      <FormRadio control={form.control} name="shelf" label="Shelf" options={SHEET} />
      <FormRadio control={form.control} name="rates" label="Process rates and panel formats" options={SHEET} />
      <FormError refusal={refusal} />
      <div className="row">
        <Button type="submit" weight="strong" isPending={isPending} pendingLabel="Saving…">
          Save sharing
        </Button>
        {isDone && <span role="status">Saved.</span>}
      </div>
    </form>
  )
}
