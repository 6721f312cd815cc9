import * as data from '@/lib/data'
import { readSeedDesign } from '@/test/factories/reviews'
import { type AccessRow, LEADS, PROJECT, READERS, TEAM, UNSEEN } from './row'

/** Revisions. */
export const REVISION_ROWS: readonly AccessRow[] = [
  {
    name: 'createRevision',
    run: (a, s) =>
      data.createRevision(a, { projectId: s.team.projectId, label: s.draftLabel, origin: { kind: 'blank' } }),
    reached: 'invalid',
    may: TEAM,
    seenBy: 'project',
  },
  {
    name: 'getRevision',
    of: 'shared',
    run: (a, s) => data.getRevision(a, s.reviewId),
    reached: 'ok',
    may: PROJECT,
    seenBy: 'revision',
  },
  {
    name: 'getPanels',
    run: (a, s) => data.getPanels(a, s.reviewId),
    reached: 'ok',
    may: PROJECT,
    seenBy: 'revision',
  },
  {
    name: 'getCosts',
    run: (a, s) => data.getCosts(a, s.reviewId),
    reached: 'ok',
    may: PROJECT,
    seenBy: 'revision',
  },
  {
    name: 'getCosts',
    of: 'not shared',
    run: (a, s) => data.getCosts(a, s.draftId),
    reached: 'ok',
    may: READERS,
    seenBy: 'draft',
  },
  {
    name: 'askForRemedies',
    run: async (a, s) =>
      data.askForRemedies(a, {
        revisionId: s.reviewId,
        design: JSON.parse(readSeedDesign('pipit-rev-a')),
        bendId: 'install-bend',
        isRadiusFixed: false,
        companyId: null,
      }),
    reached: 'ok',
    may: PROJECT,
    seenBy: 'revision',
  },
  {
    name: 'askForWayOut',
    run: async (a, s) =>
      data.askForWayOut(a, {
        revisionId: s.reviewId,
        design: JSON.parse(readSeedDesign('pipit-rev-a')),
        isRadiusFixed: false,
        companyId: null,
      }),
    reached: 'ok',
    may: PROJECT,
    seenBy: 'revision',
  },
  // Jobs are their asker's own: nobody else, of whatever role, knows of them.
  { name: 'readJob', run: (a) => data.readJob(a, 'a-job-of-nobody'), reached: 'ok', may: [], seenBy: 'nothing' },
  { name: 'stopJob', run: (a) => data.stopJob(a, 'a-job-of-nobody'), reached: 'ok', may: [], seenBy: 'nothing' },
  {
    name: 'getRemedyBases',
    run: (a, s) => data.getRemedyBases(a, s.reviewId),
    reached: 'ok',
    may: PROJECT,
    seenBy: 'revision',
  },
  {
    name: 'getRevision',
    of: 'not shared',
    run: (a, s) => data.getRevision(a, s.draftId),
    reached: 'ok',
    may: READERS,
    seenBy: 'draft',
  },
  {
    name: 'saveDesign',
    run: (a, s) => data.saveDesign(a, { revisionId: s.reviewId, seenVersion: UNSEEN, design: s.design }),
    reached: 'stale',
    may: TEAM,
    seenBy: 'revision',
  },
  {
    name: 'importDesign',
    run: (a, s) =>
      data.importDesign(a, {
        revisionId: s.draftId,
        seenVersion: UNSEEN,
        designText: JSON.stringify(s.design),
      }),
    reached: 'stale',
    may: TEAM,
    seenBy: 'draft',
  },
  {
    name: 'getSheetIdentity',
    run: (a, s) => data.getSheetIdentity(a, s.reviewId),
    reached: 'ok',
    may: PROJECT,
    seenBy: 'revision',
  },
  {
    name: 'getDrawingFile',
    run: (a, s) => data.getDrawingFile(a, s.reviewId, { format: 'svg', sheet: '1' }),
    reached: 'ok',
    may: PROJECT,
    seenBy: 'revision',
  },
  {
    name: 'getDrawingFile',
    of: 'a draft',
    run: (a, s) => data.getDrawingFile(a, s.draftId, { format: 'svg', sheet: '1' }),
    reached: 'ok',
    may: READERS,
    seenBy: 'draft',
  },
  {
    name: 'exportDesign',
    run: (a, s) => data.exportDesign(a, s.reviewId),
    reached: 'ok',
    may: PROJECT,
    seenBy: 'revision',
  },
  {
    name: 'exportResults',
    run: (a, s) => data.exportResults(a, s.draftId),
    reached: 'ok',
    may: READERS,
    seenBy: 'draft',
  },
  {
    name: 'evaluateAgain',
    run: (a, s) => data.evaluateAgain(a, { revisionId: s.draftId }),
    reached: 'ok',
    may: TEAM,
    seenBy: 'draft',
  },
  {
    name: 'shareRevision',
    run: (a, s) => data.shareRevision(a, { revisionId: s.reviewId, companyId: 'nobody' }),
    reached: 'invalid',
    may: LEADS,
    seenBy: 'revision',
  },
  {
    name: 'unshareRevision',
    run: (a, s) => data.unshareRevision(a, { revisionId: s.reviewId, companyId: 'nobody' }),
    reached: 'invalid',
    may: LEADS,
    seenBy: 'revision',
  },
  {
    name: 'getTrailFile',
    run: (a, s) => data.getTrailFile(a, s.reviewId, 'csv'),
    reached: 'ok',
    may: READERS,
    seenBy: 'revision',
  },
  {
    name: 'listRevisionTrail',
    run: (a, s) => data.listRevisionTrail(a, s.reviewId),
    reached: 'ok',
    may: READERS,
    seenBy: 'revision',
  },
]
