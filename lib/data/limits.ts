import 'server-only'
import { findLimitProblem } from '@/lib/engine/catalogue'
import type { LimitInput } from '@/lib/inputs'
import { isAllowed } from '@/lib/review'
import {
  type Actor,
  loadCompanySubjects,
  mayInWorkspace,
  requireCompany,
  requireInWorkspace,
  type Standing,
} from './authorization'
import type { TransactionClient } from './client'
import { refuseField, refuseStale } from './errors'
import { toCompanyView } from './part-views'
import { read } from './read'
import { storeWorkspaceLimits } from './templates'
import type { CompanyView, LimitSheetView, Outcome } from './views'
import { write } from './write'

const WORKSPACE_OWNER = 'workspace'

/**
 * The limits that the workspace set, or one fabricator. The workspace's are for its team and admins to see, a
 * fabricator's for their own people and for the team of a project to which they chose to show them.
 */
export function getLimitSheet(actor: Actor, companyId: string | null): Promise<LimitSheetView> {
  return read(actor, async ({ tx, standing }) => {
    const owner = companyId === null ? findWorkspaceOwner(standing) : await findCompanyOwner(tx, standing, companyId)
    const rows = await tx.limit.findMany({ where: { ownerKey: owner.ownerKey }, orderBy: { key: 'asc' } })
    const users = await tx.user.findMany({
      where: { id: { in: [...new Set(rows.map(({ setById }) => setById))] } },
      select: { id: true, name: true },
    })
    const names = new Map(users.map(({ id, name }) => [id, name]))
    return {
      company: owner.company,
      mayEdit: owner.mayEdit,
      limits: rows.map((row) => ({
        key: row.key,
        value: row.value,
        note: row.note,
        version: row.version,
        setBy: { id: row.setById, name: names.get(row.setById) ?? 'somebody' },
        setAt: row.setAt.toISOString(),
      })),
    }
  })
}

interface LimitOwnerRecord {
  readonly ownerKey: string
  readonly company: CompanyView | null
  readonly mayEdit: boolean
}

function findWorkspaceOwner(standing: Standing): LimitOwnerRecord {
  // Whoever may start a project works to these limits: the team and the admins.
  requireInWorkspace(standing, 'project:create')
  return { ownerKey: WORKSPACE_OWNER, company: null, mayEdit: mayInWorkspace(standing, 'limits:edit-workspace') }
}

async function findCompanyOwner(
  tx: TransactionClient,
  standing: Standing,
  companyId: string,
): Promise<LimitOwnerRecord> {
  const { company, mayEdit } = await requireCompany(tx, standing, companyId, 'company:view-matrix')
  return { ownerKey: company.id, company: toCompanyView(company), mayEdit }
}

/**
 * Sets a limit, or takes it away with the value null. A workspace's makes a new version of its catalogue, which reviews
 * under way are offered. Under a fabricator's, recorded results show as stale until the revision is evaluated again, so
 * that nobody's signature lapses by a setting elsewhere.
 */
export function setLimit(actor: Actor, input: LimitInput): Promise<Outcome<{ version: number }>> {
  return write(actor, 'set-limit', input, async (context) => {
    const { tx, standing, at, record } = context
    const companyId = input.companyId ?? null
    if (companyId === null) requireInWorkspace(standing, 'limits:edit-workspace')
    else await requireCompany(tx, standing, companyId, 'limits:edit-fabricator')
    const ownerKey = companyId ?? WORKSPACE_OWNER
    const place = { ownerKey_key: { ownerKey, key: input.key } }
    const stored = await tx.limit.findUnique({ where: place })
    const version = stored?.version ?? 0
    if (version !== input.seenVersion) refuseStale(input.seenVersion, version, [], 'the limit')
    const problem = input.value === null ? null : findLimitProblem(input.key, input.value)
    if (problem !== null) refuseField('value', 'out-of-range', problem)
    const note = {
      subject: { kind: 'limit', id: input.key },
      companyId,
      details:
        companyId === null
          ? { key: input.key, value: input.value, before: stored?.value ?? null, note: input.note }
          : // The trail is read by people to whom the fabricator does not show the limit.
            { key: input.key },
    }
    if (input.value === null) {
      if (stored === null) return { version: 0 }
      await tx.limit.delete({ where: place })
      await record({ action: 'limit-removed', ...note })
      if (companyId === null) await storeWorkspaceLimits(context, input.note)
      return { version: 0 }
    }
    const fields = { value: input.value, note: input.note, version: version + 1, setById: standing.userId, setAt: at }
    await tx.limit.upsert({
      where: place,
      create: { ownerKey, companyId, key: input.key, ...fields },
      update: fields,
    })
    await record({ action: 'limit-set', ...note })
    if (companyId === null) await storeWorkspaceLimits(context, input.note)
    return { version: fields.version }
  })
}

/** Fabricators whose pages the person may open: the own ones, and those that take part in a project of their team. */
export function listCompanies(actor: Actor): Promise<readonly CompanyView[]> {
  return read(actor, async ({ tx, standing }) => {
    const ownIds = standing.companies.map(({ companyId }) => companyId)
    const projectIds = standing.memberships.map(({ projectId }) => projectId)
    const companies = await tx.company.findMany({
      where: {
        kind: 'fabricator',
        OR: [{ id: { in: ownIds } }, { participations: { some: { projectId: { in: projectIds } } } }],
      },
      orderBy: [{ nameKey: 'asc' }, { id: 'asc' }],
    })
    const subjects = await loadCompanySubjects(
      tx,
      companies.map(({ id }) => id),
    )
    return companies
      .filter(({ id }) => {
        const subject = subjects.get(id)
        return subject !== undefined && isAllowed(standing, 'company:view', subject)
      })
      .map(toCompanyView)
  })
}
