import 'server-only'
import { now } from '@/lib/config'
import {
  assessInOrder,
  assessShelf,
  countCapability,
  describeConditions,
  describeShelfRow,
  formatParameterLimit,
  formatParameterValue,
  type ParameterAssessment,
  type PurchaseAssessment,
  type ShelfContent,
  type ValueAssessment,
} from '@/lib/fabrication'
import { type Actor, requireRevisionInView } from '../records/authorization'
import { findSubstitutesBounded } from '../records/bounded-evaluation'
import { combineLimits } from '../records/effective-limits'
import { gatherFacts } from '../records/evaluation'
import { measureOnce } from '../records/fabrication-facts'
import { findFabricatorsInView, toFabricatorView } from '../records/fabricators-in-view'
import { type LoadedRevision, loadRevision } from '../records/loaded-revision'
import { type CompanySheets, pickSheets } from '../records/sheet-records'
import { combineTestedLives } from '../records/tested-lives'
import { computing } from '../store/computations'
import type { FabricationFitView, FabricatorFitView, FitCellView, FitMaterialView, FitParameterView } from '../views'
import { read } from './read'

/**
 * A revision against the matrices and shelves of the fabricators with whom it is shared, side by side. To a fabricator
 * only its own company, with nothing that tells of another.
 */
export async function getFabricationFit(actor: Actor, revisionId: string): Promise<FabricationFitView> {
  const { loaded, fabrication, fabricatorCompanyId } = await read(actor, async ({ tx, rights }) => {
    const { fabricatorCompanyId: ownId } = await requireRevisionInView(tx, rights, revisionId)
    const stored = await loadRevision(tx, revisionId)
    const place = { projectId: stored.record.projectId, fabricatorCompanyId: ownId }
    return {
      loaded: stored,
      fabrication: await findFabricatorsInView(tx, rights, place, stored.fabrication),
      fabricatorCompanyId: ownId,
    }
  })
  // Outside the transaction: trials of substitutes are evaluations in full, and nobody should wait for them.
  return computing(() => makeFit(loaded, fabrication, fabricatorCompanyId))
}

function makeFit(
  loaded: LoadedRevision,
  fabrication: readonly CompanySheets[],
  fabricatorCompanyId: string | null,
): FabricationFitView {
  const today = now().toISOString().slice(0, 10)
  const companies = pickSheets(fabrication, fabricatorCompanyId)
  const measured = measureOnce(loaded.design)
  const columns = companies.map(({ sheets }) => assessInOrder(measured, sheets.matrix?.content.rows ?? []))
  // Of a matrix that is not shared there is no cell: "not stated" would be untrue.
  const shown = companies.map(({ sharing }) =>
    sharing.matrix === 'not-shared' ? undefined : sharing.matrix === 'shown',
  )
  return {
    revisionId: loaded.record.id,
    label: loaded.record.label,
    today,
    needDate: loaded.design.brief.needDate,
    isFabricator: fabricatorCompanyId !== null,
    fabricators: companies.map((sheets, index) => makeFabricatorView(loaded, sheets, columns[index] ?? [], today)),
    parameters: measured.parameters.map((_, index) =>
      makeParameterView(
        columns.map((column) => column[index]),
        shown,
        loaded,
        index,
      ),
    ),
  }
}

function makeParameterView(
  columns: readonly (ParameterAssessment | undefined)[],
  shown: readonly (boolean | undefined)[],
  { design }: LoadedRevision,
  index: number,
): FitParameterView {
  const found = measureOnce(design).parameters[index]
  if (found === undefined) throw new RangeError(`there is no parameter ${index}`)
  const { parameter, values, without } = found
  return {
    key: parameter.key,
    group: parameter.group,
    name: parameter.name,
    question: parameter.question,
    measuredAs: parameter.measuredAs,
    without,
    values: values.map(({ value, place, foilUm }, at) => ({
      at: `${place.kind} ${place.id}`,
      text: formatParameterValue(parameter, value),
      place: place.name,
      foilUm,
      cells: columns.flatMap((column, company) => {
        const assessed = column?.values[at]
        if (assessed === undefined || shown[company] === undefined) return []
        return [shown[company] === true ? makeCell(parameter, assessed) : withholdCell(assessed)]
      }),
    })),
  }
}

function makeCell(parameter: ParameterAssessment['parameter'], { verdict, row, change }: ValueAssessment): FitCellView {
  if (row === null) return { verdict, comfortable: null, stretch: null, conditions: '', note: '', change }
  return {
    verdict,
    comfortable: formatParameterLimit(parameter, row.comfortable),
    stretch: formatParameterLimit(parameter, row.stretch),
    conditions: describeConditions(row),
    note: row.note,
    change,
  }
}

/** Of a matrix that is only checked against: where the value falls, and nothing of the row that says so. */
function withholdCell({ verdict }: ValueAssessment): FitCellView {
  return { verdict, comfortable: null, stretch: null, conditions: '', note: '', change: null }
}

function makeFabricatorView(
  loaded: LoadedRevision,
  company: CompanySheets,
  column: readonly ParameterAssessment[],
  today: string,
): FabricatorFitView {
  const { sharing, sheets } = company
  const { matrix, shelf } = sheets
  return {
    company: toFabricatorView(company),
    sharing,
    matrix: matrix === undefined ? null : { version: matrix.version, issuedOn: matrix.issuedOn },
    counts: matrix === undefined ? null : countCapability(column),
    shelf:
      shelf === undefined
        ? null
        : {
            version: shelf.version,
            issuedOn: shelf.issuedOn,
            buildTimeDays: shelf.content.buildTimeDays,
            ...makeShelfView(loaded, company, shelf.content, today),
          },
  }
}

function makeShelfView(loaded: LoadedRevision, company: CompanySheets, shelf: ShelfContent, today: string) {
  const { design, template } = loaded
  // What is only checked against is not for trying things on: sentences about a trial would tell of its limits.
  const matrix = company.sharing.matrix === 'shown' ? company.sheets.matrix?.content.rows : undefined
  const { purchases, counts } = assessShelf(design, shelf, today)
  const trials = makeTrialContext(loaded, company)
  const isMissing = ({ state }: PurchaseAssessment) => state !== 'on-shelf'
  const materials = purchases.map((found): FitMaterialView => {
    const { purchase, name, state, reason, row, order } = found
    const search = isMissing(found)
      ? findSubstitutesBounded(
          { design, purchase: found, shelf, matrix: matrix ?? null, ...trials, template: template.content },
          template,
        )
      : null
    return {
      layerId: purchase.id,
      name,
      state,
      reason,
      form: row === null ? '' : [row.form, row.widthMm === null ? null : `${row.widthMm} mm`].filter(Boolean).join(' '),
      leadTimeDays: row?.leadTimeDays ?? null,
      minimumOrderM2: row?.minimumOrderM2 ?? null,
      note: row?.note ?? '',
      order,
      substitutes: (search?.kept ?? []).map(({ row: other, moves }) => ({ name: describeShelfRow(other), moves })),
      leftOut: (search?.leftOut ?? []).map(({ row: other, because }) => ({ name: describeShelfRow(other), because })),
    }
  })
  return { counts, materials }
}

/**
 * Trials are evaluated under the workspace's limits, and this fabricator's where the person who asks may see them. What the review
 * knows stays as it is, so that only the construction moves verdicts; what the sheets say of it is held against them apart.
 */
function makeTrialContext(loaded: LoadedRevision, company: CompanySheets) {
  const { companyId, sharing } = company
  const {
    capability: _fit,
    stock: _stock,
    orderSlackDays: _slack,
    ...facts
  } = gatherFacts(loaded, companyId, now(), [company])
  const { sheets } = loaded
  const visible = sharing.matrix === 'shown' ? sheets : { ...sheets, fabricators: [] }
  return { facts, limits: combineLimits(visible, companyId), testedLives: combineTestedLives(loaded, [company]) }
}
