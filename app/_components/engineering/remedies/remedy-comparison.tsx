'use client'

import { type ReactNode, useMemo } from 'react'
import { Button } from '@/app/_components/ui/button'
import { type Columns, DataRow, DataTable } from '@/app/_components/ui/data-table'
import { SideDialog } from '@/app/_components/ui/dialog'
import { Length, useLengthUnit } from '@/app/_components/ui/unit-context'
import { VerdictMark } from '@/app/_components/ui/verdict-mark'
import { drawStrainPlot, nameConductorLayers, SCREEN_PALETTE } from '@/lib/drawing'
import {
  type ArtworkReviewFacts,
  type Design,
  type DraftEvaluation,
  evaluateDraft,
  formatComputedDigits,
  LIFE_CAUTION_SHORT,
  type LimitOverride,
  RANGE_OVER,
  type Remedy,
  readBendLife,
  type TestedLife,
} from '@/lib/engine'
import { type CatalogueTemplate, makeCatalogue } from '@/lib/engine/catalogue'
import { applyDesignPatch } from '@/lib/engine/remedies'
import { asEntered, digitsAsComputed, digitsOfRadius } from '@/lib/engine/units'
import { type CheckedLimit, markDraftCheckedWhenSaved } from '@/lib/review'
import { useUnitLabels } from '../cells'
import { PictureView, usePlotDocument } from '../pictures'
import { listMovedVerdicts } from './moved-verdicts'
import { RemedyDetail } from './remedy-list'
import { nameRemedy } from './words'

const PLOT_WIDTH_PX = 400
const PLOT_HEIGHT_PX = 280

interface RemedyComparisonProps {
  readonly remedy: Remedy
  /** The design that the remedy was found for. */
  readonly design: Design
  readonly bendId: string
  readonly limits: readonly LimitOverride[]
  readonly testedLives: readonly TestedLife[]
  readonly artworkFacts: ArtworkReviewFacts
  readonly checkedLimits: readonly CheckedLimit[]
  readonly template: CatalogueTemplate
  readonly onClose: () => void
  /** Null where it cannot be applied. */
  readonly onApply: (() => void) | null
}

interface Side {
  readonly title: string
  readonly design: Design
  readonly evaluation: DraftEvaluation
}

const MOVED_COLUMNS = {
  item: { head: 'Item', isRowHead: true },
  before: { head: 'As it is' },
  after: { head: 'With the remedy' },
  afterwards: { head: 'Then', className: 'small' },
} satisfies Columns

/** The design as it is beside the design with the remedy, both evaluated in full; nothing is edited yet. */
export function RemedyComparison({
  remedy,
  design,
  bendId,
  limits,
  testedLives,
  artworkFacts,
  checkedLimits,
  template,
  onClose,
  onApply,
}: RemedyComparisonProps) {
  const { items } = useMemo(() => makeCatalogue(template), [template])
  const sides = useMemo((): readonly [Side, Side] => {
    const patched = applyDesignPatch(design, remedy.patch)
    const run = (each: Design) =>
      markDraftCheckedWhenSaved(
        evaluateDraft(each, { limits, testedLives, facts: artworkFacts, items }),
        items,
        checkedLimits,
      )
    return [
      { title: 'As it is', design, evaluation: run(design) },
      { title: 'With the remedy', design: patched, evaluation: run(patched) },
    ]
  }, [design, remedy, limits, testedLives, artworkFacts, checkedLimits, items])
  const [before, after] = sides
  const moved = useMemo(() => listMovedVerdicts(before.evaluation, after.evaluation, items), [before, after, items])
  return (
    <SideDialog title={nameRemedy(remedy)} isOpen onOpenChange={(isOpen) => !isOpen && onClose()}>
      <div className="remedy-comparison stack">
        <RemedyDetail remedy={remedy} />
        <FigureTable before={before} after={after} bendId={bendId} />
        <div className="bench">
          {sides.map((side) => (
            <StrainSide key={side.title} side={side} bendId={bendId} />
          ))}
        </div>
        <h3>Verdicts that change</h3>
        {moved.length === 0 ? (
          <p className="empty">No checklist verdict changes.</p>
        ) : (
          <DataTable label="Verdicts that the remedy changes" columns={MOVED_COLUMNS}>
            {moved.map((item) => (
              <DataRow
                key={item.itemId}
                columns={MOVED_COLUMNS}
                cells={{
                  item: item.question,
                  before: <VerdictMark verdict={item.before} />,
                  after: <VerdictMark verdict={item.after} />,
                  afterwards: item.headline,
                }}
              />
            ))}
          </DataTable>
        )}
        {checkedLimits.length > 0 && (
          <p className="small muted">Limits that a fabricator keeps private are checked when you save.</p>
        )}
        <div className="row">
          {onApply !== null && (
            <Button weight="strong" onPress={onApply}>
              Apply to the draft
            </Button>
          )}
          <Button onPress={onClose}>Close</Button>
          {onApply === null && remedy.forbiddenBy.length > 0 && (
            <span className="small muted">A stated need forbids it: change the need, or edit the design by hand.</span>
          )}
        </div>
      </div>
    </SideDialog>
  )
}

function FigureTable({ before, after, bendId }: { before: Side; after: Side; bendId: string }) {
  const bendOf = ({ evaluation }: Side) => evaluation.bends.find((bend) => bend.bendId === bendId)
  const [own, changed] = [bendOf(before), bendOf(after)]
  const { unit } = useLengthUnit()
  const units = useUnitLabels()
  const rows: { name: string; before: ReactNode; after: ReactNode }[] = []
  const add = (name: string, read: (bend: NonNullable<typeof own>) => ReactNode) => {
    rows.push({ name, before: own === undefined ? '–' : read(own), after: changed === undefined ? '–' : read(changed) })
  }
  add('Copper strain, %', (bend) => digitsAsComputed(bend.peakStrainPct, 'strainPct'))
  add(`${RANGE_OVER.both}, %`, (bend) =>
    bend.peakRangePct === null
      ? '–'
      : `${digitsAsComputed(bend.peakRangePct.low, 'strainPct')} to ${digitsAsComputed(bend.peakRangePct.high, 'strainPct')}`,
  )
  add('Allowed, %', (bend) => digitsAsComputed(bend.allowablePct, 'strainPct'))
  add(`${RANGE_OVER.constants}, %`, (bend) =>
    bend.allowableRangePct === null
      ? '–'
      : `${digitsAsComputed(bend.allowableRangePct.low, 'strainPct')} to ${digitsAsComputed(bend.allowableRangePct.high, 'strainPct')}`,
  )
  add(`Minimum inside radius, ${units.plan}`, (bend) => digitsOfRadius(bend.minRadiusByStrainMm, unit))
  if (own?.survivalLifeCycles != null) {
    add(`Life, ${asEntered(own.survivalPct, 'pct')} survive, cycles (${LIFE_CAUTION_SHORT})`, (bend) =>
      formatComputedDigits(readBendLife(bend), 'lifeCycles'),
    )
  }
  add('Bending moment, N·mm', (bend) => digitsAsComputed(bend.momentNmm, 'momentNmm'))
  for (const zone of before.evaluation.zones) {
    const then = after.evaluation.zones.find(({ zoneId }) => zoneId === zone.zoneId)
    if (then === undefined) continue
    rows.push({
      name: `Thickness of ${zone.name}`,
      before: <Length valueUm={zone.thicknessUm} />,
      after: <Length valueUm={then.thicknessUm} />,
    })
  }
  const columns = {
    figure: { head: 'Figure', isRowHead: true },
    beforeTitle: { head: before.title, isNumeric: true },
    afterTitle: { head: after.title, isNumeric: true },
  } satisfies Columns
  return (
    <DataTable label="Figures with and without the remedy" columns={columns} isStacked={false}>
      {rows.map((row) => (
        <DataRow
          key={row.name}
          columns={columns}
          cells={{
            figure: row.name,
            beforeTitle: row.before,
            afterTitle: row.after,
          }}
        />
      ))}
    </DataTable>
  )
}

function StrainSide({ side, bendId }: { side: Side; bendId: string }) {
  const { unit } = useLengthUnit()
  const plotDocument = usePlotDocument()
  const picture = useMemo(() => {
    const { design, evaluation } = side
    const bend = design.bends.find(({ id }) => id === bendId)
    const result = evaluation.bends.find((each) => each.bendId === bendId)
    const zone = evaluation.zones.find(({ zoneId }) => zoneId === bend?.zoneId)
    if (plotDocument === null || bend === undefined || result === undefined || zone === undefined) return null
    return drawStrainPlot(result, zone, bend.insideFace, {
      document: plotDocument,
      palette: SCREEN_PALETTE,
      widthPx: PLOT_WIDTH_PX,
      heightPx: PLOT_HEIGHT_PX,
      unit,
      designations: nameConductorLayers(design.construction),
    })
  }, [side, bendId, plotDocument, unit])
  return picture === null ? null : (
    <PictureView picture={picture} caption={`${side.title}: strain through the thickness`} />
  )
}
