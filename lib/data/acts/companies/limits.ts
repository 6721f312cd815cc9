import 'server-only'
import { findLimitProblem } from '@/lib/engine/catalogue'
import type { LimitInput } from '@/lib/inputs'
import { write } from '../../consequences/write'
import { WORKSPACE_OWNER } from '../../reads/limits'
import { type Actor, requireCompany, requireInWorkspace } from '../../records/authorization'
import { refuseField, refuseStale } from '../../store/errors'
import type { ActResult } from '../../views'
import { storeWorkspaceLimits } from '../workspace/templates'

/**
 * Sets a limit, or takes it away with the value null. A workspace's makes a new version of its catalogue, which reviews
 * under way are offered. Under a fabricator's, recorded results show as stale until the revision is evaluated again, so
 * that nobody's signature lapses by a setting elsewhere.
 */
export function setLimit(actor: Actor, input: LimitInput): Promise<ActResult<{ version: number }>> {
  return write(actor, 'set-limit', input, async (context) => {
    const { tx, rights, at, record } = context
    const companyId = input.companyId ?? null
    if (companyId === null) requireInWorkspace(rights, 'limits:edit-workspace')
    else await requireCompany(tx, rights, companyId, 'limits:edit-fabricator')
    const ownerKey = companyId ?? WORKSPACE_OWNER
    const place = { ownerKey_key: { ownerKey, key: input.key } }
    const stored = await tx.limit.findUnique({ where: place })
    const version = stored?.version ?? 0
    if (version !== input.seenVersion) refuseStale(input.seenVersion, version, [], 'the limit')
    const problem = input.value === null ? null : findLimitProblem(input.key, input.value)
    if (problem !== null) refuseField('value', 'out-of-range', problem)
    const about = { subject: { kind: 'limit' as const, id: input.key }, companyId }
    const { key, note } = input
    // The trail is read by people to whom the fabricator does not show the limit: of it the key alone.
    const isTold = companyId === null
    if (input.value === null) {
      if (stored === null) return { version: 0 }
      await tx.limit.delete({ where: place })
      await record({
        action: 'limit-removed',
        ...about,
        details: isTold ? { key, value: null, before: stored.value, note } : { key },
      })
      if (companyId === null) await storeWorkspaceLimits(context, input.note)
      return { version: 0 }
    }
    const fields = { value: input.value, note: input.note, version: version + 1, setById: rights.userId, setAt: at }
    await tx.limit.upsert({
      where: place,
      create: { ownerKey, companyId, key: input.key, ...fields },
      update: fields,
    })
    const before = stored?.value ?? null
    await record({
      action: 'limit-set',
      ...about,
      details: isTold ? { key, value: input.value, before, note } : { key },
    })
    if (companyId === null) await storeWorkspaceLimits(context, input.note)
    return { version: fields.version }
  })
}
