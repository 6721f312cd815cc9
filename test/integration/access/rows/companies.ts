import * as data from '@/lib/data'
import { type AccessRow, EVERYBODY, PROJECT, TEAM, UNSEEN } from './row'

/** Limits. */
export const COMPANY_ROWS: readonly AccessRow[] = [
  {
    name: 'getLimitSheet',
    of: 'the workspace',
    run: (a) => data.getLimitSheet(a, null),
    reached: 'ok',
    may: ['admin', ...TEAM, 'outsider'],
    seenBy: 'workspace',
  },
  {
    name: 'getLimitSheet',
    of: 'a fabricator',
    run: (a, s) => data.getLimitSheet(a, s.team.companies.brackenfold),
    reached: 'ok',
    may: [...TEAM, 'fabricator'],
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
    may: ['fabricator'],
    seenBy: 'brackenfold',
  },
  {
    name: 'getSheet',
    run: (a, s) => data.getSheet(a, s.team.companies.brackenfold, 'matrix'),
    reached: 'ok',
    may: [...TEAM, 'fabricator'],
    seenBy: 'brackenfold',
  },
  {
    name: 'listSheetVersions',
    run: (a, s) => data.listSheetVersions(a, s.team.companies.brackenfold, 'shelf'),
    reached: 'ok',
    may: [...TEAM, 'fabricator'],
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
    may: ['fabricator'],
    seenBy: 'brackenfold',
  },
  {
    name: 'getSheet',
    of: 'rates',
    run: (a, s) => data.getSheet(a, s.team.companies.brackenfold, 'process-rates'),
    reached: 'ok',
    may: [...TEAM, 'fabricator'],
    seenBy: 'brackenfold',
  },
  {
    name: 'exportSheetFile',
    run: (a, s) => data.exportSheetFile(a, { companyId: s.team.companies.brackenfold, kind: 'shelf', format: 'csv' }),
    reached: 'ok',
    may: [...TEAM, 'fabricator'],
    seenBy: 'brackenfold',
  },
  {
    name: 'previewSheetFile',
    run: (a, s) => data.previewSheetFile(a, makeSheetFile(s.team.companies.brackenfold)),
    reached: 'ok',
    may: ['fabricator'],
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
    may: ['fabricator'],
    seenBy: 'brackenfold',
  },
  {
    name: 'getFabricationFit',
    run: (a, s) => data.getFabricationFit(a, s.reviewId),
    reached: 'ok',
    may: PROJECT,
    seenBy: 'revision',
  },
  { name: 'listCompanies', run: (a) => data.listCompanies(a), reached: 'ok', may: EVERYBODY, seenBy: 'workspace' },
]

function makeSheetFile(companyId: string) {
  const bytes = new TextEncoder().encode('Parameter,Comfortable\nconductor-width,0.1\n')
  return { companyId, kind: 'matrix' as const, fileName: 'matrix.csv', bytes, mode: 'replace' as const }
}
