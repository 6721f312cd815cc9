import * as data from '@/lib/data'
import { NOTHING_SHARED } from '@/lib/review'
import type { AccessScene } from '../scene'
import { type AccessRow, BRACKENFOLD, EVERYBODY, KEEPERS, PROJECT, REVIEWERS, TEAM, UNSEEN } from './row'

/** Limits. */
export const COMPANY_ROWS: readonly AccessRow[] = [
  {
    name: 'getLimitList',
    of: 'the workspace',
    run: (a) => data.getLimitList(a, null),
    reached: 'ok',
    may: ['admin', ...REVIEWERS, 'outsider'],
    seenBy: 'workspace',
  },
  {
    name: 'getLimitList',
    of: 'a fabricator',
    run: (a, s) => data.getLimitList(a, s.team.companies.brackenfold),
    reached: 'ok',
    may: [...TEAM, ...BRACKENFOLD],
    seenBy: 'brackenfold',
  },
  {
    name: 'setLimit',
    of: 'the workspace',
    run: (a) => data.setLimit(a, { key: 'platingInBendUm', seenVersion: UNSEEN, value: 1, note: '' }),
    reached: 'stale',
    may: ['admin'],
    seenBy: 'workspace',
  },
  {
    name: 'setLimit',
    of: 'a fabricator',
    run: (a, s) =>
      data.setLimit(a, {
        companyId: s.team.companies.brackenfold,
        key: 'platingInBendUm',
        seenVersion: UNSEEN,
        value: 1,
        note: '',
      }),
    reached: 'stale',
    may: KEEPERS,
    seenBy: 'brackenfold',
  },
  {
    name: 'getSheet',
    run: (a, s) => data.getSheet(a, s.team.companies.brackenfold, 'matrix'),
    reached: 'ok',
    may: [...TEAM, ...BRACKENFOLD],
    seenBy: 'brackenfold',
  },
  {
    name: 'listSheetVersions',
    run: (a, s) => data.listSheetVersions(a, s.team.companies.brackenfold, 'shelf'),
    reached: 'ok',
    may: [...TEAM, ...BRACKENFOLD],
    seenBy: 'brackenfold',
  },
  {
    name: 'getSheetVersion',
    run: (a, s) =>
      data.getSheetVersion(a, s.team.companies.brackenfold, { kind: 'shelf', version: '1', against: null }),
    reached: 'ok',
    may: [],
    // No version was saved: those who may open versions find none.
    otherwise: Object.fromEntries(BRACKENFOLD.map((person) => [person, 'not-found'])),
    seenBy: 'brackenfold',
  },
  {
    name: 'restoreSheetVersion',
    run: (a, s) =>
      data.restoreSheetVersion(a, {
        companyId: s.team.companies.brackenfold,
        kind: 'shelf',
        version: 1,
        seenVersion: UNSEEN,
        issuedOn: '2026-11-02',
        note: '',
      }),
    reached: 'stale',
    may: KEEPERS,
    seenBy: 'brackenfold',
  },
  {
    name: 'saveSheet',
    run: (a, s) =>
      data.saveSheet(a, {
        companyId: s.team.companies.brackenfold,
        kind: 'matrix',
        seenVersion: UNSEEN,
        issuedOn: '2026-11-02',
        note: '',
        content: { rows: [] },
      }),
    reached: 'stale',
    may: KEEPERS,
    seenBy: 'brackenfold',
  },
  {
    name: 'getSheet',
    of: 'flex tests',
    run: (a, s) => data.getSheet(a, s.team.companies.brackenfold, 'flex-tests'),
    reached: 'ok',
    may: [...TEAM, ...BRACKENFOLD],
    seenBy: 'brackenfold',
  },
  {
    name: 'getSheet',
    of: 'rates',
    run: (a, s) => data.getSheet(a, s.team.companies.brackenfold, 'process-rates'),
    reached: 'ok',
    may: [...TEAM, ...BRACKENFOLD],
    seenBy: 'brackenfold',
  },
  {
    name: 'exportSheetFile',
    run: (a, s) => data.exportSheetFile(a, { companyId: s.team.companies.brackenfold, kind: 'shelf', format: 'csv' }),
    reached: 'ok',
    may: [...TEAM, ...BRACKENFOLD],
    seenBy: 'brackenfold',
  },
  {
    name: 'previewSheetFile',
    run: (a, s) => data.previewSheetFile(a, makeSheetFile(s.team.companies.brackenfold)),
    reached: 'ok',
    may: KEEPERS,
    seenBy: 'brackenfold',
  },
  {
    name: 'importSheetFile',
    run: (a, s) =>
      data.importSheetFile(a, {
        ...makeSheetFile(s.team.companies.brackenfold),
        leaveOutBadRows: false,
        seenVersion: UNSEEN,
        issuedOn: '2026-11-02',
        note: '',
      }),
    reached: 'stale',
    may: KEEPERS,
    seenBy: 'brackenfold',
  },
  {
    name: 'getFabricationFit',
    run: (a, s) => data.getFabricationFit(a, s.reviewId),
    reached: 'ok',
    may: PROJECT,
    seenBy: 'revision',
  },
  {
    name: 'getQuotation',
    run: (a, s) => data.getQuotation(a, s.reviewId, null),
    reached: 'ok',
    may: PROJECT,
    seenBy: 'revision',
  },
  {
    name: 'getQuotationFile',
    run: (a, s) => data.getQuotationFile(a, s.reviewId, { format: 'json', companyId: null }),
    reached: 'ok',
    may: PROJECT,
    seenBy: 'revision',
  },
  {
    name: 'getFabricatorStart',
    run: (a, s) => data.getFabricatorStart(a, s.team.projectId),
    reached: 'ok',
    may: PROJECT,
    seenBy: 'project',
  },
  {
    name: 'listCompanyAccess',
    run: (a, s) => data.listCompanyAccess(a, s.team.companies.brackenfold),
    reached: 'ok',
    may: ['fabricator'],
    seenBy: 'brackenfold',
  },
  {
    name: 'getCompanyAccessFile',
    run: (a, s) => data.getCompanyAccessFile(a, s.team.companies.brackenfold),
    reached: 'ok',
    may: ['fabricator'],
    seenBy: 'brackenfold',
  },
  {
    name: 'getCompany',
    run: (a, s) => data.getCompany(a, s.team.companies.brackenfold),
    reached: 'ok',
    may: [...TEAM, ...BRACKENFOLD],
    seenBy: 'brackenfold',
  },
  {
    name: 'inviteToCompany',
    run: (a, s) => data.inviteToCompany(a, { companyId: s.team.companies.brackenfold, role: 'member' }),
    reached: 'ok',
    may: ['fabricator', 'admin'],
    seenBy: 'brackenfold',
  },
  {
    name: 'inviteToCompany',
    of: 'and a project',
    run: (a, s) =>
      data.inviteToCompany(a, {
        companyId: s.team.companies.brackenfold,
        role: 'member',
        projectId: s.team.projectId,
      }),
    reached: 'ok',
    // An admin of the workspace brings nobody into a project.
    may: ['fabricator'],
    seenBy: 'brackenfold',
  },
  {
    name: 'setCompanyRole',
    run: (a, s) =>
      data.setCompanyRole(a, {
        companyId: s.team.companies.brackenfold,
        userId: s.team.companyMember.userId,
        role: 'member',
      }),
    reached: 'ok',
    may: ['fabricator', 'admin'],
    seenBy: 'brackenfold',
  },
  {
    name: 'removeCompanyPerson',
    of: 'the last administrator',
    run: (a, s) =>
      data.removeCompanyPerson(a, {
        companyId: s.team.companies.brackenfold,
        userId: s.team.fabricator.userId,
      }),
    reached: 'clash',
    may: ['fabricator', 'admin'],
    seenBy: 'brackenfold',
  },
  {
    name: 'setCompanySharing',
    run: (a, s) => data.setCompanySharing(a, { ...partOf(s), ...NOTHING_SHARED }),
    reached: 'stale',
    may: ['fabricator'],
    seenBy: 'brackenfold',
  },
  {
    name: 'decideParticipation',
    run: (a, s) => data.decideParticipation(a, { ...partOf(s), decision: 'end', reason: '' }),
    reached: 'stale',
    may: ['fabricator'],
    seenBy: 'brackenfold',
  },
  {
    name: 'bringToProject',
    run: (a, s) =>
      data.bringToProject(a, {
        companyId: s.team.companies.brackenfold,
        projectId: s.team.projectId,
        userId: s.team.companyMember.userId,
      }),
    reached: 'ok',
    may: ['fabricator'],
    seenBy: 'brackenfold',
  },
  {
    name: 'listOwnCompanies',
    run: (a) => data.listOwnCompanies(a),
    reached: 'ok',
    may: EVERYBODY,
    seenBy: 'workspace',
  },
  {
    name: 'listAllCompanies',
    run: (a) => data.listAllCompanies(a),
    reached: 'ok',
    may: ['admin'],
    seenBy: 'workspace',
  },
  {
    name: 'confirmCompany',
    of: 'one that is known',
    run: (a, s) => data.confirmCompany(a, { companyId: s.team.companies.brackenfold }),
    reached: 'clash',
    may: ['admin'],
    seenBy: 'workspace',
  },
  { name: 'listCompanies', run: (a) => data.listCompanies(a), reached: 'ok', may: EVERYBODY, seenBy: 'workspace' },
]

const partOf = ({ team }: AccessScene) => ({
  companyId: team.companies.brackenfold,
  projectId: team.projectId,
  seenVersion: UNSEEN,
})

function makeSheetFile(companyId: string) {
  const bytes = new TextEncoder().encode('Parameter,Comfortable\nconductor-width,0.1\n')
  return { companyId, kind: 'matrix' as const, fileName: 'matrix.csv', bytes, mode: 'replace' as const }
}
