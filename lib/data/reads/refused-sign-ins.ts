import 'server-only'
import { type Actor, requireInWorkspace } from '../records/authorization'
import type { RefusedSignInView } from '../views'
import { read } from './read'

const MOST = 500

/** Attempts to sign in that were refused, newest first. For an admin. */
export function listRefusedSignIns(actor: Actor): Promise<readonly RefusedSignInView[]> {
  return read(actor, async ({ tx, rights }) => {
    requireInWorkspace(rights, 'account:manage')
    const rows = await tx.refusedSignIn.findMany({ orderBy: [{ at: 'desc' }, { id: 'desc' }], take: MOST })
    const ids = [...new Set(rows.flatMap(({ userId }) => userId ?? []))]
    const users = await tx.user.findMany({ where: { id: { in: ids } }, select: { id: true, name: true } })
    const names = new Map(users.map(({ id, name }) => [id, name]))
    return rows.map(({ id, at, userId, sourceKey, reason, device }) => ({
      id,
      at: at.toISOString(),
      name: userId === null ? null : (names.get(userId) ?? 'somebody'),
      reason,
      device,
      source: sourceKey.slice(0, 8),
    }))
  })
}
