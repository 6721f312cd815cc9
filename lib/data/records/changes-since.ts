import 'server-only'
import { readStoredSentences } from '@/lib/engine'
import type { ChangeSince } from '../views'
import { isVisibleTo, type LoadedRevision } from './loaded-revision'
import { getPersonName } from './revision-record'

/**
 * Who changed content since the version that the person saw; oldest first.
 * @param fabricatorCompanyId  of the person who is told: what another fabricator's people did is left out
 */
export function listChangesSince(
  loaded: LoadedRevision,
  seenVersion: number,
  fabricatorCompanyId: string | null,
): ChangeSince[] {
  return loaded.record.edits
    .filter((edit) => edit.version > seenVersion && isVisibleTo(fabricatorCompanyId, edit.companyId))
    .map((edit) => toChange(loaded, edit))
}

/** Who saved the design since the design's version that the person saw; oldest first. */
export function listDesignChangesSince(loaded: LoadedRevision, seenDesignVersion: number): ChangeSince[] {
  const saves = loaded.record.edits.filter((edit) => edit.part === 'design')
  const missed = Math.max(0, loaded.record.designVersion - seenDesignVersion)
  return missed === 0 ? [] : saves.slice(-missed).map((edit) => toChange(loaded, edit))
}

function toChange(loaded: LoadedRevision, edit: LoadedRevision['record']['edits'][number]): ChangeSince {
  return {
    by: getPersonName(loaded.record, edit.userId),
    at: edit.at.toISOString(),
    what: readStoredSentences('the summary of an edit', edit.summaryJson),
  }
}
