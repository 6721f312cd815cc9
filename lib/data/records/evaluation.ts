import 'server-only'
import { findSheetLacks } from '@/lib/drawing'
import {
  type ArtworkReviewFacts,
  type Design,
  ENGINE_VERSION,
  type Evaluation,
  parseStoredJson,
  type ReviewFacts,
  readStoredDesign,
} from '@/lib/engine'
import {
  countBuiltChanges,
  hashDeclaredContent,
  hashJson,
  isDeclaredBuildable,
  isThreadUnresolved,
  markCheckedWhenSaved,
  THREAD_KINDS,
  THREAD_STATES,
  withholdLimits,
} from '@/lib/review'
import type { TransactionClient } from '../store/client'
import { evaluateBounded } from './bounded-evaluation'
import { listTakenOff, toDeclaration } from './declaration-record'
import {
  combineLimits,
  combineLimitsWithChecked,
  hashLimits,
  listCheckedLimits,
  listCheckedVersions,
} from './effective-limits'
import { gatherFabricationFacts } from './fabrication-facts'
import { isVisibleTo, type LoadedRevision } from './loaded-revision'
import { packText, unpackText } from './packed-text'
import { type CompanySheets, listSheetVersionsOf, pickSheets, pickShownSheets } from './sheet-records'
import { readWord } from './stored-words'
import { findTestedLives } from './tested-lives'

const DAY_MS = 86_400_000

interface EvaluationRequest {
  /** Whose view it is; null for the team, which gets nothing of limits that are not shown but verdict and band. */
  readonly fabricatorCompanyId: string | null
  readonly evaluatedOn: Date
  /** The design is none that somebody saved: for the team it is not held against limits that are not shown. */
  readonly isVariant?: boolean
}

/** Results of a loaded revision, with the limits and facts of one view of it. */
export function evaluateFor(loaded: LoadedRevision, request: EvaluationRequest): Evaluation {
  const { fabricatorCompanyId, evaluatedOn, isVariant = false } = request
  const { sheets, fabrication, design } = loaded
  const { items } = loaded.template.catalogue
  const picked = (isVariant ? pickShownSheets : pickSheets)(fabrication, fabricatorCompanyId)
  const facts = gatherFacts(loaded, fabricatorCompanyId, evaluatedOn, picked)
  const testedLives = findTestedLives(loaded, fabricatorCompanyId)
  const order = { design, facts, testedLives }
  const shown = evaluateBounded({ ...order, limits: combineLimits(sheets, fabricatorCompanyId) }, loaded.template)
  const checked = fabricatorCompanyId === null ? listCheckedLimits(sheets) : []
  if (checked.length === 0) return shown
  if (isVariant) return markCheckedWhenSaved(shown, items, checked)
  const full = evaluateBounded({ ...order, limits: combineLimitsWithChecked(sheets) }, loaded.template)
  return withholdLimits(shown, full, items, checked)
}

/** Of the limits and sheets that a view of the revision rests on. */
export function hashLimitsOf({ sheets, fabrication }: LoadedRevision, fabricatorCompanyId: string | null): string {
  return hashLimits(sheets, pickSheets(fabrication, fabricatorCompanyId), fabricatorCompanyId)
}

/** What the review knows and the design does not. */
export function gatherFacts(
  loaded: LoadedRevision,
  fabricatorCompanyId: string | null,
  evaluatedOn: Date,
  sheets: readonly CompanySheets[] = pickSheets(loaded.fabrication, fabricatorCompanyId),
): ReviewFacts {
  const { record, design } = loaded
  const isVisible = (companyId: string | null) => isVisibleTo(fabricatorCompanyId, companyId)
  const shares = record.shares.filter(({ companyId }) => isVisible(companyId))
  // A thread without an audience is the team's alone: a fabricator's results do not even count it.
  const open = record.threads.filter(
    (thread) =>
      isThreadUnresolved({
        kind: readWord(thread.kind, THREAD_KINDS, 'kind of thread'),
        state: readWord(thread.state, THREAD_STATES, 'state of a thread'),
      }) &&
      (fabricatorCompanyId === null || thread.audienceCompanyId === fabricatorCompanyId),
  )
  const lastLook = shares
    .filter(({ lookedAt }) => lookedAt !== null)
    .sort((a, b) => (b.lookedAt?.getTime() ?? 0) - (a.lookedAt?.getTime() ?? 0))[0]
  const contentHash = hashDeclaredContent({
    design,
    storedDesign: loaded.storedDesign,
    artwork: record.artwork.map(({ id, originalName, sizeBytes, sha256 }) => ({
      id,
      fileName: originalName,
      sizeBytes,
      sha256,
    })),
  })
  const declared = {
    sharedWith: shares.map(({ company }) => ({ companyId: company.id, companyName: company.name })),
    declarations: record.declarations
      .filter(({ companyId }) => isVisible(companyId))
      .map((declaration) => toDeclaration(record, declaration)),
    takenOff: listTakenOff(record).filter(({ companyId }) => isVisible(companyId)),
  }
  return {
    evaluatedOn: evaluatedOn.toISOString().slice(0, 10),
    fabricatorsInvited: shares.length,
    openEngineeringQueries: open.filter(({ kind }) => kind === 'engineering-query').length,
    openMustChangeThreads: open.filter(({ kind }) => kind === 'must-change').length,
    daysSinceFabricatorLooked:
      lastLook?.lookedAt == null ? null : Math.floor((evaluatedOn.getTime() - lastLook.lookedAt.getTime()) / DAY_MS),
    changesSinceFabricatorLooked: countChangesSince(lastLook?.lookedJson ?? null, design),
    buildableDeclarationStands: isDeclaredBuildable(declared, contentHash),
    sheetLacks: findSheetLacks(design),
    revisionLabel: record.label,
    ...gatherArtworkFacts(loaded),
    ...gatherFabricationFacts(design, sheets, evaluatedOn.toISOString().slice(0, 10)),
  }
}

/** What the artwork says, for results that are recorded and for drafts. */
export function gatherArtworkFacts(loaded: LoadedRevision): ArtworkReviewFacts {
  return {
    artworkFileCount: loaded.record.artwork.length,
    artworkFileNames: listArtworkNames(loaded),
    artwork: loaded.artwork.facts,
    onPlan: loaded.artwork.onPlan,
  }
}

/** Files as they were uploaded, and those in archives. */
function listArtworkNames({ record, artwork }: LoadedRevision): string[] {
  const uploaded = record.artwork.map(({ originalName }) => originalName)
  return [...new Set([...uploaded, ...(artwork.facts?.files ?? []).map(({ name }) => name)])]
}

function countChangesSince(lookedJson: string | null, design: Design): number | null {
  return lookedJson === null ? null : countBuiltChanges(readStoredDesign(lookedJson), design)
}

/**
 * Evaluates the revision and stores the results, unless the stored ones were made from the same design, limits, engine
 * and facts. The passing of days alone makes no new record: a signature must not lapse overnight.
 *
 * @param when  `always` evaluates for the day of `at` too, and stores results that differ
 * @returns the revision with the results that are stored now; the same object where none were added
 */
export async function recordEvaluation(
  tx: TransactionClient,
  loaded: LoadedRevision,
  at: Date,
  when: 'inputs-changed' | 'always' = 'inputs-changed',
): Promise<LoadedRevision> {
  const { record } = loaded
  const limits = combineLimits(loaded.sheets, null)
  const {
    evaluatedOn: _day,
    daysSinceFabricatorLooked: _days,
    orderSlackDays: _slack,
    ...facts
  } = gatherFacts(loaded, null, at)
  const { contentHash } = loaded.template.review
  const template = contentHash === '' ? {} : { template: contentHash }
  const sheets = listSheetVersionsOf(pickSheets(loaded.fabrication, null))
  const checked = listCheckedVersions(loaded.sheets)
  const inputsHash = hashJson({
    designHash: record.designHash,
    limits,
    facts,
    engineVersion: ENGINE_VERSION,
    ...(sheets.length === 0 ? {} : { sheets }),
    ...(checked.length === 0 ? {} : { checked }),
    ...template,
  })
  const last = record.evaluations[0]
  const hasSameInputs = last?.inputsHash === inputsHash
  if (hasSameInputs && when === 'inputs-changed') return loaded
  const results = evaluateFor(loaded, { fabricatorCompanyId: null, evaluatedOn: at })
  if (
    hasSameInputs &&
    hashJson(results) === hashJson(parseStoredJson('a stored calculation', unpackText(last.resultsJson)))
  )
    return loaded
  const stored = await tx.evaluation.create({
    data: {
      revisionId: record.id,
      ordinal: (last?.ordinal ?? 0) + 1,
      designHash: record.designHash,
      limitsHash: hashLimitsOf(loaded, null),
      inputsHash,
      engineVersion: results.engineVersion,
      resultsJson: packText(JSON.stringify(results)),
      createdAt: at,
    },
  })
  if (last !== undefined) await dropUnsigned(tx, record, last)
  return { ...loaded, record: { ...record, evaluations: [stored] } }
}

/**
 * Results that others take the place of are kept where somebody signed, declared or reviewed what they say; otherwise nothing refers to them any more.
 * Words from before there were these results do not count.
 */
async function dropUnsigned(
  tx: TransactionClient,
  { id: revisionId, signatures, declarations, reviewStatements }: LoadedRevision['record'],
  last: { readonly id: string; readonly ordinal: number; readonly createdAt: Date },
): Promise<void> {
  const said = [
    ...signatures.map(({ signedAt }) => signedAt),
    ...declarations.map(({ madeAt }) => madeAt),
    ...reviewStatements.map(({ madeAt }) => madeAt),
  ]
  if (said.some((at) => at >= last.createdAt)) return
  await tx.evaluation.deleteMany({ where: { id: last.id, revisionId } })
}
