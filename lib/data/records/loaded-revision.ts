import 'server-only'
import { type Design, parseStoredJson, readStoredDesignDocument } from '@/lib/engine'
import type { TransactionClient } from '../store/client'
import { loadChangedInputs } from './answer-basis'
import { type LimitSheets, loadLimitSheets } from './effective-limits'
import { loadRevisionRecord, type RevisionRecord } from './revision-record'
import { loadWorkspace, type WorkspaceRecord } from './settings-record'
import { loadSharings } from './sharing-record'
import { type CompanySheets, loadCompanySheets } from './sheet-records'
import { findLatestTemplateVersion, loadTemplate, type TemplateRecord } from './template-record'

/** Everything of a revision in one transaction: the stored record, its version of the catalogue, limits and settings. */
export interface LoadedRevision {
  readonly record: RevisionRecord
  readonly template: TemplateRecord
  /** The newest version of the workspace's catalogue: a review may be brought up to it. */
  readonly latestTemplateVersion: number
  readonly sheets: LimitSheets
  /** What the fabricators with whom it is shared can build, hold and charge. */
  readonly fabrication: readonly CompanySheets[]
  readonly workspace: WorkspaceRecord
  readonly design: Design
  /** The same document in the format that it was stored in. */
  readonly storedDesign: unknown
  /** Inputs that changed since each answer was given, by item. */
  readonly changedInputs: ReadonlyMap<string, readonly string[]>
}

/** Loads everything. Anyone who calls it passes the result on: a request loads a revision once. */
export async function loadRevision(tx: TransactionClient, revisionId: string): Promise<LoadedRevision> {
  const record = await loadRevisionRecord(tx, revisionId)
  return { record, ...(await loadRules(tx, record)), ...(await readDesign(tx, record)) }
}

/**
 * The revision again after a change of the same transaction. The catalogue, limits, sheets and settings are those that were
 * loaded before, unless the change was that the revision follows another version of the catalogue or is shared otherwise:
 * writers come one at a time, so nobody else changed them meanwhile.
 */
export async function loadRevisionAgain(tx: TransactionClient, before: LoadedRevision): Promise<LoadedRevision> {
  const record = await loadRevisionRecord(tx, before.record.id)
  const isUnderSameRules =
    record.templateVersion === before.record.templateVersion &&
    listShareIds(record).join() === listShareIds(before.record).join()
  const rules = isUnderSameRules ? {} : await loadRules(tx, record)
  return { ...before, record, ...rules, ...(await readDesign(tx, record)) }
}

const listShareIds = ({ shares }: RevisionRecord) => shares.map(({ companyId }) => companyId)

/** What the revision is held against. */
async function loadRules(tx: TransactionClient, record: RevisionRecord) {
  const template = await loadTemplate(tx, record.templateVersion)
  const latestTemplateVersion = await findLatestTemplateVersion(tx)
  const workspace = await loadWorkspace(tx)
  const sharings = await loadSharings(tx, record.projectId, listShareIds(record))
  const sheets = await loadLimitSheets(tx, sharings, { name: workspace.name, limits: template.content.limits })
  const companies = sheets.fabricators.map(({ companyId, name }) => ({ id: companyId, name }))
  const fabrication = await loadCompanySheets(tx, companies, sharings)
  return { template, latestTemplateVersion, workspace, sheets, fabrication }
}

async function readDesign(tx: TransactionClient, record: RevisionRecord) {
  const storedDesign = parseStoredJson('a stored design', record.designJson)
  const design = readStoredDesignDocument(storedDesign)
  return { storedDesign, design, changedInputs: await loadChangedInputs(tx, record, design) }
}

/**
 * May a view show what belongs to a company's part in the review?
 * @param fabricatorCompanyId  whose view it is; null for the team, which sees everything
 * @param companyId  whose part it is; null for the team's own
 */
export function isVisibleTo(fabricatorCompanyId: string | null, companyId: string | null): boolean {
  return fabricatorCompanyId === null || companyId === null || companyId === fabricatorCompanyId
}
