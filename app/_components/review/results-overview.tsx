import Link from 'next/link'
import { paths } from '@/app/_components/shell/paths'
import { LifeCaution } from '@/app/_components/ui/cautions'
import { EmptyState } from '@/app/_components/ui/notices'
import { QuantityText, RangeText, ReadingText } from '@/app/_components/ui/quantity'
import { Section } from '@/app/_components/ui/section'
import { TableFrame } from '@/app/_components/ui/table-frame'
import {
  type BendResult,
  type Evaluation,
  type Reading,
  readBendLife,
  readBendStrain,
  type Unit,
  type ZoneResult,
} from '@/lib/engine/results'

interface ResultsOverviewProps {
  evaluation: Evaluation
  projectId: string
  revisionId: string
}

const USE_WORDS: Record<string, string> = {
  'fold-once': 'fold once',
  'flex-to-install': 'flex to install',
  dynamic: 'dynamic',
}

/** Thickness of each zone and the state of each bend, as a report's summary tables. */
export function ResultsOverview({ evaluation, projectId, revisionId }: ResultsOverviewProps) {
  return (
    <>
      <Section
        title="Thickness by zone"
        actions={<Link href={paths.revision(projectId, revisionId, 'construction')}>Construction</Link>}
      >
        {evaluation.zones.length === 0 ? (
          <EmptyState>No zone is defined yet.</EmptyState>
        ) : (
          <ZoneTable zones={evaluation.zones} />
        )}
      </Section>
      <Section title="Bends" actions={<Link href={paths.revision(projectId, revisionId, 'bends')}>Bends</Link>}>
        {evaluation.bends.length === 0 ? (
          <EmptyState>No bend is defined yet.</EmptyState>
        ) : (
          <BendTable bends={evaluation.bends} />
        )}
      </Section>
    </>
  )
}

function ZoneTable({ zones }: { zones: readonly ZoneResult[] }) {
  return (
    <TableFrame label="Results">
      <table className="ledger" data-stack>
        <thead>
          <tr>
            <th scope="col">Zone</th>
            <th scope="col">Kind</th>
            <th scope="col" className="num">
              Layers
            </th>
            <th scope="col" className="num">
              Thickness
            </th>
            <th scope="col" className="num">
              Worst case
            </th>
            <th scope="col" className="num">
              Root sum square
            </th>
          </tr>
        </thead>
        <tbody>
          {zones.map((zone) => (
            <tr key={zone.zoneId}>
              <th scope="row">{zone.name}</th>
              <td>{zone.kind}</td>
              <td className="num" data-label="layers">
                {zone.layers.length}
              </td>
              <td className="num" data-label="thickness">
                <QuantityText quantity={{ value: zone.thicknessUm, unit: 'um' }} />
              </td>
              <td className="num" data-label="worst case">
                <RangeText range={zone.worstCaseUm} unit="um" />
              </td>
              <td className="num" data-label="root sum square">
                <RangeText range={zone.rootSumSquareUm} unit="um" />
              </td>
            </tr>
          ))}
        </tbody>
      </table>
    </TableFrame>
  )
}

/** A value that may not have been computed; then the cell says so rather than staying empty. */
function Maybe({ value, unit }: { value: number | null; unit: Unit }) {
  if (value === null) return <span className="muted">not computed</span>
  return <QuantityText quantity={{ value, unit }} />
}

function MaybeReading({ reading }: { reading: Reading | null }) {
  return reading === null ? <span className="muted">not computed</span> : <ReadingText reading={reading} />
}

function BendTable({ bends }: { bends: readonly BendResult[] }) {
  return (
    <TableFrame label="Results">
      <table className="ledger" data-stack>
        <thead>
          <tr>
            <th scope="col">Bend</th>
            <th scope="col">Use</th>
            <th scope="col" className="num">
              Section
            </th>
            <th scope="col" className="num">
              Largest copper strain
            </th>
            <th scope="col" className="num">
              Allowable
            </th>
            <th scope="col" className="num">
              Minimum radius by strain
            </th>
            <th scope="col" className="num">
              Minimum radius by life
            </th>
            <th scope="col" className="num">
              Life at survival
              <LifeCaution />
            </th>
            <th scope="col" className="num">
              Required
            </th>
          </tr>
        </thead>
        <tbody>
          {bends.map((bend) => (
            <tr key={bend.bendId}>
              <th scope="row">{bend.name}</th>
              <td>{bend.use === null ? 'not stated' : (USE_WORDS[bend.use] ?? bend.use)}</td>
              <td className="num" data-label="section">
                <Maybe value={bend.sectionThicknessUm} unit="um" />
              </td>
              <td className="num" data-label="largest copper strain">
                <MaybeReading reading={readBendStrain(bend)} />
              </td>
              <td className="num" data-label="allowable">
                <Maybe value={bend.allowablePct} unit="pct" />
              </td>
              <td className="num" data-label="least radius by strain">
                <Maybe value={bend.minRadiusByStrainMm} unit="mm" />
              </td>
              <td className="num" data-label="least radius by life">
                {bend.use === 'dynamic' ? <Maybe value={bend.minRadiusByLifeMm} unit="mm" /> : ''}
              </td>
              <td className="num" data-label="life at survival">
                {bend.use === 'dynamic' ? <MaybeReading reading={readBendLife(bend)} /> : ''}
              </td>
              <td className="num" data-label="required">
                {bend.use === 'dynamic' ? <Maybe value={bend.requiredCycles} unit="cycles" /> : ''}
              </td>
            </tr>
          ))}
        </tbody>
      </table>
    </TableFrame>
  )
}
