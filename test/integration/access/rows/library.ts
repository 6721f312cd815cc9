import * as data from '@/lib/data'
import { makeOwnMaterial } from '@/test/factories/own-materials'
import { type AccessRow, EVERYBODY, LEADS, REVIEWERS, TEAM, UNSEEN } from './row'

/** Materials and starting constructions that the workspace keeps. */
export const LIBRARY_ROWS: readonly AccessRow[] = [
  {
    name: 'getLibrary',
    run: (a) => data.getLibrary(a),
    reached: 'ok',
    may: ['admin', ...REVIEWERS, 'outsider'],
    seenBy: 'workspace',
  },
  {
    name: 'listOwnMaterials',
    run: (a) => data.listOwnMaterials(a),
    reached: 'ok',
    may: EVERYBODY,
    seenBy: 'workspace',
  },
  {
    name: 'getRevisionStarts',
    run: (a, s) => data.getRevisionStarts(a, s.team.projectId),
    reached: 'ok',
    may: TEAM,
    seenBy: 'project',
  },
  {
    name: 'saveOwnMaterial',
    run: (a, s) =>
      data.saveOwnMaterial(a, {
        entryId: s.libraryEntryId,
        seenVersion: UNSEEN,
        material: makeOwnMaterial(),
        reason: 'measured',
      }),
    reached: 'stale',
    may: ['admin', ...TEAM, 'outsider'],
    seenBy: 'workspace',
  },
  {
    name: 'withdrawLibraryEntry',
    run: (a, s) =>
      data.withdrawLibraryEntry(a, { entryId: s.libraryEntryId, seenVersion: UNSEEN, reason: 'not bought any more' }),
    reached: 'stale',
    may: ['admin', ...TEAM, 'outsider'],
    seenBy: 'workspace',
  },
  {
    name: 'keepConstruction',
    run: (a, s) =>
      data.keepConstruction(a, { revisionId: s.reviewId, seenVersion: UNSEEN, name: 'Ours', purpose: 'usual' }),
    reached: 'stale',
    may: LEADS,
    seenBy: 'revision',
  },
]
