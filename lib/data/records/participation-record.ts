import 'server-only'
import type { TransactionClient } from '../store/client'
import { refuseField } from '../store/errors'
import type { ParticipationState } from '../views'

export const PARTICIPATION_STATES = ['asked', 'takes-part', 'declined', 'ended'] as const

/** @throws RefusalError where the company did not agree to take part in the project */
export async function requireTakesPart(tx: TransactionClient, companyId: string, projectId: string): Promise<void> {
  const stored = await tx.participation.findUnique({ where: { companyId_projectId: { companyId, projectId } } })
  if (stored?.state !== 'takes-part')
    refuseField('projectId', 'no-part', 'is not a project in which the company takes part')
}

/** @throws Error for a state that this version does not know */
export function readParticipationState(state: string): ParticipationState {
  const known = PARTICIPATION_STATES.find((candidate) => candidate === state)
  if (known === undefined) throw new Error(`a company's part in a project has the unknown state "${state}"`)
  return known
}
