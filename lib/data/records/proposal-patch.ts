import 'server-only'
import { type Design, parseStoredJson, readStoredDesignDocument } from '@/lib/engine'
import { applyGuardedPatch, hashDesign, makeDesignPatch, type PatchOperation, readStoredPatch } from '@/lib/review'
import type { TransactionClient } from '../store/client'

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
  const patch = readStoredPatch(row.patchJson)
  const stored = parseStoredJson('the design of a proposal', designJson)
  const base = readStoredDesignDocument(stored)
  if (hashDesign(base) === row.baseHash) return { base, patch }
  return { base, patch: makeDesignPatch(base, getProposedDesign(stored, patch)) }
}

/**
 * The design with a patch applied that was made on it, in today's format.
 *
 * @param base  in the format that the patch was written against
 * @throws Error where a kept patch does not fit its own base: damage
 */
export function getProposedDesign(base: unknown, patch: readonly PatchOperation[]): Design {
  const patched = applyGuardedPatch(base, patch, base)
  if (!patched.ok) throw new Error('a kept proposal does not fit the design that it was made on')
  return readStoredDesignDocument(patched.document)
}
