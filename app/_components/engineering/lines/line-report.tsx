'use client'

import { useMemo } from 'react'
import { type Columns, DataRow, DataTable } from '@/app/_components/ui/data-table'
import { Notice } from '@/app/_components/ui/notices'
import { PageSection } from '@/app/_components/ui/section'
import { useLengthUnit } from '@/app/_components/ui/unit-context'
import {
  drawCrosstalk,
  drawCrosstalkOverSpace,
  drawImpedanceOverCover,
  drawImpedanceOverWidth,
  drawLineSection,
  SCREEN_PALETTE,
} from '@/lib/drawing'
import { LINE_CAUTION } from '@/lib/engine/cautions'
import type { LineStudy, ModeLosses, StudiedLine } from '@/lib/engine/line-study'
import {
  asComputed,
  asEntered,
  capitalise,
  digitsAsComputed,
  formatLength,
  getShownUnit,
  umFromLength,
} from '@/lib/engine/units'
import { PictureView, usePlotDocument, useWidth } from '../pictures'

const PLOT_HEIGHT_PX = 280

interface LineReportProps {
  readonly studied: StudiedLine
  readonly study: LineStudy | null
  readonly crosstalkLimitPct: number
}

/** One line in one zone: its figures, pictures and tables. */
export function LineReport({ studied, study, crosstalkLimitPct }: LineReportProps) {
  const { unit } = useLengthUnit()
  const plotDocument = usePlotDocument()
  const { ref, widthPx } = useWidth<HTMLDivElement>(480)
  const plotWidthPx = Math.max(280, Math.min(560, widthPx))
  const pictures = useMemo(() => {
    if (study === null || plotDocument === null) return []
    const frame = {
      document: plotDocument,
      palette: SCREEN_PALETTE,
      widthPx: plotWidthPx,
      heightPx: PLOT_HEIGHT_PX,
      unit,
    }
    return [
      drawLineSection(studied, study, frame),
      drawImpedanceOverWidth(studied, study, frame),
      drawImpedanceOverCover(studied, study, frame),
      drawCrosstalkOverSpace(studied, study, crosstalkLimitPct, frame),
      ...study.crosstalk.map((each) => drawCrosstalk(studied, each, crosstalkLimitPct, frame)),
    ].filter((picture) => picture !== null)
  }, [study, studied, plotDocument, plotWidthPx, unit, crosstalkLimitPct])
  const title = `${studied.conductorName}, ${studied.zoneName}`
  if (study === null)
    return (
      <PageSection title={title}>
        <p className="empty">This section has no solution: the checklist says why.</p>
      </PageSection>
    )
  return (
    <PageSection title={title}>
      {studied.line.open === null ? null : (
        <Notice tone="caution">
          {capitalise(studied.line.open.because)}. Every figure here is for a whole plane: with less copper impedances
          and crosstalk are higher. Qualify by coupon.
        </Notice>
      )}
      <Figures studied={studied} study={study} />
      <div ref={ref} className="stack">
        {pictures.map((picture) => (
          <PictureView key={picture.title} picture={picture} />
        ))}
      </div>
      <Losses study={study} />
      <Refinement study={study} />
      <p className="small muted">{[...studied.line.remarks, LINE_CAUTION].join(' ')}</p>
    </PageSection>
  )
}

const FIGURE_COLUMNS = {
  figure: { head: 'Figure', isRowHead: true },
  value: { head: 'Value', isNumeric: true },
} satisfies Columns

function Figures({ studied, study }: { readonly studied: StudiedLine; readonly study: LineStudy }) {
  const { unit } = useLengthUnit()
  const { targetOhm, tolerancePct, widthMm, isPair } = studied
  const { share, modes } = study
  const plan = (mm: number) => formatLength(umFromLength(mm, 'mm'), getShownUnit('mm', unit), 'plan')
  const across = (um: number) => formatLength(um, getShownUnit('um', unit))
  const pct = (fraction: number) => asComputed(100 * fraction, 'sharePct')
  const rows: readonly (readonly [figure: string, value: string])[] = [
    [isPair ? 'Differential impedance' : 'Impedance', asComputed(study.impedanceOhm, 'impedanceOhm')],
    ['Stated', `${asEntered(targetOhm, 'ohm')}${tolerancePct === null ? '' : ` ± ${asEntered(tolerancePct, 'pct')}`}`],
    ...(modes === null
      ? []
      : ([
          ['Even mode, each line', asComputed(modes.evenOhm, 'impedanceOhm')],
          ['Odd mode, each line', asComputed(modes.oddOhm, 'impedanceOhm')],
          ['Common impedance', asComputed(modes.commonOhm, 'impedanceOhm')],
        ] as const)),
    ['Effective permittivity', digitsAsComputed(study.effectivePermittivity, 'permittivity')],
    ['Delay', `${digitsAsComputed(study.delayPsPerMm, 'delayPsPerMm')} ps/mm`],
    [
      `Width for the stated impedance (now ${plan(widthMm)})`,
      study.widthForTargetMm === null ? 'none in reach' : plan(study.widthForTargetMm),
    ],
    [
      `Dielectrics to the reference for it (now ${across(study.distanceUm)})`,
      study.distanceForTargetUm === null ? 'none in reach' : across(study.distanceForTargetUm),
    ],
    [
      'Parts within the band',
      share === null
        ? 'cannot tell'
        : `${pct(share.shareFraction)} (${pct(share.lowFraction)} to ${pct(share.highFraction)})`,
    ],
  ]
  return (
    <>
      <DataTable label="Figures" columns={FIGURE_COLUMNS}>
        {rows.map(([figure, value]) => (
          <DataRow key={figure} columns={FIGURE_COLUMNS} cells={{ figure, value }} />
        ))}
      </DataTable>
      <p className="small muted">
        {share === null
          ? 'The share of parts within the band needs a stated tolerance, planes that are known to be whole, and layers that are there at both ends of their tolerances.'
          : `Share of ${asEntered(share.draws)} seeded draws: etched width, distance, copper, cover and permittivity each scatter by themselves, the ends of their ranges taken as three standard deviations (our choice, no published source). The fitted response is within ${asComputed(share.responseErrorPct, 'smallSharePct')} of field solutions at drawn places; the shares in brackets are with that error either way. It is no verdict.`}
      </p>
    </>
  )
}

const LOSS_COLUMNS = {
  frequency: { head: 'Frequency', unit: 'MHz', isNumeric: true, isRowHead: true },
  skin: { head: 'Skin depth', isNumeric: true },
  smooth: { head: 'Smooth copper', unit: 'dB/m', isNumeric: true },
  rough: { head: 'Roughness as deep as the skin', unit: 'dB/m', isNumeric: true },
  dielectric: { head: 'Dielectrics, for each 0.01 of loss tangent', unit: 'dB/m', isNumeric: true },
} satisfies Columns

const LOSS_CAPTIONS: Record<ModeLosses['mode'], string> = {
  alone: 'Losses over frequency',
  odd: 'Losses over frequency, lines driven against each other',
  even: 'Losses over frequency, lines driven alike',
}

function Losses({ study }: { readonly study: LineStudy }) {
  const { unit } = useLengthUnit()
  if (study.losses.length === 0)
    return <p className="small muted">Losses cannot be computed: the resistivity of the copper is not known.</p>
  return (
    <>
      {study.losses.map(({ mode, points }) => (
        <DataTable key={mode} label={LOSS_CAPTIONS[mode]} caption={LOSS_CAPTIONS[mode]} columns={LOSS_COLUMNS}>
          {points.map(({ frequencyMhz, smooth, rough }) => (
            <DataRow
              key={frequencyMhz}
              columns={LOSS_COLUMNS}
              cells={{
                frequency: asEntered(frequencyMhz),
                skin: formatLength(smooth.skinDepthUm, getShownUnit('um', unit)),
                smooth: digitsAsComputed(smooth.conductorDbPerM, 'lossDbPerM'),
                rough: digitsAsComputed(rough.conductorDbPerM, 'lossDbPerM'),
                dielectric: digitsAsComputed(smooth.dielectricDbPerMPerHundredth, 'lossDbPerM'),
              }}
            />
          ))}
        </DataTable>
      ))}
      <p className="small muted">
        Copper by the rule of incremental inductance; where its skin is deeper than half the copper, the figure is an
        estimate. Roughness by the arctangent form of 1980 (from memory), which is too low for rough foils above a few
        GHz. The loss tangent of a film is not in the list of materials: take it from the data sheet at the frequency
        and humidity in question. Finishes, plating and a hatched plane are not included. Frequencies whose wavelength
        is less than ten times as long as the field is wide are left out: a static field does not stand for them.
      </p>
    </>
  )
}

const REFINEMENT_COLUMNS = {
  unknowns: { head: 'Unknowns', isNumeric: true, isRowHead: true },
  impedance: { head: 'Impedance', unit: 'Ω', isNumeric: true },
} satisfies Columns

function Refinement({ study }: { readonly study: LineStudy }) {
  return (
    <DataTable label="Refinement" caption="The same section by ever finer pieces" columns={REFINEMENT_COLUMNS}>
      {study.refinement.map(({ unknowns, impedanceOhm }) => (
        <DataRow
          key={unknowns}
          columns={REFINEMENT_COLUMNS}
          cells={{ unknowns: asEntered(unknowns), impedance: digitsAsComputed(impedanceOhm, 'refinedOhm') }}
        />
      ))}
    </DataTable>
  )
}
