'use client'

import { Fragment, useMemo, useState } from 'react'
import { Button } from '@/app/_components/ui/button'
import { type Columns, DataRow, DataTable, NoteRow } from '@/app/_components/ui/data-table'
import { Length, useLengthUnit } from '@/app/_components/ui/unit-context'
import { drawThicknessHistogram, SCREEN_PALETTE } from '@/lib/drawing'
import { type ContactResult, getConnectorThickness, simulateZoneThickness, type ZoneResult } from '@/lib/engine'
import { asComputed, countOf } from '@/lib/engine/units'
import { useDraft } from '../draft'
import { OutcomeList } from '../outcome-list'
import { listOutcomesAt } from '../outcomes'
import { PictureView, usePlotDocument, useWidth } from '../pictures'

/** Any number would do; a fixed one makes the picture the same for everybody. */
const SEED = 20_270_301
const HEIGHT_PX = 220

const COLUMNS = {
  zone: { head: 'Zone', isRowHead: true },
  finished: { head: 'Finished', isNumeric: true },
  worstCase: { head: 'Worst case', isNumeric: true },
  rootSumSquare: { head: 'Root sum square', isNumeric: true },
  distribution: { head: 'Distribution', isHeadHidden: true, className: 'no-print' },
} satisfies Columns

/** Finished thickness per zone with its range, what it grew from, and the distribution on demand. */
export function ThicknessResults() {
  const { live } = useDraft()
  const { evaluation } = live
  const [openZoneId, setOpenZoneId] = useState<string | null>(null)
  if (evaluation.zones.length === 0) return <p className="empty">No zones yet.</p>
  const open = evaluation.zones.find((zone) => zone.zoneId === openZoneId)
  return (
    <>
      <DataTable label="Thickness by zone" columns={COLUMNS}>
        {evaluation.zones.map((zone) => (
          <Fragment key={zone.zoneId}>
            <DataRow
              columns={COLUMNS}
              cells={{
                zone: zone.name,
                finished: <Length valueUm={zone.thicknessUm} />,
                worstCase: (
                  <>
                    <Length valueUm={zone.worstCaseUm.low} /> to <Length valueUm={zone.worstCaseUm.high} />
                  </>
                ),
                rootSumSquare: (
                  <>
                    <Length valueUm={zone.rootSumSquareUm.low} /> to <Length valueUm={zone.rootSumSquareUm.high} />
                  </>
                ),
                distribution: (
                  <Button
                    weight="quiet"
                    aria-expanded={zone.zoneId === openZoneId}
                    onPress={() => setOpenZoneId(zone.zoneId === openZoneId ? null : zone.zoneId)}
                  >
                    distribution<span className="sr-only"> of {zone.name}</span>
                  </Button>
                ),
              }}
            />
            {zone.contact !== null && <ContactRow name={zone.name} contact={zone.contact} />}
          </Fragment>
        ))}
      </DataTable>
      {open !== undefined && <Distribution zone={open} />}
      {evaluation.zones.map((zone) => {
        const outcomes = listOutcomesAt(evaluation, 'zone', zone.zoneId)
        return (
          <details key={zone.zoneId} className="zone-detail">
            <summary>
              {zone.name}: {outcomes.length} {outcomes.length === 1 ? 'finding' : 'findings'}
              {zone.defaultsUsed.length > 0 && `, ${countOf(zone.defaultsUsed.length, 'default')} used`}
            </summary>
            <OutcomeList outcomes={outcomes} emptyText="No checklist item concerns this zone." />
            {zone.defaultsUsed.length > 0 && (
              <ul className="small plain-list">
                {zone.defaultsUsed.map((words) => (
                  <li key={words}>Default used: {words}</li>
                ))}
              </ul>
            )}
          </details>
        )
      })}
    </>
  )
}

/** A connector end where its contacts are: what the connector takes. */
function ContactRow({ name, contact }: { name: string; contact: ContactResult }) {
  const head = <span className="muted">{name}, over its contacts</span>
  if (contact.missing.length > 0) {
    return (
      <NoteRow columns={COLUMNS} head={head}>
        not computed: {contact.missing.map(({ label }) => label).join('; ')}
      </NoteRow>
    )
  }
  return (
    <DataRow
      columns={COLUMNS}
      cells={{
        zone: (
          <>
            {head}
            <span className="block small muted">
              plating <Length valueUm={contact.platingUm} />, finish <Length valueUm={contact.finishUm} />
            </span>
          </>
        ),
        finished: <Length valueUm={contact.thicknessUm} />,
        worstCase: (
          <>
            <Length valueUm={contact.worstCaseUm.low} /> to <Length valueUm={contact.worstCaseUm.high} />
          </>
        ),
        rootSumSquare: null,
        distribution: null,
      }}
    />
  )
}

function Distribution({ zone }: { zone: ZoneResult }) {
  const { live } = useDraft()
  const { unit } = useLengthUnit()
  const plotDocument = usePlotDocument()
  const { ref, widthPx } = useWidth<HTMLDivElement>(480)
  const { evaluatedDesign } = live
  const window =
    evaluatedDesign.construction.zones.find((candidate) => candidate.id === zone.zoneId)?.connectorWindow ?? null
  const simulation = useMemo(
    () => simulateZoneThickness(evaluatedDesign, zone.zoneId, { seed: SEED }),
    [evaluatedDesign, zone.zoneId],
  )
  const picture = useMemo(
    () =>
      plotDocument === null || simulation === null
        ? null
        : drawThicknessHistogram(simulation, {
            document: plotDocument,
            palette: SCREEN_PALETTE,
            widthPx: Math.max(280, widthPx),
            heightPx: HEIGHT_PX,
            unit,
            zoneName: zone.name,
            worstCaseUm: getConnectorThickness(zone).worstCaseUm,
            windowUm: window,
          }),
    [plotDocument, simulation, widthPx, unit, zone, window],
  )
  const shares = [...zone.layers].sort((a, b) => b.varianceShareFraction - a.varianceShareFraction).slice(0, 5)
  return (
    <div ref={ref}>
      {simulation === null ? (
        <p className="empty">No layer of this zone has a tolerance, so its thickness does not vary.</p>
      ) : (
        picture !== null && <PictureView picture={picture} />
      )}
      {simulation?.outsideWindow != null && (
        <p className="small">
          Outside the connector&rsquo;s thickness range: {formatShare(simulation.outsideWindow.belowFraction)} below,{' '}
          {formatShare(simulation.outsideWindow.aboveFraction)} above
          {simulation.capability !== null && `; Cpk ${asComputed(simulation.capability.cpk, 'capability')}`}.
        </p>
      )}
      {shares.some((layer) => layer.varianceShareFraction > 0) && (
        <p className="small">
          The variation comes from{' '}
          {shares
            .filter((layer) => layer.varianceShareFraction >= 0.005)
            .map((layer) => `${layer.name} ${asComputed(layer.varianceShareFraction * 100, 'roughSharePct')}`)
            .join(', ')}
          .
        </p>
      )}
    </div>
  )
}

/** A share of draws; none at all is less than the draws can resolve, not zero. */
function formatShare(fraction: number): string {
  return fraction === 0 ? 'less than 0.01 %' : asComputed(fraction * 100, 'smallSharePct')
}
