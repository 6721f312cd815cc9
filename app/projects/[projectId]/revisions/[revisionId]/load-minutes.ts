import { notFound } from 'next/navigation'
import { NotAllowedError } from '@/lib/data'

/** Minutes and needs are the team's own: a fabricator who types the address finds no such page. */
export async function loadMinutes<T>(load: () => Promise<T>): Promise<T> {
  try {
    return await load()
  } catch (error) {
    if (error instanceof NotAllowedError) notFound()
    throw error
  }
}
