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

export function makeAnswerBasis(record: Pick<RevisionRecord, 'designHash' | 'artwork' | 'artworkRoles'>): AnswerBasis {
  const files = record.artwork.map(({ originalName, sha256 }) => `${originalName} ${sha256}`).sort()
  const roles = record.artworkRoles.map(
    ({ fileName, sha256, role, side, layerNumber }) => `${fileName} ${sha256} ${role} ${side} ${layerNumber}`,
  )
  return { basisDesignHash: record.designHash, basisArtworkHash: hashJson([...files, ...roles.sort()]) }
}

/** Answers that were given on another design or other artwork than the present ones. */
function listOlderAnswers(record: RevisionRecord) {
  const present = makeAnswerBasis(record)
  return record.answers.filter(
    ({ basisDesignHash, basisArtworkHash }) =>
      basisDesignHash !== null &&
      (basisDesignHash !== present.basisDesignHash || basisArtworkHash !== present.basisArtworkHash),
  )
}

/** The designs that answers of these records were given on, by their hashes. */
export function loadAnsweredDesigns(
  tx: TransactionClient,
  records: readonly RevisionRecord[],
): Promise<ReadonlyMap<string, Design>> {
  const hashes = records.flatMap((record) =>
    listOlderAnswers(record).flatMap(({ basisDesignHash }) => basisDesignHash ?? []),
  )
  return loadDesignStates(tx, new Set(hashes))
}

/**
 * Inputs that changed since each answer was given, by item, in the trade's words; items without any are absent.
 *
 * @param bases  as loadAnsweredDesigns gives them
 */
export function findChangedInputs(
  record: RevisionRecord,
  design: Design,
  bases: ReadonlyMap<string, Design>,
): ReadonlyMap<string, readonly string[]> {
  const present = makeAnswerBasis(record)
  const answers = listOlderAnswers(record)
  const changesByHash = new Map<string, InputChanges['design']>()
  for (const { basisDesignHash } of answers) {
    const basis = bases.get(basisDesignHash ?? '')
    if (basisDesignHash === null || basis === undefined || changesByHash.has(basisDesignHash)) continue
    changesByHash.set(basisDesignHash, compareDesigns(basis, design))
  }
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
