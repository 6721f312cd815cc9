import 'server-only'
import { type Design, readStoredDesign } from '@/lib/engine'
import {
  ALTERNATIVE_RULE,
  type Estimate,
  estimate,
  type FabricatorBasis,
  findCalledMaterials,
  findPricedNesting,
  listAlternatives,
  makeCostBasis,
  makeRates,
  type Nester,
  priceOverQuantity,
  type RegistrationDemand,
  type RemedyBasis,
  readNestedPart,
  type ShelfContent,
  withKnownPart,
} from '@/lib/fabrication'
import { type Actor, requireRevisionInView } from '../records/authorization'
import { toBasis } from '../records/fabrication-facts'
import { findFabricatorsInView, toFabricatorView } from '../records/fabricators-in-view'
import { isVisibleTo } from '../records/loaded-revision'
import { withNesting } from '../records/nesting'
import { type CompanySheets, loadCompanySheets, pickShownSheets } from '../records/sheet-records'
import type { TransactionClient } from '../store/client'
import { computing } from '../store/computations'
import { NotFoundError } from '../store/errors'
import type { CompanyView } from '../views'
import { read } from './read'

/** What one fabricator's panels make of a revision, and which of their sheets were used. */
export interface FabricatorEstimateView {
  readonly company: CompanyView
  /** May the person who asks have the fabricator's panel formats and rates? Where not, nothing is estimated. */
  readonly isShown: boolean
  /** Version of the sheet; null where the fabricator keeps none, or does not show it. */
  readonly formatsVersion: number | null
  readonly ratesVersion: number | null
  readonly estimate: Estimate
  /** Format on which a good part costs least. */
  readonly pricedFormatId: string | null
}

export interface PanelsView {
  readonly revisionId: string
  readonly label: string
  readonly fabricators: readonly FabricatorEstimateView[]
}

export interface ComparedConstructionView {
  readonly id: string
  readonly kind: 'this' | 'revision' | 'ready-made'
  readonly name: string
  /** Null where it cannot be priced, with the reason. */
  readonly indexPerGoodPart: number | null
  readonly reason: string
  readonly partsPerPanel: number | null
  readonly formatName: string | null
  readonly registration: RegistrationDemand | null
  /** Over this revision's cost. */
  readonly ratio: number | null
  /** Does it count for the review's item on cost? */
  readonly counts: boolean
}

export interface FabricatorCostView extends FabricatorEstimateView {
  readonly overQuantity: readonly { readonly quantity: number; readonly indexPerGoodPart: number }[]
  readonly constructions: readonly ComparedConstructionView[]
}

export interface CostsView {
  readonly revisionId: string
  readonly label: string
  /** Good parts priced for; null is an endless run. */
  readonly quantity: number | null
  readonly isStatedQuantity: boolean
  readonly alternativeRule: string
  readonly fabricators: readonly FabricatorCostView[]
}

/** What remedies are priced by, at one fabricator: plain data that goes to the browser. */
export interface RemedyBasisView extends RemedyBasis {
  readonly company: CompanyView
  readonly usesIllustrativeRates: boolean
}

interface Loaded {
  readonly label: string
  readonly design: Design
  readonly fabricators: readonly CompanySheets[]
  readonly others: readonly { readonly id: string; readonly label: string; readonly design: Design }[]
}

/** Quantities over which cost is drawn. */
const QUANTITIES = [10, 20, 50, 100, 200, 500, 1000, 2000, 5000, 10_000, 20_000, 50_000, 100_000]

/**
 * Parts on the panels of each fabricator with whom the revision is shared and who shows them to the person who asks; to a fabricator
 * only its own panels.
 */
export async function getPanels(actor: Actor, revisionId: string): Promise<PanelsView> {
  const { label, design, fabricators } = await loadProduction(actor, revisionId)
  return computing(() =>
    withNesting((nest) => ({
      revisionId,
      label,
      fabricators: fabricators.map((sheets) => makeEstimateView(design, sheets, nest)),
    })),
  )
}

/**
 * Cost of the revision's construction at each fabricator, its steps, its course over the quantity, and beside other
 * constructions of the same part. To a fabricator by its own rates alone.
 *
 * @param quantity  good parts; null takes the brief's, and an endless run where that states none
 */
export async function getCosts(actor: Actor, revisionId: string, quantity: number | null = null): Promise<CostsView> {
  const { label, design, fabricators, others } = await loadProduction(actor, revisionId)
  const stated = design.brief.quantityPerYear
  const priced: Design = { ...design, brief: { ...design.brief, quantityPerYear: quantity ?? stated } }
  return computing(() =>
    withNesting((nest) => ({
      revisionId,
      label,
      quantity: priced.brief.quantityPerYear,
      isStatedQuantity: quantity === null,
      alternativeRule: ALTERNATIVE_RULE,
      fabricators: fabricators.map((sheets) => {
        const view = makeEstimateView(priced, sheets, nest)
        return {
          ...view,
          overQuantity: view.estimate.ok ? priceOverQuantity(view.estimate, QUANTITIES) : [],
          constructions: compareConstructions(priced, label, others, toBasis(sheets), view.estimate, nest),
        }
      }),
    })),
  )
}

/**
 * What the remedies of a bend are priced by and which materials they may use, for each fabricator that states panel
 * formats or keeps a shelf.
 */
export async function getRemedyBases(actor: Actor, revisionId: string): Promise<readonly RemedyBasisView[]> {
  const { design, fabricators } = await loadProduction(actor, revisionId)
  return computing(() => withNesting((nest) => makeRemedyBases(design, fabricators, nest)))
}

function makeRemedyBases(design: Design, fabricators: readonly CompanySheets[], nest: Nester): RemedyBasisView[] {
  const reading = readNestedPart(design)
  return fabricators.flatMap((sheets): RemedyBasisView[] => {
    const { formats, rates: ratesContent } = toBasis(sheets)
    const shelf = sheets.sheets.shelf?.content ?? null
    const hasFormats = formats !== null && formats.formats.length > 0
    if (!hasFormats && shelf === null) return []
    const rates = makeRates(ratesContent)
    return [
      {
        company: toFabricatorView(sheets),
        basis: hasFormats && reading.ok ? makeCostBasis(reading.part, formats.formats, rates, nest) : null,
        noBasisReason: hasFormats ? (reading.ok ? '' : reading.reason) : explainNoFormats(sheets),
        part: reading.ok ? reading.part : null,
        usesIllustrativeRates: rates.steps.some(({ isIllustrative }) => isIllustrative),
        shelf,
        unavailableMaterialIds: shelf === null ? [] : listUnavailableMaterials(design, shelf),
      },
    ]
  })
}

function explainNoFormats({ sharing }: CompanySheets): string {
  return sharing.rates === 'shown'
    ? 'The fabricator keeps no panel formats.'
    : 'The fabricator does not share its panel formats and rates here.'
}

/** Listed, but neither held nor with a lead time in any of the rows that name it. */
function listUnavailableMaterials(design: Design, shelf: ShelfContent): string[] {
  const had = new Map<string, boolean>()
  for (const { material, onShelf, leadTimeDays } of shelf.rows) {
    const canBeHad = onShelf || leadTimeDays !== null
    for (const { id } of findCalledMaterials(design, material)) had.set(id, had.get(id) === true || canBeHad)
  }
  return [...had].flatMap(([id, canBeHad]) => (canBeHad ? [] : [id]))
}

/**
 * Loads in one transaction and leaves it before anything is nested: reads share the database's one connection, and
 * nobody should wait for a panel.
 */
function loadProduction(actor: Actor, revisionId: string): Promise<Loaded> {
  return read(actor, async ({ tx, rights }) => {
    const scope = await requireRevisionInView(tx, rights, revisionId)
    const { fabricatorCompanyId, revision } = scope
    const row = await tx.revision.findUniqueOrThrow({ where: { id: revisionId }, select: { designJson: true } })
    const companies = await listSharedCompanies(tx, revisionId)
    const visible = companies.filter(({ id }) => isVisibleTo(fabricatorCompanyId, id))
    const place = { projectId: revision.projectId, fabricatorCompanyId }
    const found = await findFabricatorsInView(tx, rights, place, await loadCompanySheets(tx, visible))
    const fabricators = pickShownSheets(found, fabricatorCompanyId)
    const rows = await tx.revision.findMany({
      where: { projectId: revision.projectId, id: { not: revisionId } },
      orderBy: { createdAt: 'asc' },
      select: { id: true, label: true, designJson: true },
    })
    const others: Loaded['others'][number][] = []
    for (const other of rows) {
      if (!(await isInView(tx, rights, other.id))) continue
      others.push({ id: other.id, label: other.label, design: readStoredDesign(other.designJson) })
    }
    return { label: revision.label, design: readStoredDesign(row.designJson), fabricators, others }
  })
}

async function listSharedCompanies(tx: TransactionClient, revisionId: string) {
  const shares = await tx.revisionShare.findMany({
    where: { revisionId },
    select: { company: { select: { id: true, name: true } } },
    orderBy: { company: { nameKey: 'asc' } },
  })
  return shares.map(({ company }) => company)
}

async function isInView(
  tx: TransactionClient,
  rights: Parameters<typeof requireRevisionInView>[1],
  revisionId: string,
): Promise<boolean> {
  try {
    await requireRevisionInView(tx, rights, revisionId)
    return true
  } catch (error) {
    if (error instanceof NotFoundError) return false
    throw error
  }
}

function makeEstimateView(design: Design, sheets: CompanySheets, nest: Nester): FabricatorEstimateView {
  const result = estimate(design, toBasis(sheets), nest)
  return {
    company: toFabricatorView(sheets),
    isShown: sheets.sharing.rates === 'shown',
    formatsVersion: sheets.sheets['panel-formats']?.version ?? null,
    ratesVersion: sheets.sheets['process-rates']?.version ?? null,
    estimate: result,
    pricedFormatId: findPricedNesting(result)?.format.id ?? null,
  }
}

function compareConstructions(
  design: Design,
  label: string,
  others: Loaded['others'],
  basis: FabricatorBasis,
  own: Estimate,
  nest: Nester,
): ComparedConstructionView[] {
  const ownIndex = own.ok ? (own.cost?.indexPerGoodPart ?? null) : null
  const quantityPerYear = design.brief.quantityPerYear
  const describe = (
    named: Pick<ComparedConstructionView, 'id' | 'kind' | 'name' | 'counts'>,
    result: Estimate,
  ): ComparedConstructionView => {
    const cost = result.ok ? result.cost : null
    return {
      ...named,
      indexPerGoodPart: cost?.indexPerGoodPart ?? null,
      reason: result.ok ? (cost === null ? 'The part does not fit on any panel.' : '') : result.reason,
      partsPerPanel: cost?.panel.partsPerPanel ?? null,
      formatName: cost?.panel.formatName ?? null,
      registration: cost?.registration ?? null,
      ratio: cost === null || ownIndex === null ? null : cost.indexPerGoodPart / ownIndex,
    }
  }
  const ofRevisions = others.map(({ id, label: other, design: stored }) =>
    describe(
      { id, kind: 'revision', name: `Revision ${other}`, counts: false },
      estimate({ ...stored, brief: { ...stored.brief, quantityPerYear } }, basis, nest),
    ),
  )
  const readyMade = listAlternatives(withKnownPart(design)).map(({ id, name, design: other }) =>
    describe({ id, kind: 'ready-made', name, counts: true }, estimate(other, basis, nest)),
  )
  return [
    describe({ id: 'this', kind: 'this', name: `Revision ${label}, current`, counts: true }, own),
    ...ofRevisions,
    ...readyMade,
  ]
}
