import { z } from 'zod'
import { readStoredJson } from '@/lib/engine'

/** What changed after a signature. `about` names whose matter it is: a fabricator's id, or null for the team's own; absent, it is everybody's. */
export interface VoidingChange {
  readonly sentence: string
  readonly about?: string | null
}

const schema = z.array(z.union([z.string(), z.object({ sentence: z.string(), about: z.string().nullable() })]))

/** Sentences for everybody are stored as they are, as they always were. */
export function writeVoidingChanges(changes: readonly VoidingChange[]): string {
  return JSON.stringify(changes.map(({ sentence, about }) => (about === undefined ? sentence : { sentence, about })))
}

/**
 * What voided a signature, as one side may read it: a fabricator learns nothing of another, nor of what the team says among
 * itself.
 *
 * @param fabricatorCompanyId  null for the team
 */
export function readVoidingChanges(changesJson: string | null, fabricatorCompanyId: string | null): string[] {
  if (changesJson === null) return []
  const changes = readStoredJson('what voided a signature', schema, changesJson)
  return changes.flatMap((change) => {
    if (typeof change === 'string') return [change]
    return fabricatorCompanyId === null || change.about === fabricatorCompanyId ? [change.sentence] : []
  })
}

/** For the trail, of which each fabricator's package holds an extract. */
export function listPublicChanges(changes: readonly VoidingChange[]): string[] {
  const open = changes.filter(({ about }) => about === undefined).map(({ sentence }) => sentence)
  return open.length < changes.length ? [...open, 'what was declared, decided or said about the revision'] : open
}
