import 'server-only'
import type { CompanyRoleInput, RemoveCompanyPersonInput } from '@/lib/inputs'
import { write } from '../../consequences/write'
import { type Actor, requireCompany } from '../../records/authorization'
import type { TransactionClient } from '../../store/client'
import { NotFoundError, refuseClash } from '../../store/errors'
import type { ActResult } from '../../views'

/** Says what one of the company's people is in it: also how an admin of the workspace names the first administrator. */
export function setCompanyRole(actor: Actor, input: CompanyRoleInput): Promise<ActResult<null>> {
  return write(actor, 'set-company-role', input, async ({ tx, rights, record }) => {
    const { company } = await requireCompany(tx, rights, input.companyId, 'company:admit')
    const person = await requirePerson(tx, input)
    if (person.role === input.role) return null
    await requireAnotherAdministrator(tx, person)
    await tx.companyPerson.update({ where: { id: person.id }, data: { role: input.role } })
    await record({
      action: 'company-role-changed',
      subject: { kind: 'account', id: person.userId },
      companyId: company.id,
      details: { company: company.name, person: person.user.name, role: input.role, before: person.role },
    })
    return null
  })
}

/** Takes somebody out of the company, and with that out of every project where they are for it. */
export function removeCompanyPerson(actor: Actor, input: RemoveCompanyPersonInput): Promise<ActResult<null>> {
  return write(actor, 'remove-company-person', input, async ({ tx, rights, record }) => {
    const { company } = await requireCompany(tx, rights, input.companyId, 'company:admit')
    const person = await requirePerson(tx, input)
    await requireAnotherAdministrator(tx, person)
    await tx.membership.deleteMany({ where: { userId: person.userId, companyId: company.id, role: 'fabricator' } })
    await tx.companyPerson.delete({ where: { id: person.id } })
    await record({
      action: 'company-person-removed',
      subject: { kind: 'account', id: person.userId },
      companyId: company.id,
      details: { company: company.name, person: person.user.name, role: person.role },
    })
    return null
  })
}

async function requirePerson(tx: TransactionClient, { companyId, userId }: { companyId: string; userId: string }) {
  const person = await tx.companyPerson.findUnique({
    where: { companyId_userId: { companyId, userId } },
    include: { user: { select: { name: true } } },
  })
  if (person === null) throw new NotFoundError('person of this company')
  return person
}

/** Without one nobody could admit people, agree to a project or take anything back. */
async function requireAnotherAdministrator(
  tx: TransactionClient,
  { id, companyId, role }: { readonly id: string; readonly companyId: string; readonly role: string },
): Promise<void> {
  if (role !== 'administrator') return
  const others = await tx.companyPerson.count({
    where: { companyId, role: 'administrator', id: { not: id }, user: { disabledAt: null } },
  })
  if (others === 0) refuseClash('This is the last administrator of the company. Make somebody else one first.')
}
