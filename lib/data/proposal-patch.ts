import 'server-only'
import { type Design, liftDesign } from '@/lib/engine'
import { applyGuardedPatch, makeDesignPatch, type PatchOperation } from '@/lib/review'
import type { TransactionClient } from './client'

/** A proposal's patch and the design that it was made on, both in today's format. */
export interface ReadProposal {
  readonly base: Design
  readonly patch: readonly PatchOperation[]
}

/**
 * Reads what was proposed. A patch is written against one format of the design document: one on an older format is applied to
 * the base as it was stored, and written again for today's.
 */
export async function readProposal(
  tx: TransactionClient,
  row: { readonly baseHash: string; readonly patchJson: string },
): Promise<ReadProposal> {
  const { designJson } = await tx.designState.findUniqueOrThrow({ where: { hash: row.baseHash } })
  const patch = JSON.parse(row.patchJson) as PatchOperation[]
  const stored: unknown = JSON.parse(designJson)
  const base = liftDesign(stored) as Design
  if (base === stored) return { base, patch }
  const proposed = liftDesign(getProposedDesign(stored as Design, patch)) as Design
  return { base, patch: makeDesignPatch(base, proposed) }
}

/** @throws Error where a kept patch does not fit its own base: damage */
export function getProposedDesign(base: Design, patch: readonly PatchOperation[]): Design {
  const patched = applyGuardedPatch(base, patch, base)
  if (!patched.ok) throw new Error('a kept proposal does not fit the design that it was made on')
  return patched.document as Design
}
