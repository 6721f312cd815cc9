import 'server-only'
import { now } from '@/lib/config'
import { type Design, evaluate } from '@/lib/engine'
import {
  assessInOrder,
  assessShelf,
  countCapability,
  describeConditions,
  describeShelfRow,
  findSubstitutes,
  formatParameterLimit,
  formatParameterValue,
  type ParameterAssessment,
  type PurchaseAssessment,
  type ShelfContent,
  type ValueAssessment,
} from '@/lib/fabrication'
import { type Actor, requireRevisionInView } from './authorization'
import { combineLimits } from './effective-limits'
import { gatherFacts } from './evaluation'
import { measureOnce } from './fabrication-facts'
import { read } from './read'
import { type CompanySheets, pickSheets } from './sheet-records'
import { type LoadedRevision, loadRevision } from './snapshot'
import type { FabricationFitView, FabricatorFitView, FitCellView, FitMaterialView, FitParameterView } from './views'

/**
 * A revision against the matrices and shelves of the fabricators with whom it is shared, side by side. To a fabricator
 * the own company alone, with nothing that tells of another.
 */
export async function getFabricationFit(actor: Actor, revisionId: string): Promise<FabricationFitView> {
  const { loaded, fabricatorCompanyId } = await read(actor, async ({ tx, standing }) => {
    const scope = await requireRevisionInView(tx, standing, revisionId)
    return { loaded: await loadRevision(tx, revisionId), fabricatorCompanyId: scope.fabricatorCompanyId }
  })
  // Outside the transaction: trials of substitutes are evaluations in full, and nobody should wait for them.
  const today = now().toISOString().slice(0, 10)
  const companies = pickSheets(loaded.fabrication, fabricatorCompanyId)
  const measured = measureOnce(loaded.design)
  const columns = companies.map(({ sheets }) => assessInOrder(measured, sheets.matrix?.content.rows ?? []))
  return {
    revisionId,
    label: loaded.record.label,
    today,
    needDate: loaded.design.brief.needDate,
    isFabricator: fabricatorCompanyId !== null,
    fabricators: companies.map((sheets, index) => makeFabricatorView(loaded, sheets, columns[index] ?? [], today)),
    parameters: measured.parameters.map((_, index) =>
      makeParameterView(
        columns.map((column) => column[index]),
        loaded,
        index,
      ),
    ),
  }
}

function makeParameterView(
  columns: readonly (ParameterAssessment | undefined)[],
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
    measuredAs: parameter.measuredAs,
    without,
    values: values.map(({ value, place, foilUm }, at) => ({
      at: `${place.kind} ${place.id}`,
      text: formatParameterValue(parameter, value),
      place: place.name,
      foilUm,
      cells: columns.flatMap((column) => {
        const assessed = column?.values[at]
        return assessed === undefined ? [] : [makeCell(parameter, assessed)]
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

function makeFabricatorView(
  loaded: LoadedRevision,
  { companyId, companyName, sheets }: CompanySheets,
  column: readonly ParameterAssessment[],
  today: string,
): FabricatorFitView {
  const { matrix, shelf } = sheets
  return {
    company: { id: companyId, kind: 'fabricator', name: companyName },
    matrix: matrix === undefined ? null : { version: matrix.version, issuedOn: matrix.issuedOn },
    counts: matrix === undefined ? null : countCapability(column),
    shelf:
      shelf === undefined
        ? null
        : {
            version: shelf.version,
            issuedOn: shelf.issuedOn,
            buildTimeDays: shelf.content.buildTimeDays,
            ...makeShelfView(loaded, companyId, shelf.content, matrix?.content.rows, today),
          },
  }
}

function makeShelfView(
  loaded: LoadedRevision,
  companyId: string,
  shelf: ShelfContent,
  matrix: Parameters<typeof findSubstitutes>[3]['matrix'],
  today: string,
) {
  const { design } = loaded
  const { purchases, counts } = assessShelf(design, shelf, today)
  const evaluateDesign = makeEvaluator(loaded, companyId)
  const isMissing = ({ state }: PurchaseAssessment) => state !== 'on-shelf'
  const evaluation = purchases.some(isMissing) ? evaluateDesign(design) : null
  const options = { evaluateDesign, ...(matrix === undefined ? {} : { matrix }) }
  const materials = purchases.map((found): FitMaterialView => {
    const { purchase, name, state, reason, row, order } = found
    const search =
      evaluation !== null && isMissing(found) ? findSubstitutes(design, found, shelf, { ...options, evaluation }) : null
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
 * Evaluates trials under the workspace's limits and this fabricator's. What the review knows stays as it is, so that only
 * the construction moves verdicts; what the sheets say of it is held against them apart.
 */
function makeEvaluator(loaded: LoadedRevision, companyId: string) {
  const { capability: _fit, stock: _stock, orderSlackDays: _slack, ...facts } = gatherFacts(loaded, companyId, now())
  const limits = combineLimits(loaded.sheets, companyId)
  return (design: Design) => evaluate(design, { items: loaded.template.catalogue.items, limits, facts })
}
