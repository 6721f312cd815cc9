'use client'

import { useState } from 'react'
import { ROLE_WORDS } from '@/app/_components/review/words'
import { Button } from '@/app/_components/ui/button'
import { CopyText } from '@/app/_components/ui/copy-text'
import { FormError } from '@/app/_components/ui/form-error'
import { FormRadio, FormText } from '@/app/_components/ui/form-fields'
import { Notice } from '@/app/_components/ui/notices'
import { Timestamp } from '@/app/_components/ui/timestamp'
import { useActionForm } from '@/app/_components/ui/use-action-form'
import type { AskedCompany, CreatedInvitation } from '@/lib/data'
import { invitationInput } from '@/lib/inputs'
import { createInvitation } from '../../../actions'

const NEW_NAME =
  'A company known to the workspace is asked to take part. A new name creates a company of this project only.'

const ROLES = [
  { value: 'member', label: ROLE_WORDS.member, note: 'edits revisions and answers the checklist' },
  { value: 'lead', label: ROLE_WORDS.lead, note: 'also approves waivers, moves, signs and releases' },
  {
    value: 'fabricator',
    label: ROLE_WORDS.fabricator,
    note: 'sees only revisions shared with their company; comments and declares',
  },
  { value: 'observer', label: ROLE_WORDS.observer, note: 'reads the project' },
] as const

export function InviteForm({ projectId, fabricatorNames }: { projectId: string; fabricatorNames: readonly string[] }) {
  const [created, setCreated] = useState<CreatedInvitation | AskedCompany | null>(null)
  const { form, submit, isPending, refusal } = useActionForm({
    schema: invitationInput,
    action: createInvitation,
    defaultValues: { projectId, role: 'member', email: '' },
    onDone: setCreated,
  })
  if (created !== null) {
    return (
      <div className="stack">
        {created.isAsked ? <Asked created={created} /> : <Invited created={created} />}
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
  const role = form.watch('role')
  return (
    <form className="form" onSubmit={submit}>
      <FormRadio control={form.control} name="role" label="Joins as" options={ROLES} />
      {role === 'fabricator' && (
        <FormText
          control={form.control}
          name="companyName"
          label="Fabricator’s company"
          hint={
            fabricatorNames.length === 0
              ? NEW_NAME
              : `Already in this project: ${fabricatorNames.join(', ')}. ${NEW_NAME}`
          }
        />
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
