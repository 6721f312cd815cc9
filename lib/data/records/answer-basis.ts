import 'server-only'
import type { Design } from '@/lib/engine'
import { compareDesigns, hashJson, type InputChanges, listChangedInputs } from '@/lib/review'
import type { TransactionClient } from '../store/client'
import { loadDesignStates } from './design-states'
import type { RevisionRecord } from './revision-record'

/** What an answer is given on: it stands while the inputs of its item are those. */
export interface AnswerBasis {
  readonly basisDesignHash: string
  readonly basisArtworkHash: string
}

export function makeAnswerBasis(record: Pick<RevisionRecord, 'designHash' | 'artwork'>): AnswerBasis {
  const files = record.artwork.map(({ originalName, sha256 }) => `${originalName} ${sha256}`).sort()
  return { basisDesignHash: record.designHash, basisArtworkHash: hashJson(files) }
}

/** Inputs that changed since each answer was given, by item, in the trade's words; items without any are absent. */
export async function loadChangedInputs(
  tx: TransactionClient,
  record: RevisionRecord,
  design: Design,
): Promise<ReadonlyMap<string, readonly string[]>> {
  const present = makeAnswerBasis(record)
  const answers = record.answers.filter(
    ({ basisDesignHash, basisArtworkHash }) =>
      basisDesignHash !== null &&
      (basisDesignHash !== present.basisDesignHash || basisArtworkHash !== present.basisArtworkHash),
  )
  const hashes = new Set(answers.flatMap(({ basisDesignHash }) => basisDesignHash ?? []))
  const bases = await loadDesignStates(tx, hashes)
  const changesByHash = new Map<string, InputChanges['design']>()
  for (const [hash, basis] of bases) changesByHash.set(hash, compareDesigns(basis, design))
  const changed = new Map<string, readonly string[]>()
  for (const { itemId, basisDesignHash, basisArtworkHash } of answers) {
    const inputs = listChangedInputs(itemId, {
      design: changesByHash.get(basisDesignHash ?? '') ?? [],
      isArtworkChanged: basisArtworkHash !== present.basisArtworkHash,
    })
    if (inputs.length > 0) changed.set(itemId, inputs)
  }
  return changed
}
