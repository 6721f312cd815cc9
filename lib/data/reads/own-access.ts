import 'server-only'
import { now } from '@/lib/config'
import type { Actor } from '../records/authorization'
import type { IdentityView, SecondFactorView, SessionView } from '../views'
import { read } from './read'

export function getOwnIdentity(actor: Actor): Promise<IdentityView | null> {
  return read(actor, async ({ tx, rights }) => {
    const row = await tx.identity.findFirst({ where: { userId: rights.userId } })
    return row === null ? null : { issuer: row.issuer, email: row.email, createdAt: row.createdAt.toISOString() }
  })
}

export function getSecondFactor(actor: Actor): Promise<SecondFactorView> {
  return read(actor, async ({ tx, rights }) => {
    const user = await tx.user.findUniqueOrThrow({
      where: { id: rights.userId },
      include: { passkeys: { orderBy: { createdAt: 'asc' } }, recoveryCodes: { where: { usedAt: null } } },
    })
    return {
      hasCodes: user.totpSealed !== null,
      recoveryCodesLeft: user.recoveryCodes.length,
      passkeys: user.passkeys.map((passkey) => ({
        id: passkey.id,
        name: passkey.name,
        createdAt: passkey.createdAt.toISOString(),
        usedAt: passkey.usedAt?.toISOString() ?? null,
      })),
    }
  })
}

/** The sessions that go on, the one that asks first. */
export function listOwnSessions(actor: Actor): Promise<readonly SessionView[]> {
  return read(actor, async ({ tx, rights }) => {
    const rows = await tx.session.findMany({
      where: { userId: rights.userId, endedAt: null, expiresAt: { gt: now() } },
      orderBy: [{ seenAt: 'desc' }, { id: 'asc' }],
    })
    const views = rows.map((row) => ({
      id: row.id,
      device: row.device,
      createdAt: row.createdAt.toISOString(),
      seenAt: row.seenAt.toISOString(),
      isThisOne: row.id === actor.sessionId,
    }))
    return views.toSorted((a, b) => Number(b.isThisOne) - Number(a.isThisOne))
  })
}
