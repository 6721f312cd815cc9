import 'server-only'

import { notFound, redirect } from 'next/navigation'
import { paths } from '@/lib/addresses'
import { type Actor, isWorkspaceEmpty, NotAllowedError, NotFoundError } from '@/lib/data'
import { getActor, inPageTurn } from '@/lib/server'

/** Who is asking for this page; a visitor is led to the sign-in page, or to the set-up of an empty workspace. */
export async function requireActor(here?: string): Promise<Actor> {
  const actor = await getActor()
  if (actor !== null) return actor
  if (await isWorkspaceEmpty()) redirect(paths.setup())
  redirect(paths.signIn(here))
}

/** Reads what a page shows; what is absent or not theirs to see becomes the not-found page, the same for both. */
export async function readOrNotFound<T>(read: () => Promise<T>): Promise<T> {
  try {
    return await read()
  } catch (error) {
    if (error instanceof NotFoundError || error instanceof NotAllowedError) notFound()
    throw error
  }
}

/** As `readOrNotFound`, for what is computed from results: in the person's turn among all who ask for such pages. */
export function computeOrNotFound<T>(actor: Actor, read: () => Promise<T>): Promise<T> {
  return readOrNotFound(() => inPageTurn(actor, read))
}
