import 'server-only'
import type { Design } from '@/lib/engine'
import { readStoredSentences } from '@/lib/engine'
import type { DoneInput } from '@/lib/inputs'
import { compareDesigns, type Done } from '@/lib/review'
import type { TransactionClient } from '../store/client'
import { refuseField } from '../store/errors'
import type { DoneOptions } from '../views'
import { loadDesignStates } from './design-states'
import { isVisibleTo, type LoadedRevision } from './loaded-revision'
import type { RevisionRecord } from './revision-record'

/** From when on something can have been done about it, and the design as it was then. */
export interface DoneBase {
  readonly at: Date
  /** Null in rows from before it was kept: then what was saved since counts. */
  readonly designHash: string | null
}

/** Designs that threads and declarations were made on, where they are not the present one. */
export function loadDoneBases(tx: TransactionClient, record: RevisionRecord): Promise<ReadonlyMap<string, Design>> {
  const hashes = [
    ...record.threads.filter(({ state }) => state !== 'closed').map(({ baseDesignHash }) => baseDesignHash),
    ...record.declarations.map(({ designHash }) => designHash),
  ]
  return loadDesignStates(tx, new Set(hashes.filter((hash) => hash !== null && hash !== record.designHash) as string[]))
}

/** What can be pointed to as done since, in the view of a company; null is the team. */
export function listDoneOptions(
  loaded: LoadedRevision,
  bases: ReadonlyMap<string, Design>,
  { at, designHash }: DoneBase,
  fabricatorCompanyId: string | null,
): DoneOptions {
  const { record } = loaded
  const base = designHash === null ? undefined : bases.get(designHash)
  const since = (moment: Date | null) => moment !== null && moment >= at
  return {
    mayStayUnchanged: true,
    changes: base === undefined ? listSaves(loaded, at, designHash) : listDesignChanges(base, loaded.design),
    proposals: record.proposals
      .filter(
        ({ state, decidedAt, audienceCompanyId }) =>
          state === 'accepted' &&
          since(decidedAt) &&
          (fabricatorCompanyId === null || audienceCompanyId === fabricatorCompanyId),
      )
      .map(({ id, title }) => ({ id, title })),
    files: [...record.artwork, ...record.attachments]
      .filter(
        (file) =>
          since(file.createdAt) && isVisibleTo(fabricatorCompanyId, 'companyId' in file ? file.companyId : null),
      )
      .map(({ originalName, sha256 }) => ({ fileName: originalName, sha256 })),
    actions: record.actions
      .filter(
        ({ audienceCompanyId, state }) =>
          state !== 'dropped' && (fabricatorCompanyId === null || audienceCompanyId === fabricatorCompanyId),
      )
      .map(({ id, text }) => ({ id, text })),
  }
}

function listDesignChanges(base: Design, present: Design): DoneOptions['changes'] {
  return compareDesigns(base, present).map(({ path, sentence }) => ({ place: path.join('.'), sentence }))
}

/** Where the design of that moment was not kept. What is the same as then was not changed. */
function listSaves({ record }: LoadedRevision, at: Date, designHash: string | null): DoneOptions['changes'] {
  if (designHash === record.designHash) return []
  return record.edits
    .filter((edit) => edit.part === 'design' && edit.at >= at)
    .flatMap((edit) =>
      readStoredSentences('the summary of an edit', edit.summaryJson).map((sentence, index) => ({
        place: `save ${edit.version}.${index}`,
        sentence,
      })),
    )
}

/** What was pointed to, by name. Refuses what is not there: a change that was not made, a proposal that was not accepted. */
export function requireDone(options: DoneOptions, input: DoneInput): Done {
  switch (input.kind) {
    case 'fields': {
      const chosen = options.changes.filter(({ place }) => input.places.includes(place))
      if (options.changes.length === 0) {
        refuseField('done', 'unchanged', 'names a change, and the design has not changed since: change it first')
      }
      if (chosen.length === 0) refuseField('done', 'unknown', 'names no change that was made since')
      return { kind: 'fields', changes: chosen.map(({ sentence }) => sentence) }
    }
    case 'proposal': {
      const found = options.proposals.find(({ id }) => id === input.proposalId)
      if (found === undefined) refuseField('done', 'unknown', 'names no proposal that was accepted since')
      return { kind: 'proposal', id: found.id, title: found.title }
    }
    case 'file': {
      const found = options.files.find(({ sha256 }) => sha256 === input.sha256)
      if (found === undefined) refuseField('done', 'unknown', 'names no file that was added since')
      return { kind: 'file', fileName: found.fileName, sha256: found.sha256 }
    }
    case 'action': {
      const found = options.actions.find(({ id }) => id === input.actionId)
      if (found === undefined) refuseField('done', 'unknown', 'names no action of this revision')
      return { kind: 'action', id: found.id, text: found.text }
    }
    case 'no-change':
      return { kind: 'no-change' }
  }
}
