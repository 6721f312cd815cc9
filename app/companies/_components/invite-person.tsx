'use client'

import { InvitationForm } from '@/app/_components/people/invitation-form'
import { COMPANY_ROLE_WORDS } from '@/app/_components/review/words'
import { CopyText } from '@/app/_components/ui/copy-text'
import { FormSelect } from '@/app/_components/ui/form-fields'
import { Notice } from '@/app/_components/ui/notices'
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
  return (
    <InvitationForm
      schema={companyInvitationInput}
      action={inviteToCompany}
      defaultValues={{ companyId, role: 'member', email: '' }}
      roles={ROLES}
      renderMore={(control) =>
        projects.length > 0 && (
          <FormSelect control={control} name="projectId" label="Project" isOptional options={projects} />
        )
      }
      renderDone={({ link }) => (
        <>
          <Notice tone="done" role="status">
            <p>The invitation is ready. Pass the link on yourself: it is shown only once.</p>
          </Notice>
          <CopyText label="Link" text={link} />
        </>
      )}
      renderFrame={(form) => (
        <details>
          <summary>Invite somebody to the company</summary>
          {form}
        </details>
      )}
    />
  )
}
