'use client'

import { InvitationForm } from '@/app/_components/people/invitation-form'
import { ROLE_WORDS } from '@/app/_components/review/words'
import { CopyText } from '@/app/_components/ui/copy-text'
import { FormText } from '@/app/_components/ui/form-fields'
import { Notice } from '@/app/_components/ui/notices'
import { Timestamp } from '@/app/_components/ui/timestamp'
import type { AskedCompany, CreatedInvitation } from '@/lib/data'
import { invitationInput } from '@/lib/inputs'
import { createInvitation } from '../../../actions'

const NEW_NAME =
  'A company known to the workspace is asked to take part. A new name creates a company of this project only.'

const ROLES = [
  { value: 'member', label: ROLE_WORDS.member, note: 'edits revisions and answers the checklist' },
  { value: 'lead', label: ROLE_WORDS.lead, note: 'also approves waivers, moves and releases' },
  {
    value: 'quality',
    label: ROLE_WORDS.quality,
    note: 'reviews, comments, approves waivers and signs; changes no content',
  },
  {
    value: 'fabricator',
    label: ROLE_WORDS.fabricator,
    note: 'sees only revisions shared with their company; comments and declares',
  },
  { value: 'observer', label: ROLE_WORDS.observer, note: 'reads the project' },
  { value: 'auditor', label: ROLE_WORDS.auditor, note: 'reads everything of the project, its trail and exports' },
] as const

export function InviteForm({ projectId, fabricatorNames }: { projectId: string; fabricatorNames: readonly string[] }) {
  return (
    <InvitationForm
      schema={invitationInput}
      action={createInvitation}
      defaultValues={{ projectId, role: 'member', email: '' }}
      roles={ROLES}
      renderMore={(control, role) =>
        role === 'fabricator' && (
          <FormText
            control={control}
            name="companyName"
            label="Fabricator’s company"
            hint={
              fabricatorNames.length === 0
                ? NEW_NAME
                : `Already in this project: ${fabricatorNames.join(', ')}. ${NEW_NAME}`
            }
          />
        )
      }
      renderDone={(created) => (created.isAsked ? <Asked created={created} /> : <Invited created={created} />)}
    />
  )
}

function Invited({ created: { invitation, link } }: { created: CreatedInvitation }) {
  return (
    <>
      <Notice tone="done" role="status">
        <p>
          The invitation is ready: {ROLE_WORDS[invitation.role]}, for {invitation.companyName}, until{' '}
          <Timestamp at={invitation.expiresAt} /> UTC.
        </p>
        <p>Pass the link on yourself. It is shown only once; only its hash is kept.</p>
      </Notice>
      <CopyText label="Link" text={link} />
    </>
  )
}

function Asked({ created: { company } }: { created: AskedCompany }) {
  return (
    <Notice tone="done" role="status">
      <p>{company.name} was asked to take part. No link was made: the company names its own people.</p>
      <p>One of its administrators decides whether it takes part, who joins, and which sheets the team sees.</p>
    </Notice>
  )
}
