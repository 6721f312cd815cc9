'use client'

import type { ReactNode } from 'react'
import { LifeCaution } from '@/app/_components/ui/cautions'
import { type Columns, DataRow, DataTable } from '@/app/_components/ui/data-table'
import { EnteredPlanLength, PlanLength } from '@/app/_components/ui/quantity'
import { Length, useLengthUnit } from '@/app/_components/ui/unit-context'
import { listStateFigures, listStateRows, listStrainRows, nameConductorLayers } from '@/lib/drawing'
import {
  type Bend,
  type BendResult,
  CAUTIONS,
  citeRecordedSource,
  describeOwnTests,
  explainNoMinRadius,
  formatComputedDigits,
  formatComputedReading,
  LIFE_CAUTION_SHORT,
  RANGE_OVER,
  readBendLife,
  readBendLifeRange,
} from '@/lib/engine'
import { asComputed, asEntered, digitsAsComputed, digitsOfRadius } from '@/lib/engine/units'
import { useUnitLabels } from '../cells'
import { useDraft } from '../draft'
import { PictureTableView } from '../pictures'

/** Radii side by side: what the laminate needs, what the handbook says, what the plain ratio says. */
export function RadiusComparison({ bend, result }: { bend: Bend; result: BendResult }) {
  const { handbook, ratio } = result
  const { unit } = useLengthUnit()
  const radiusHead = `Minimum radius, ${useUnitLabels().plan}`
  const notSought = explainNoMinRadius(result)
  const rows: { name: string; leastMm: number | null; how: ReactNode }[] = [
    {
      name: 'Strain in the laminate',
      leastMm: result.minRadiusByStrainMm,
      how:
        notSought ??
        (result.isMinRadiusFloor
          ? 'Copper would allow less, but this is the smallest radius at which the strain model holds.'
          : 'Axis of the formed section, copper past yield included; the radius at which copper strain just meets the allowable.'),
    },
    ...(bend.use === 'dynamic'
      ? [
          {
            name: `Life, ${asEntered(result.survivalPct, 'pct')} survive`,
            leastMm: result.minRadiusByLifeMm,
            how: notSought ?? `Fatigue-ductility relation, inverted for the required cycles; ${LIFE_CAUTION_SHORT}.`,
          },
        ]
      : []),
    {
      name: 'Handbook',
      leastMm: handbook.minRadiusMm,
      how: (
        <>
          {handbook.formula}
          {handbook.warning !== null && <>. {handbook.warning}</>} ({citeRecordedSource(handbook.sourceKey)})
        </>
      ),
    },
    {
      name: 'Ratio to thickness',
      leastMm: ratio.minRadiusMm,
      how: (
        <>
          {ratio.tableName}:{' '}
          {ratio.required === null ? 'no ratio stated' : `${asEntered(ratio.required)} times thickness`}; this bend has{' '}
          {asComputed(ratio.actual, 'radiusRatio')} times, which is{' '}
          {asComputed(ratio.surfaceStrainPct, 'surfaceStrainPct')} at the surface
          {ratio.advisedAgainst && '. The table advises against this construction in this use'} (
          {citeRecordedSource(ratio.sourceKey)})
        </>
      ),
    },
  ]
  const columns = {
    method: { head: 'Method', isRowHead: true },
    radiushead: { head: radiusHead, isNumeric: true },
    thisBend: { head: 'This bend' },
    how: { head: 'How', className: 'small' },
  } satisfies Columns
  return (
    <>
      <DataTable
        label="Figures of the bend"
        columns={columns}
        caption={
          <>
            Minimum inside radius by each method; this bend has <EnteredPlanLength valueMm={bend.insideRadiusMm} />.
          </>
        }
      >
        {rows.map((row) => (
          <DataRow
            key={row.name}
            columns={columns}
            cells={{
              method: row.name,
              radiushead: digitsOfRadius(row.leastMm, unit),
              thisBend:
                row.leastMm === null
                  ? 'not computed'
                  : bend.insideRadiusMm >= row.leastMm
                    ? 'large enough'
                    : 'too small',
              how: row.how,
            }}
          />
        ))}
      </DataTable>
      {result.disagreement.length > 0 && (
        <div className="stack small">
          <h3 className="label">Why they differ</h3>
          {result.disagreement.map((sentence) => (
            <p key={sentence}>{sentence}</p>
          ))}
        </div>
      )}
    </>
  )
}

/** Strain of each conductor layer against its allowable, with the source of the allowable. */
export function AllowableTable({ result }: { result: BendResult }) {
  const { live } = useDraft()
  const { unit } = useLengthUnit()
  const designations = nameConductorLayers(live.evaluatedDesign.construction)
  const sources = [...new Set(result.conductors.flatMap((conductor) => conductor.allowableSourceKey ?? []))]
  if (result.conductors.length === 0) return <p className="empty">No conductor lies in this bend.</p>
  const states = listStateRows(result, designations)
  return (
    <>
      <PictureTableView table={listStrainRows(result, { unit, designations })} />
      {states !== null && <PictureTableView table={states} />}
      {sources.length > 0 && (
        <p className="small muted">Allowable strain from {sources.map(citeRecordedSource).join('; ')}.</p>
      )}
    </>
  )
}

/** What else the bend comes to: life, moment, force, springback, lengths. */
export function BendFigures({ result }: { result: BendResult }) {
  const { springback } = result
  const { unit } = useLengthUnit()
  const units = useUnitLabels()
  const rows: { term: string; value: ReactNode }[] = []
  const add = (term: string, value: ReactNode) => rows.push({ term, value })
  add('Section thickness', <Length valueUm={result.sectionThicknessUm} />)
  if (result.leaves.length > 1) add('Unbonded leaves', result.leaves.length)
  if (result.firstBendStrainPct !== null) {
    const what = result.cycleRangePct === null ? 'Copper strain' : 'Copper strain, first bend'
    add(what, asComputed(result.firstBendStrainPct, 'strainPct'))
  }
  if (result.cycleRangePct !== null)
    add('Copper strain range of a cycle', asComputed(result.cycleRangePct, 'strainPct'))
  if (result.cycleRangePct !== null && result.greatestStrainPct !== null) {
    add('Maximum strain over the cycles, upper bound', asComputed(result.greatestStrainPct, 'strainPct'))
  }
  const governing = result.conductors.find(({ layerId }) => layerId === result.governingLayerId)
  if (governing?.governingMaterial != null) {
    add('Governing copper', `${governing.name}, ${governing.governingMaterial.name}`)
  }
  for (const leaf of result.leaves) {
    const ofLeaf = result.leaves.length > 1 ? `, leaf ${leaf.leafIndex + 1}` : ''
    add(
      `Axis from the inside face${ofLeaf}`,
      <>
        <Length valueUm={leaf.formedAxisDepthUm} /> formed, <Length valueUm={leaf.neutralAxisDepthUm} /> elastic
      </>,
    )
    add(
      `Accuracy of strain${ofLeaf}`,
      leaf.accuracyPct === null
        ? `not known at R/t ${digitsAsComputed(leaf.radiusRatio, 'times')}`
        : `${asComputed(leaf.accuracyPct, 'accuracyPct')} at R/t ${digitsAsComputed(leaf.radiusRatio, 'times')}, before tolerances and material constants${leaf.accuracyNote === null ? '' : `. ${leaf.accuracyNote}`}`,
    )
    if (leaf.momentAccuracyPct !== null) {
      add(
        `Accuracy of moment${ofLeaf}`,
        `${asComputed(leaf.momentAccuracyPct, 'accuracyPct')} at R/t ${digitsAsComputed(leaf.radiusRatio, 'times')}, before tolerances and material constants`,
      )
    }
  }
  const lifeRange = readBendLifeRange(result)
  if (result.survivalLifeCycles !== null) {
    add(
      `Life, ${asEntered(result.survivalPct, 'pct')} survive`,
      <>
        {formatComputedReading(readBendLife(result), 'lifeCycles')}
        {lifeRange !== null &&
          ` (${formatComputedDigits(lifeRange.low, 'lifeCycles')} to ${formatComputedDigits(lifeRange.high, 'lifeCycles')} ${RANGE_OVER.both})`}
        <LifeCaution />
      </>,
    )
  }
  if (result.medianLifeCycles !== null) {
    add(
      'Life, median',
      <>
        {formatComputedReading(readBendLife(result, 'median'), 'lifeCycles')}
        <LifeCaution />
      </>,
    )
  }
  const tests = describeOwnTests(result)
  if (tests !== null) add('Life rests on', tests)
  if (result.requiredCycles !== null) add('Required', asEntered(result.requiredCycles, 'cycles'))
  if (result.momentNmm !== null) add('Bending moment', asComputed(result.momentNmm, 'momentNmm'))
  if (result.holdingForceN !== null) {
    add('Holding force at the rigid edge', asComputed(result.holdingForceN, 'forceN'))
  }
  if (springback !== null) {
    add(
      'Set after release (springback)',
      springback.relaxedRadiusMm === null
        ? 'nothing: it springs back flat'
        : `${asComputed(springback.relaxedAngleDeg, 'angleDeg')} at ${digitsOfRadius(springback.relaxedRadiusMm, unit)} ${units.plan} radius (${asComputed(springback.keptFraction * 100, 'roughSharePct')} of its angle)`,
    )
  }
  for (const [term, value] of listStateFigures(result)) add(term, value)
  add('Developed length', <PlanLength valueMm={result.developedLengthMm} />)
  if (result.leaves.length > 1) {
    add('Maximum length difference between leaves', <PlanLength valueMm={result.leafLengthDifferenceMm} />)
  }
  return (
    <dl className="terms">
      {rows.map((row) => (
        <div key={row.term} className="contents">
          <dt>{row.term}</dt>
          <dd>{row.value}</dd>
        </div>
      ))}
    </dl>
  )
}

/** Never left out: what these numbers cannot promise. */
export function BendCautions({ result }: { result: BendResult }) {
  return (
    <ul className="small plain-list">
      {result.modelLimits.map(({ because, decidedBy }) => (
        <li key={because}>
          Cannot tell: {because}; {decidedBy}. Strain and life below are rough.
        </li>
      ))}
      {[...new Set([...result.cautions, ...CAUTIONS])].map((caution) => (
        <li key={caution}>{caution}</li>
      ))}
    </ul>
  )
}
