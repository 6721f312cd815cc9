import 'server-only'
import type { TransactionClient } from './client'
import { refuseField } from './errors'
import { toCompanyView } from './part-views'
import type { AskedCompany, ParticipationState } from './views'
import type { WriteContext } from './write'

export const PARTICIPATION_STATES = ['asked', 'takes-part', 'declined', 'ended'] as const

/** Asks a company that has people of its own to take part in a project, or to name one more who joins. */
export async function askCompany(
  { tx, standing, at, record }: WriteContext,
  company: { readonly id: string; readonly kind: string; readonly name: string },
  { projectId, email }: { readonly projectId: string; readonly email: string },
): Promise<AskedCompany> {
  const place = { companyId: company.id, projectId }
  const stored = await tx.participation.findUnique({ where: { companyId_projectId: place } })
  const asked = { askedById: standing.userId, askedAt: at, askedFor: email }
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

/** @throws RefusalError where the company did not agree to take part in the project */
export async function requireTakesPart(tx: TransactionClient, companyId: string, projectId: string): Promise<void> {
  const stored = await tx.participation.findUnique({ where: { companyId_projectId: { companyId, projectId } } })
  if (stored?.state !== 'takes-part')
    refuseField('projectId', 'no-part', 'is no project in which the company takes part')
}

/** @throws Error for a state that this version does not know */
export function readParticipationState(state: string): ParticipationState {
  const known = PARTICIPATION_STATES.find((candidate) => candidate === state)
  if (known === undefined) throw new Error(`a company's part in a project has the unknown state "${state}"`)
  return known
}
