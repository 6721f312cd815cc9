import 'server-only'
import { by, type VouchedModel } from './vouched-model'

/** What reviews are held against: limits, sheets, catalogue; and what designs begin with. */
export const REFERENCE_MODELS: readonly VouchedModel[] = [
  {
    model: 'Limit',
    kind: 'limit',
    key: 'id',
    columns: ['id', 'ownerKey', 'companyId', 'key', 'value', 'note', 'version', 'setById', 'setAt'],
    name: by('key'),
  },
  {
    model: 'FabricationSheet',
    kind: 'fabrication sheet',
    key: 'id',
    columns: ['id', 'companyId', 'kind', 'version', 'contentJson', 'issuedOn', 'note', 'setById', 'setAt'],
    name: (row) => `${String(row.kind)}, version ${String(row.version)}`,
  },
  {
    model: 'CatalogueTemplate',
    kind: 'catalogue',
    key: 'version',
    columns: ['version', 'contentJson', 'summary', 'reason', 'changedById', 'changedAt'],
    name: (row) => `version ${String(row.version)}`,
  },
  {
    model: 'LibraryEntry',
    kind: 'library entry',
    key: 'id',
    columns: ['id', 'kind', 'entryId', 'version', 'contentJson', 'isWithdrawn', 'reason', 'changedById', 'changedAt'],
    name: (row) => `${String(row.entryId)}, version ${String(row.version)}`,
  },
]
