import 'server-only'
import { type Design, readStoredDesign } from '@/lib/engine'
import type { TransactionClient } from '../store/client'

/**
 * Keeps a design document under its hash, once, for what refers back to it: an answer that was given on it, a proposal
 * that was made on it.
 */
export async function keepDesignState(
  tx: TransactionClient,
  { hash, designJson }: { readonly hash: string; readonly designJson: string },
  at: Date,
): Promise<void> {
  // Writers come one at a time, so nobody can put it there between the look and the writing.
  const kept = await tx.designState.findUnique({ where: { hash }, select: { hash: true } })
  if (kept === null) await tx.designState.create({ data: { hash, designJson, createdAt: at } })
}

/** Designs by their hashes; those that were never kept are absent. */
export async function loadDesignStates(
  tx: TransactionClient,
  hashes: ReadonlySet<string>,
): Promise<ReadonlyMap<string, Design>> {
  if (hashes.size === 0) return new Map()
  const rows = await tx.designState.findMany({ where: { hash: { in: [...hashes] } } })
  return new Map(rows.map(({ hash, designJson }) => [hash, readStoredDesign(designJson)]))
}
