import 'server-only'
import {
  ARTWORK_READER_VERSION,
  type ArtworkFacts,
  artworkFactsSchema,
  type GivenRole,
  LAYER_ROLES,
} from '@/lib/artwork'
import { readStoredJson } from '@/lib/engine'
import { hashJson } from '@/lib/review'
import type { TransactionClient } from '../store/client'
import type { RevisionRecord } from './revision-record'
import { readWord } from './stored-words'

/** What is known of a revision's artwork beside its files. */
export interface LoadedArtwork {
  /** Of everything that a reading rests on; null where there is no file. */
  readonly key: string | null
  /** Null until these files, with these roles, have been read. */
  readonly facts: ArtworkFacts | null
}

type WithArtwork = Pick<RevisionRecord, 'artwork' | 'artworkRoles'>

/** What people said of files, as it counts now. */
export function listGivenRoles({ artworkRoles }: Pick<RevisionRecord, 'artworkRoles'>): GivenRole[] {
  return artworkRoles.map(({ fileName, sha256, role, side, layerNumber }) => ({
    fileName,
    sha256,
    role: readWord(role, LAYER_ROLES, 'role of an artwork file'),
    side: side === null ? null : readWord(side, ['top', 'bottom', 'inner'] as const, 'side of an artwork file'),
    layerNumber,
  }))
}

/** The same files under the same names with the same roles are one set, in whichever revision, and are read once. */
export function makeArtworkKey(record: WithArtwork): string | null {
  if (record.artwork.length === 0) return null
  const files = record.artwork.map(({ originalName, sha256 }) => `${originalName} ${sha256}`).sort()
  const roles = listGivenRoles(record)
    .map((role) => JSON.stringify(role))
    .sort()
  return hashJson({ kind: 'artwork', files, roles, readerVersion: ARTWORK_READER_VERSION })
}

/** In the order of the records. */
export async function loadArtwork(
  tx: TransactionClient,
  records: readonly WithArtwork[],
): Promise<readonly LoadedArtwork[]> {
  const keys = records.map(makeArtworkKey)
  const asked = [...new Set(keys.filter((key) => key !== null))]
  const rows = asked.length === 0 ? [] : await tx.artworkReading.findMany({ where: { key: { in: asked } } })
  const facts = new Map(
    rows.map(({ key, contentJson }) => [
      key,
      readStoredJson('what was read of artwork', artworkFactsSchema, contentJson),
    ]),
  )
  return keys.map((key) => ({ key, facts: key === null ? null : (facts.get(key) ?? null) }))
}
