import type { Metadata } from 'next'
import { redirect } from 'next/navigation'
import { COMPANY_ROLE_WORDS, ROLE_WORDS } from '@/app/_components/review/words'
import { readOrNotFound } from '@/app/_components/shell/require-actor'
import { LinkButton } from '@/app/_components/ui/button'
import { Notice } from '@/app/_components/ui/notices'
import { PageHead } from '@/app/_components/ui/section'
import { Timestamp } from '@/app/_components/ui/timestamp'
import { paths } from '@/lib/addresses'
import { previewInvitation } from '@/lib/data'
import { getActor } from '@/lib/server'
import { AcceptForm, JoinForm } from './_components/accept-forms'

export const metadata: Metadata = { title: 'Invitation', referrer: 'no-referrer' }

const CLOSED = {
  used: 'This invitation was already used. Each link works once, for one person: ask for a new one.',
  expired: 'This invitation has expired: ask for a new one.',
  revoked: 'This invitation was revoked. Ask the person who sent it.',
} as const

export default async function InvitationPage({ params }: { params: Promise<{ token: string }> }) {
  const { token } = await params
  const invitation = await readOrNotFound(() => previewInvitation(token))
  const actor = await getActor()
  // Anyone who joined by this link has no more use for its page, be it right after joining or from an old message.
  const { projectId } = invitation
  const isInProject = actor?.memberships.some((membership) => membership.projectId === projectId) ?? false
  if (projectId !== null && isInProject && invitation.state === 'used') redirect(paths.project(projectId))
  const landing = projectId === null ? paths.company(invitation.companyId) : paths.project(projectId)
  return (
    <div className="page-narrow">
      <PageHead
        title={`Join “${invitation.projectName ?? invitation.companyName}”`}
        under={
          <p>
            As{' '}
            {invitation.companyRole === null ? ROLE_WORDS[invitation.role] : COMPANY_ROLE_WORDS[invitation.companyRole]}
            , for {invitation.companyName}. Open until <Timestamp at={invitation.expiresAt} /> UTC
            {invitation.email !== null && `, for ${invitation.email} only`}.
          </p>
        }
      />
      {invitation.state !== 'open' ? (
        <>
          <Notice tone="refused">
            <p>{CLOSED[invitation.state]}</p>
          </Notice>
          <p className="above-wide">
            <LinkButton href={paths.home()}>Home page</LinkButton>
          </p>
        </>
      ) : actor === null ? (
        <AcceptForm token={token} email={invitation.email} landing={landing} />
      ) : (
        <JoinForm token={token} name={actor.name} landing={landing} />
      )}
    </div>
  )
}
