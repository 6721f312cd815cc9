'use client'

import { useState } from 'react'
import { Button } from '@/app/_components/ui/button'
import { type Columns, DataRow, DataTable } from '@/app/_components/ui/data-table'
import { EnteredPlanLength } from '@/app/_components/ui/quantity'
import { PageSection } from '@/app/_components/ui/section'
import { VerdictMark } from '@/app/_components/ui/verdict-mark'
import { BEND_FIELDS, type Bend } from '@/lib/engine'
import { digitsAsComputed } from '@/lib/engine/units'
import {
  addBend,
  DraftScreen,
  type DraftScreenProps,
  makeFreshId,
  makeFreshName,
  removeBend,
  useDraft,
  useEdit,
} from '../draft'
import '../engineering.css'
import { NoneMark } from '../none-mark'
import { OutcomeList } from '../outcome-list'
import { findVerdictAt, listOutcomesAt } from '../outcomes'
import { RemedyPanel } from '../remedies'
import { AllowableTable, BendCautions, BendFigures, RadiusComparison } from './bend-figures'
import { BendForm } from './bend-form'
import { BendPlots } from './bend-plots'
import { TornadoPanel } from './tornado-panel'
import { getUseLabel } from './words'

interface BendsScreenProps extends DraftScreenProps {
  /** Bend to open first, from the address. */
  readonly initialBendId: string | null
  /** Its remedies are wanted at once. */
  readonly areRemediesWanted?: boolean
}

export function BendsScreen({ stored, saveAction, initialBendId, areRemediesWanted = false }: BendsScreenProps) {
  return (
    <DraftScreen stored={stored} saveAction={saveAction}>
      <Bends initialBendId={initialBendId} areRemediesWanted={areRemediesWanted} />
    </DraftScreen>
  )
}

function Bends({ initialBendId, areRemediesWanted }: { initialBendId: string | null; areRemediesWanted: boolean }) {
  const { state, isReadOnly } = useDraft()
  const edit = useEdit()
  const { bends, construction } = state.design
  const [chosenId, setChosenId] = useState(initialBendId)
  const chosenIndex = Math.max(
    0,
    bends.findIndex((bend) => bend.id === chosenId),
  )
  const chosen = bends[chosenIndex]
  const hasFlex = construction.zones.some((zone) => zone.kind === 'flex')
  const add = () => {
    setChosenId(makeFreshId('bend', bends))
    edit(`add-bend-${bends.length}`, addBend)
  }
  return (
    <>
      <PageSection
        title="Bends"
        actions={
          !isReadOnly && (
            <Button onPress={add} isDisabled={!hasFlex}>
              Add a bend
            </Button>
          )
        }
      >
        {!hasFlex && <p className="empty">A bend needs a flex zone, and the construction has none yet.</p>}
        {bends.length === 0 ? (
          hasFlex && (
            <>
              <p className="empty">No bends yet. A part that is never bent needs none.</p>
              <NoneMark list="bends" label="The part is never bent, in assembly or in service" />
            </>
          )
        ) : (
          <BendList chosenId={chosen?.id ?? null} onChoose={setChosenId} />
        )}
      </PageSection>
      {chosen !== undefined && (
        <BendDetail
          key={chosen.id}
          bend={chosen}
          index={chosenIndex}
          onCopied={setChosenId}
          areRemediesWanted={areRemediesWanted && chosen.id === initialBendId}
        />
      )}
    </>
  )
}

const COLUMNS = {
  bend: { head: 'Bend', isRowHead: true },
  zone: { head: BEND_FIELDS.zoneId.label },
  use: { head: BEND_FIELDS.use.label },
  insideRadius: { head: BEND_FIELDS.insideRadiusMm.label, isNumeric: true },
  angle: { head: BEND_FIELDS.angleDeg.label, isNumeric: true },
  copperStrain: { head: 'Copper strain', unit: '%', isNumeric: true },
  allowed: { head: 'Allowed', unit: '%', isNumeric: true },
  verdict: { head: 'Verdict' },
} satisfies Columns

function BendList({ chosenId, onChoose }: { chosenId: string | null; onChoose: (bendId: string) => void }) {
  const { state, live } = useDraft()
  const { bends, construction } = state.design
  return (
    <DataTable label="Bends" columns={COLUMNS}>
      {bends.map((bend) => {
        const result = live.evaluation.bends.find((candidate) => candidate.bendId === bend.id)
        return (
          <DataRow
            key={bend.id}
            columns={COLUMNS}
            cells={{
              bend: (
                <button
                  type="button"
                  className="choice"
                  aria-current={bend.id === chosenId ? 'true' : undefined}
                  onClick={() => onChoose(bend.id)}
                >
                  {bend.name === '' ? 'unnamed' : bend.name}
                </button>
              ),
              zone: construction.zones.find((zone) => zone.id === bend.zoneId)?.name ?? 'no such zone',
              use: getUseLabel(bend.use),
              insideRadius: <EnteredPlanLength valueMm={bend.insideRadiusMm} />,
              angle: <>{bend.angleDeg}°</>,
              copperStrain: digitsAsComputed(result?.peakStrainPct, 'strainPct'),
              allowed: digitsAsComputed(result?.allowablePct, 'strainPct'),
              verdict: <VerdictMark verdict={findVerdictAt(live.evaluation, 'bend', bend.id) ?? 'not-computed'} />,
            }}
          />
        )
      })}
    </DataTable>
  )
}

interface BendDetailProps {
  readonly bend: Bend
  readonly index: number
  readonly onCopied: (bendId: string) => void
  readonly areRemediesWanted: boolean
}

function BendDetail({ bend, index, onCopied, areRemediesWanted }: BendDetailProps) {
  const { state, live, isReadOnly } = useDraft()
  const edit = useEdit()
  const { evaluation, evaluatedDesign } = live
  const evaluatedBend = evaluatedDesign.bends.find((candidate) => candidate.id === bend.id)
  const result = evaluation.bends.find((candidate) => candidate.bendId === bend.id)
  const zone = evaluation.zones.find((candidate) => candidate.zoneId === evaluatedBend?.zoneId)
  const copy = () => {
    const { bends } = state.design
    const id = makeFreshId('bend', bends)
    edit(`copy-${bend.id}-${bends.length}`, (design) => ({
      ...design,
      bends: [...design.bends, { ...bend, id, name: makeFreshName('Bend', design.bends) }],
    }))
    onCopied(id)
  }
  const title = bend.name === '' ? 'Unnamed bend' : bend.name
  return (
    <>
      {evaluatedBend !== undefined && result !== undefined && (
        <PageSection title="Remedies" id="remedies">
          <RemedyPanel bend={evaluatedBend} isWantedAtOnce={areRemediesWanted} />
        </PageSection>
      )}
      {result === undefined || evaluatedBend === undefined || zone === undefined ? (
        <PageSection title={title}>
          <p className="empty">This bend has not been computed yet. Fix the errors listed above first.</p>
        </PageSection>
      ) : (
        <div className="bench">
          <PageSection title={`${title}: verdicts`}>
            {result.missing.length > 0 && (
              <p className="small">Missing: {result.missing.map((missing) => missing.label).join('; ')}.</p>
            )}
            <OutcomeList
              outcomes={listOutcomesAt(evaluation, 'bend', bend.id)}
              emptyText="No checklist item concerns this bend."
            />
          </PageSection>
          <PageSection title="Pictures">
            <BendPlots bend={evaluatedBend} result={result} zone={zone} />
          </PageSection>
        </div>
      )}
      <PageSection
        title={`${title}: inputs`}
        actions={
          !isReadOnly && (
            <>
              <Button onPress={copy}>Copy this bend</Button>
              <Button onPress={() => edit(`remove-${bend.id}`, (design) => removeBend(design, bend.id))}>
                Remove this bend
              </Button>
            </>
          )
        }
      >
        <BendForm bend={bend} index={index} />
      </PageSection>
      {result !== undefined && evaluatedBend !== undefined && zone !== undefined && (
        <>
          <PageSection title="What moves strain and life">
            <TornadoPanel key={evaluatedBend.id} bend={evaluatedBend} />
          </PageSection>
          <PageSection title="Radius by laminate, handbook and ratio">
            <RadiusComparison bend={evaluatedBend} result={result} />
          </PageSection>
          <PageSection title="Strain and allowables">
            <AllowableTable result={result} />
          </PageSection>
          <PageSection title="Figures">
            <BendFigures result={result} />
          </PageSection>
          <PageSection title="Cautions">
            <BendCautions result={result} />
          </PageSection>
        </>
      )}
    </>
  )
}
