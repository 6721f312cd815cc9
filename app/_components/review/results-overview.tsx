import Link from 'next/link'
import { LifeCaution } from '@/app/_components/ui/cautions'
import { type Columns, DataRow, DataTable } from '@/app/_components/ui/data-table'
import { EmptyState } from '@/app/_components/ui/notices'
import { QuantityText, RangeText, ReadingText } from '@/app/_components/ui/quantity'
import { PageSection } from '@/app/_components/ui/section'
import { paths } from '@/lib/addresses'
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
      <PageSection
        title="Thickness by zone"
        actions={<Link href={paths.revision(projectId, revisionId, 'construction')}>Construction</Link>}
      >
        {evaluation.zones.length === 0 ? (
          <EmptyState>No zone is defined yet.</EmptyState>
        ) : (
          <ZoneTable zones={evaluation.zones} />
        )}
      </PageSection>
      <PageSection title="Bends" actions={<Link href={paths.revision(projectId, revisionId, 'bends')}>Bends</Link>}>
        {evaluation.bends.length === 0 ? (
          <EmptyState>No bend is defined yet.</EmptyState>
        ) : (
          <BendTable bends={evaluation.bends} />
        )}
      </PageSection>
    </>
  )
}

const ZONE_COLUMNS = {
  zone: { head: 'Zone', isRowHead: true },
  kind: { head: 'Kind' },
  layers: { head: 'Layers', isNumeric: true },
  thickness: { head: 'Thickness', isNumeric: true },
  worstCase: { head: 'Worst case', isNumeric: true },
  rootSumSquare: { head: 'Root sum square', isNumeric: true },
} satisfies Columns

function ZoneTable({ zones }: { zones: readonly ZoneResult[] }) {
  return (
    <DataTable label="Results" columns={ZONE_COLUMNS}>
      {zones.map((zone) => (
        <DataRow
          key={zone.zoneId}
          columns={ZONE_COLUMNS}
          cells={{
            zone: zone.name,
            kind: zone.kind,
            layers: zone.layers.length,
            thickness: <QuantityText quantity={{ value: zone.thicknessUm, unit: 'um' }} />,
            worstCase: <RangeText range={zone.worstCaseUm} unit="um" />,
            rootSumSquare: <RangeText range={zone.rootSumSquareUm} unit="um" />,
          }}
        />
      ))}
    </DataTable>
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
  const columns = {
    bend: { head: 'Bend', isRowHead: true },
    use: { head: 'Use' },
    section: { head: 'Section', isNumeric: true },
    strain: { head: 'Largest copper strain', isNumeric: true },
    allowable: { head: 'Allowable', isNumeric: true },
    radiusByStrain: { head: 'Minimum radius by strain', isNumeric: true },
    radiusByLife: { head: 'Minimum radius by life', isNumeric: true },
    life: { head: 'Life at survival', headNote: <LifeCaution />, isNumeric: true },
    required: { head: 'Required', isNumeric: true },
  } satisfies Columns
  return (
    <DataTable label="Results" columns={columns}>
      {bends.map((bend) => (
        <DataRow
          key={bend.bendId}
          columns={columns}
          cells={{
            bend: bend.name,
            use: bend.use === null ? 'not stated' : (USE_WORDS[bend.use] ?? bend.use),
            section: <Maybe value={bend.sectionThicknessUm} unit="um" />,
            strain: <MaybeReading reading={readBendStrain(bend)} />,
            allowable: <Maybe value={bend.allowablePct} unit="pct" />,
            radiusByStrain: <Maybe value={bend.minRadiusByStrainMm} unit="mm" />,
            radiusByLife: bend.use === 'dynamic' ? <Maybe value={bend.minRadiusByLifeMm} unit="mm" /> : '',
            life: bend.use === 'dynamic' ? <MaybeReading reading={readBendLife(bend)} /> : '',
            required: bend.use === 'dynamic' ? <Maybe value={bend.requiredCycles} unit="cycles" /> : '',
          }}
        />
      ))}
    </DataTable>
  )
}
