import 'server-only'
import {
  ARTWORK_READER_VERSION,
  type ArtworkFacts,
  artworkFactsSchema,
  type GivenRole,
  LAYER_ROLES,
  ON_PLAN_VERSION,
  type OnPlanFacts,
  onPlanFactsSchema,
} from '@/lib/artwork'
import { type Design, readOnce, readStoredJson } from '@/lib/engine'
import { groundOf } from '@/lib/engine/artwork-check'
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
  /** Of everything that a measurement on the plan rests on; null where there is no file, or the plan draws no part. */
  readonly onPlanKey: string | null
  /** Null until the files have been laid over this plan. */
  readonly onPlan: OnPlanFacts | null
}

export const NO_ARTWORK: LoadedArtwork = { key: null, facts: null, onPlanKey: null, onPlan: null }

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

/** The same files on the same outline, zones, holes and bends are measured once. */
function makeOnPlanKey(artworkKey: string | null, design: Design): string | null {
  const ground = artworkKey === null ? null : groundOf(design)
  if (ground === null) return null
  const bands = ground.bands.map(({ lineId, bendId, basis }) => [lineId, bendId, basis])
  return hashJson({ kind: 'on-plan', artworkKey, plan: ground.basis, bands, version: ON_PLAN_VERSION })
}

const readFacts = readOnce((json) => readStoredJson('what was read of artwork', artworkFactsSchema, json))
const readOnPlan = readOnce((json) => readStoredJson('what artwork does on a plan', onPlanFactsSchema, json))

/** In the order of the records. @param designs  of the same records */
export async function loadArtwork(
  tx: TransactionClient,
  records: readonly WithArtwork[],
  designs: readonly Design[],
): Promise<readonly LoadedArtwork[]> {
  const keys = records.map((record, at) => {
    const key = makeArtworkKey(record)
    const design = designs[at]
    return { key, onPlanKey: design === undefined ? null : makeOnPlanKey(key, design) }
  })
  const asked = [...new Set(keys.flatMap(({ key, onPlanKey }) => [key ?? [], onPlanKey ?? []].flat()))]
  const rows = asked.length === 0 ? [] : await tx.artworkReading.findMany({ where: { key: { in: asked } } })
  const contents = new Map(rows.map(({ key, contentJson }) => [key, contentJson]))
  return keys.map(({ key, onPlanKey }): LoadedArtwork => {
    const [facts, onPlan] = [contents.get(key ?? ''), contents.get(onPlanKey ?? '')]
    return {
      key,
      facts: facts === undefined ? null : readFacts(facts),
      onPlanKey,
      onPlan: onPlan === undefined ? null : readOnPlan(onPlan),
    }
  })
}
