import 'server-only'
import { by, type VouchedModel } from './vouched-model'

/** What reviews are held against: limits, sheets, catalogue. */
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
]
