import 'server-only'
import { type Design, readStoredDesignWithSource } from '@/lib/engine'
import type { TransactionClient } from '../store/client'
import { findChangedInputs, loadAnsweredDesigns } from './answer-basis'
import { type LoadedArtwork, loadArtwork, NO_ARTWORK } from './artwork-reading'
import { type LimitsByOwner, loadCompanyLimits, makeLimitsByOwner } from './effective-limits'
import { loadRevisionRecord, loadRevisionRecords, type RevisionRecord } from './revision-record'
import { loadWorkspace, type WorkspaceRecord } from './settings-record'
import { loadSharingsOf } from './sharing-record'
import { type CompanySheets, loadNewestSheets, makeCompanySheets } from './sheet-records'
import { passAnswersOn, passOn } from './successors'
import { findLatestTemplateVersion, loadTemplates, readProfileIds, type TemplateRecord } from './template-record'

/** Everything of a revision in one transaction: the stored record, its version of the catalogue, limits and settings. */
export interface LoadedRevision {
  readonly record: RevisionRecord
  readonly template: TemplateRecord
  /** The newest version of the workspace's catalogue: a review may be brought up to it. */
  readonly latestTemplateVersion: number
  /** Profiles that the project follows now: a review may be brought up to them. */
  readonly projectProfileIds: readonly string[]
  readonly sheets: LimitsByOwner
  /** What the fabricators with whom it is shared can build, hold and charge. */
  readonly fabrication: readonly CompanySheets[]
  readonly workspace: WorkspaceRecord
  readonly design: Design
  /** The same document in the format that it was stored in. */
  readonly storedDesign: unknown
  readonly artwork: LoadedArtwork
  /** Inputs that changed since each answer was given, by item. */
  readonly changedInputs: ReadonlyMap<string, readonly string[]>
}

/** Loads everything. Anyone who calls it passes the result on: a request loads a revision once. */
export async function loadRevision(tx: TransactionClient, revisionId: string): Promise<LoadedRevision> {
  const [loaded] = await loadAll(tx, [await loadRevisionRecord(tx, revisionId)])
  if (loaded === undefined) throw new Error(`there is no revision ${revisionId}`)
  return loaded
}

/** Several revisions, in the order asked for. What is asked of the database does not grow with their number. */
export async function loadRevisions(
  tx: TransactionClient,
  revisionIds: readonly string[],
): Promise<readonly LoadedRevision[]> {
  return revisionIds.length === 0 ? [] : loadAll(tx, await loadRevisionRecords(tx, revisionIds))
}

async function loadAll(tx: TransactionClient, records: readonly RevisionRecord[]): Promise<LoadedRevision[]> {
  const rules = await loadRules(tx, records)
  const designs = await readDesigns(tx, records)
  return records.flatMap((_, at) => {
    const [ruled, read] = [rules[at], designs[at]]
    return ruled === undefined || read === undefined ? [] : [{ ...ruled, ...read }]
  })
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
    record.profilesJson === before.record.profilesJson &&
    listShareIds(record).join() === listShareIds(before.record).join()
  const [rules] = isUnderSameRules ? [] : await loadRules(tx, [record])
  const [design] = await readDesigns(tx, [record])
  return { ...before, ...rules, ...(design ?? { record }) }
}

const listShareIds = ({ shares }: RevisionRecord) => shares.map(({ companyId }) => companyId)

/** What each revision is held against, in the order of the records. */
async function loadRules(tx: TransactionClient, records: readonly RevisionRecord[]) {
  const templates = await loadTemplates(tx, records)
  const latestTemplateVersion = await findLatestTemplateVersion(tx)
  const workspace = await loadWorkspace(tx)
  const sharings = await loadSharingsOf(
    tx,
    records.map((record) => ({ projectId: record.projectId, companyIds: listShareIds(record) })),
  )
  const companyIds = [...new Set(records.flatMap(listShareIds))]
  const companyLimits = await loadCompanyLimits(tx, companyIds)
  const newestSheets = await loadNewestSheets(tx, companyIds)
  return records.flatMap((record, at) => {
    const template = templates[at]
    if (template === undefined) return []
    const shared = sharings[at] ?? new Map()
    const sheets = makeLimitsByOwner(companyLimits, shared, {
      name: workspace.name,
      limits: template.content.limits,
      profiles: template.catalogue.profiles,
    })
    const companies = sheets.fabricators.map(({ companyId, name }) => ({ id: companyId, name }))
    const fabrication = makeCompanySheets(newestSheets, companies, shared)
    const projectProfileIds = readProfileIds(record.project.profilesJson)
    return [{ template, latestTemplateVersion, projectProfileIds, workspace, sheets, fabrication }]
  })
}

async function readDesigns(tx: TransactionClient, records: readonly RevisionRecord[]) {
  const bases = await loadAnsweredDesigns(tx, records)
  const documents = records.map((record) => ({ record, ...readStoredDesignWithSource(record.designJson) }))
  const artwork = await loadArtwork(
    tx,
    records,
    documents.map(({ design }) => design),
  )
  return documents.map(({ record, storedDesign, design }, at) => {
    // Which items are asked may hang on the design.
    const passed = {
      ...record,
      answers: passAnswersOn(record.answers, design),
      waivers: passOn(record.waivers, design),
      attachments: passOn(record.attachments, design),
    }
    return {
      record: passed,
      storedDesign,
      design,
      artwork: artwork[at] ?? NO_ARTWORK,
      changedInputs: findChangedInputs(passed, design, bases),
    }
  })
}

/**
 * May a view show what belongs to a company's part in the review?
 * @param fabricatorCompanyId  whose view it is; null for the team, which sees everything
 * @param companyId  whose part it is; null for the team's own
 */
export function isVisibleTo(fabricatorCompanyId: string | null, companyId: string | null): boolean {
  return fabricatorCompanyId === null || companyId === null || companyId === fabricatorCompanyId
}

/** Has the workspace's catalogue, or the project's choice of profiles, moved on since the review was brought up to them? */
export function isBehindCatalogue({ template, latestTemplateVersion, projectProfileIds }: LoadedRevision): boolean {
  return template.version !== latestTemplateVersion || !areSameProfiles(template.profileIds, projectProfileIds)
}

/** Both as they are kept: each once, in one order. */
export function areSameProfiles(one: readonly string[], other: readonly string[]): boolean {
  return one.join() === other.join()
}
