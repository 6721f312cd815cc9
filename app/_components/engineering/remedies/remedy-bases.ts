import { paths } from '@/lib/addresses'
import type { RemedyBasisView } from '@/lib/data'

/** Bases of the fabricators; null where the server does not give them: remedies then come without, and say so. */
export async function fetchRemedyBases(revisionId: string): Promise<readonly RemedyBasisView[] | null> {
  try {
    const response = await fetch(paths.remedyBases(revisionId))
    return response.ok ? ((await response.json()) as readonly RemedyBasisView[]) : null
  } catch {
    return null
  }
}
