import 'server-only'
import { passLimitsOn } from '@/lib/engine/catalogue'
import {
  type Actor,
  mayInWorkspace,
  type PersonRights,
  requireCompany,
  requireInWorkspace,
} from '../records/authorization'
import { toCompanyView } from '../records/part-views'
import type { TransactionClient } from '../store/client'
import type { CompanyView, LimitListView } from '../views'
import { read } from './read'

export const WORKSPACE_OWNER = 'workspace'

/**
 * The limits that the workspace set, or one fabricator. The workspace's are for its team and admins to see, a
 * fabricator's for their own people and for the team of a project to which they chose to show them.
 */
export function getLimitList(actor: Actor, companyId: string | null): Promise<LimitListView> {
  return read(actor, async ({ tx, rights }) => {
    const owner = companyId === null ? findWorkspaceOwner(rights) : await findCompanyOwner(tx, rights, companyId)
    const rows = await tx.limit.findMany({ where: { ownerKey: owner.ownerKey }, orderBy: { key: 'asc' } })
    const users = await tx.user.findMany({
      where: { id: { in: [...new Set(rows.map(({ setById }) => setById))] } },
      select: { id: true, name: true },
    })
    const names = new Map(users.map(({ id, name }) => [id, name]))
    return {
      company: owner.company,
      mayEdit: owner.mayEdit,
      limits: passLimitsOn(rows).map((row) => ({
        key: row.key,
        value: row.value,
        note: row.note,
        // Nobody has set the successor of a limit that is gone.
        version: rows.some(({ key }) => key === row.key) ? row.version : 0,
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

function findWorkspaceOwner(rights: PersonRights): LimitOwnerRecord {
  // Anyone who may start a project works to these limits: the team and the admins.
  requireInWorkspace(rights, 'project:create')
  return { ownerKey: WORKSPACE_OWNER, company: null, mayEdit: mayInWorkspace(rights, 'limits:edit-workspace') }
}

async function findCompanyOwner(
  tx: TransactionClient,
  rights: PersonRights,
  companyId: string,
): Promise<LimitOwnerRecord> {
  const { company, mayEdit } = await requireCompany(tx, rights, companyId, 'company:view-matrix')
  return { ownerKey: company.id, company: toCompanyView(company), mayEdit }
}
