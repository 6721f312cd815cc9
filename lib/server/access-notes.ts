import 'server-only'
import { type AccessPlace, type Actor, NotAllowedError, NotFoundError, noteAccess } from '@/lib/data'
import { getVisit } from './visit'

/** A file that the person is about to get. */
export async function noteFetched(actor: Actor, place: AccessPlace, fileName: string): Promise<void> {
  await noteAccess(actor, await getVisit(), { kind: 'file-fetched', place, what: fileName })
}

export async function noteOpened(actor: Actor, place: AccessPlace): Promise<void> {
  await noteAccess(actor, await getVisit(), { kind: 'revision-opened', place, what: '' })
}

/** Runs a reading, and notes where it was refused: what is absent looks the same to the reader, and may be a guessed id. */
export async function notingRefusal<T>(
  actor: Actor,
  { place, what }: { readonly place: AccessPlace; readonly what: string },
  run: () => Promise<T>,
): Promise<T> {
  try {
    return await run()
  } catch (error) {
    if (error instanceof NotFoundError || error instanceof NotAllowedError) {
      await noteAccess(actor, await getVisit(), { kind: 'refused', place, what })
    }
    throw error
  }
}
