'use client'

import { useState } from 'react'
import { COMPANY_ROLE_WORDS } from '@/app/_components/review/words'
import { Button } from '@/app/_components/ui/button'
import { CopyText } from '@/app/_components/ui/copy-text'
import { FormError } from '@/app/_components/ui/form-error'
import { FormRadio, FormSelect, FormText } from '@/app/_components/ui/form-fields'
import { Notice } from '@/app/_components/ui/notices'
import { useActionForm } from '@/app/_components/ui/use-action-form'
import type { CreatedInvitation } from '@/lib/data'
import { companyInvitationInput } from '@/lib/inputs'
import { inviteToCompany } from '../actions'

const ROLES = [
  {
    value: 'administrator',
    label: COMPANY_ROLE_WORDS.administrator,
    note: 'admits people, agrees to projects, chooses what is shown; also keeps the sheets',
  },
  { value: 'sheet-writer', label: COMPANY_ROLE_WORDS['sheet-writer'], note: 'keeps sheets and limits' },
  { value: 'member', label: COMPANY_ROLE_WORDS.member, note: 'reads sheets; takes part in reviews' },
] as const

interface InvitePersonProps {
  readonly companyId: string
  readonly projects: readonly { readonly value: string; readonly label: string }[]
}

/** A link that admits one person to the company. */
export function InvitePerson({ companyId, projects }: InvitePersonProps) {
  const [created, setCreated] = useState<CreatedInvitation | null>(null)
  const { form, submit, isPending, refusal } = useActionForm({
    schema: companyInvitationInput,
    action: inviteToCompany,
    defaultValues: { companyId, role: 'member', email: '' },
    onDone: setCreated,
  })
  if (created !== null) {
    return (
      <div className="stack">
        <Notice tone="done" role="status">
          <p>The invitation is ready. Pass the link on yourself: it is shown only once.</p>
        </Notice>
        <CopyText label="Link" text={created.link} />
        <div className="row">
          <Button
            onPress={() => {
              form.reset()
              setCreated(null)
            }}
          >
            Invite another
          </Button>
        </div>
      </div>
    )
  }
  return (
    <details>
      <summary>Invite somebody to the company</summary>
      <form className="form" onSubmit={submit}>
        <FormRadio control={form.control} name="role" label="Joins as" options={ROLES} />
        {projects.length > 0 && (
          <FormSelect control={form.control} name="projectId" label="Project" isOptional options={projects} />
        )}
        <FormText
          control={form.control}
          name="email"
          label="E-mail address"
          type="email"
          isOptional
          hint="When given, only an account with this address can use the link."
        />
        <FormError refusal={refusal} />
        <div className="row">
          <Button type="submit" weight="strong" isPending={isPending} pendingLabel="Creating the link…">
            Create link
          </Button>
        </div>
      </form>
    </details>
  )
}
