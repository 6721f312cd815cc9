import 'server-only'
import type { Design } from '@/lib/engine'
import {
  type ComparedContent,
  type ContentComparison,
  listItemStates,
  readSignedContent,
  readSignedDesign,
} from '@/lib/review'
import { evaluateFor } from '../records/evaluation'
import type { LoadedRevision } from '../records/loaded-revision'
import { makeSnapshot } from '../records/snapshot'

/**
 * Sides of a comparison, as one person may see them: to a fabricator nothing of another fabricator, and results with the
 * own company's limits.
 */

/** The revision as it stands. */
export function makeComparedContent(loaded: LoadedRevision, fabricatorCompanyId: string | null): ComparedContent {
  const { snapshot } = makeSnapshot(loaded, fabricatorCompanyId)
  return {
    design: snapshot.design,
    artwork: listArtwork(loaded),
    evaluation: snapshot.evaluation?.results ?? null,
    answers: listItemStates(snapshot).map(({ item, state, decidedBy, answer }) => ({
      itemId: item.id,
      question: item.question,
      state,
      reason: answer?.reason ?? '',
      decidedBy,
      byName: answer?.answeredByName ?? '',
    })),
  }
}

/** The revision with another design in its place: as proposed, or as it was. Evaluated for the day of its results. */
export function makeVariantContent(
  loaded: LoadedRevision,
  fabricatorCompanyId: string | null,
  design: Design,
): ComparedContent {
  const evaluatedOn = loaded.record.evaluations[0]?.createdAt ?? loaded.record.createdAt
  return {
    design,
    artwork: listArtwork(loaded),
    evaluation: evaluateFor({ ...loaded, design }, { fabricatorCompanyId, evaluatedOn, isVariant: true }),
    answers: null,
  }
}

/** A side of a comparison: what a signature covers. */
export function makeSignedSide(
  loaded: LoadedRevision,
  fabricatorCompanyId: string | null,
  contentJson: string,
): ComparedContent {
  const signed = readSignedContent(contentJson)
  if (fabricatorCompanyId !== null) {
    // The signed results and answers are the team's: they name other fabricators' limits, and what they answered.
    return { ...makeVariantContent(loaded, fabricatorCompanyId, readSignedDesign(signed)), artwork: signed.artwork }
  }
  return {
    design: readSignedDesign(signed),
    artwork: signed.artwork,
    evaluation: signed.results,
    answers: signed.answers.map(({ itemId, question, state, reason }) => ({
      itemId,
      question,
      state,
      reason,
      decidedBy: 'unknown',
      byName: '',
    })),
  }
}

/** Questions of the items that a comparison names, in the wording of the reviews compared. */
export function listComparedQuestions(
  { verdicts, answers }: ContentComparison,
  sides: readonly LoadedRevision[],
): Readonly<Record<string, string>> {
  const named = new Set([...verdicts, ...answers].map(({ itemId }) => itemId))
  const items = sides.flatMap(({ template }) => template.items).filter(({ id }) => named.has(id))
  return Object.fromEntries(items.map(({ id, question }) => [id, question]))
}

function listArtwork({ record }: LoadedRevision): ComparedContent['artwork'] {
  return record.artwork.map(({ originalName, sha256 }) => ({ fileName: originalName, sha256 }))
}
