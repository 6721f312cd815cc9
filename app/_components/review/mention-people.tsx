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
