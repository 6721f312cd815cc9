import 'server-only'
import type { WriteContext } from '../../consequences/write'
import { toCompanyView } from '../../records/part-views'
import type { AskedCompany } from '../../views'

/** Asks a company that has people of its own to take part in a project, or to name one more who joins. */
export async function askCompany(
  { tx, rights, at, record }: WriteContext,
  company: { readonly id: string; readonly kind: string; readonly name: string },
  { projectId, email }: { readonly projectId: string; readonly email: string },
): Promise<AskedCompany> {
  const place = { companyId: company.id, projectId }
  const stored = await tx.participation.findUnique({ where: { companyId_projectId: place } })
  const asked = { askedById: rights.userId, askedAt: at, askedFor: email }
  if (stored === null) {
    await tx.participation.create({ data: { ...place, state: 'asked', ...asked } })
  } else {
    const state = stored.state === 'takes-part' ? 'takes-part' : 'asked'
    await tx.participation.update({ where: { id: stored.id }, data: { ...asked, state, version: { increment: 1 } } })
  }
  await record({
    action: 'company-asked',
    subject: { kind: 'company', id: company.id },
    projectId,
    companyId: company.id,
    details: { company: company.name, for: email },
  })
  return { isAsked: true, company: toCompanyView(company) }
}
