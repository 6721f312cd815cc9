import 'server-only'
import { now } from '@/lib/config'
import type { Prisma } from '../generated/sqlite/client'
import { isCompanyRole } from '../records/authorization'
import { hashToken } from '../records/invitation-token'
import { readRole } from '../records/stored-words'
import { db } from '../store/client'
import { NotFoundError } from '../store/errors'
import type { InvitationView } from '../views'

/**
 * What a link offers, for anyone who holds it.
 * @throws NotFoundError for a token that was never given out
 */
export async function previewInvitation(token: string): Promise<InvitationView> {
  const invitation = await db().invitation.findUnique({
    where: { tokenHash: hashToken(token) },
    include: INVITATION_PARTS,
  })
  if (invitation === null) throw new NotFoundError('invitation')
  return toInvitationView(invitation, now())
}

export const INVITATION_PARTS = { project: true, company: true } as const satisfies Prisma.InvitationInclude
export type InvitationRow = Prisma.InvitationGetPayload<{ include: typeof INVITATION_PARTS }>

export function getState(
  invitation: Pick<InvitationRow, 'usedAt' | 'revokedAt' | 'expiresAt'>,
  at: Date,
): InvitationView['state'] {
  if (invitation.usedAt !== null) return 'used'
  if (invitation.revokedAt !== null) return 'revoked'
  return invitation.expiresAt <= at ? 'expired' : 'open'
}

export function toInvitationView(invitation: InvitationRow, at: Date): InvitationView {
  return {
    id: invitation.id,
    projectId: invitation.projectId,
    projectName: invitation.project?.name ?? null,
    role: readRole(invitation.role),
    companyId: invitation.companyId,
    companyRole:
      invitation.companyRole !== null && isCompanyRole(invitation.companyRole) ? invitation.companyRole : null,
    companyName: invitation.company.name,
    email: invitation.email,
    state: getState(invitation, at),
    createdAt: invitation.createdAt.toISOString(),
    expiresAt: invitation.expiresAt.toISOString(),
  }
}
