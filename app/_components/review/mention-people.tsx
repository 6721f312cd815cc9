'use client'

import { createContext, type ReactNode, useContext } from 'react'
import type { ThreadReader } from '@/lib/data'

const People = createContext<readonly ThreadReader[]>([])

/** Makes known to the comment fields below whom they can mention. */
export function MentionPeople({ people, children }: { people: readonly ThreadReader[]; children: ReactNode }) {
  return <People value={people}>{children}</People>
}

/**
 * People who see a thread with this audience.
 * @param companyId  the fabricator that takes part; null is the team only
 */
export function useMentionable(companyId: string | null): readonly ThreadReader[] {
  return useContext(People).filter(
    ({ fabricatorCompanyId }) => fabricatorCompanyId === null || fabricatorCompanyId === companyId,
  )
}

export const NOBODY_NAMED = { value: '', label: 'nobody in particular' }

/**
 * People who may be named to answer a thread; the server refuses those who cannot.
 * @param companyId  the fabricator that takes part; null is the team only
 */
export function useThreadOwners(companyId: string | null): readonly { value: string; label: string }[] {
  return useMentionable(companyId).map(({ id, name }) => ({ value: id, label: name }))
}
