'use client'

import { useMemo, useState } from 'react'
import { LinkButton } from '@/app/_components/ui/button'
import { Cautions } from '@/app/_components/ui/cautions'
import { ChoiceGroup } from '@/app/_components/ui/choice-group'
import { PageSection } from '@/app/_components/ui/section'
import { useLengthUnit } from '@/app/_components/ui/unit-context'
import { drawSheets, SCREEN_PALETTE, type SheetIdentity } from '@/lib/drawing'
import type { Design, Evaluation } from '@/lib/engine'
import { DrawingSheetView, ZOOMS, type Zoom } from './sheet-view'

interface DrawingScreenProps {
  readonly design: Design
  readonly evaluation: Evaluation
  readonly identity: SheetIdentity
  readonly pdfPath: string
  /** The sheet's number follows. */
  readonly svgPathOf: string
  readonly paperPaths: { readonly a4: string; readonly letter: string }
  /** Null where the part cannot be folded. */
  readonly foldedPaths: { readonly bodies: string; readonly step: string; readonly flatStep: string } | null
}

/** The drawing sheets as they follow from the design, with the files to download. */
export function DrawingScreen({
  design,
  evaluation,
  identity,
  pdfPath,
  svgPathOf,
  paperPaths,
  foldedPaths,
}: DrawingScreenProps) {
  const { unit } = useLengthUnit()
  const sheets = useMemo(
    () =>
      drawSheets(design, evaluation, {
        identity,
        // Plan dimensions in um would be all digits.
        units: { thickness: unit, plan: unit === 'um' ? 'mm' : unit },
        palette: SCREEN_PALETTE,
        size: null,
      }),
    [design, evaluation, identity, unit],
  )
  const [chosen, setChosen] = useState('1')
  const [zoom, setZoom] = useState<Zoom>('fit')
  const sheet = sheets.find(({ number }) => String(number) === chosen) ?? sheets[0]
  if (sheet === undefined) return null
  return (
    <PageSection
      title="Drawing sheets"
      actions={
        <>
          <LinkButton href={pdfPath} weight="strong" download>
            All sheets (PDF)
          </LinkButton>
          <LinkButton href={`${svgPathOf}${sheet.number}`} weight="quiet" download>
            Sheet {sheet.number} (SVG)
          </LinkButton>
          {design.plan !== null && design.plan.outline !== null && (
            <>
              <LinkButton href={paperPaths.a4} weight="quiet" download>
                Paper model, A4 (PDF)
              </LinkButton>
              <LinkButton href={paperPaths.letter} weight="quiet" download>
                Paper model, letter (PDF)
              </LinkButton>
            </>
          )}
          {foldedPaths !== null && (
            <>
              <LinkButton href={foldedPaths.step} weight="quiet" download>
                Folded part (STEP)
              </LinkButton>
              <LinkButton href={foldedPaths.flatStep} weight="quiet" download>
                Flat part (STEP)
              </LinkButton>
              <LinkButton href={foldedPaths.bodies} weight="quiet" download>
                Folded part (glTF)
              </LinkButton>
            </>
          )}
        </>
      }
    >
      <p className="muted small">
        Generated from the design and its recorded results, {sheet.size} to ISO 5457. On screen in your unit of length;
        files are in µm and mm.
      </p>
      <Cautions />
      <div className="row no-print">
        {sheets.length > 1 && (
          <ChoiceGroup
            label="Sheet"
            options={sheets.map(({ number }) => ({ value: String(number), label: `Sheet ${number}` }))}
            value={String(sheet.number)}
            onChange={setChosen}
          />
        )}
        <ChoiceGroup label="Size on screen" options={ZOOMS} value={zoom} onChange={setZoom} />
      </div>
      <DrawingSheetView sheet={sheet} zoom={zoom} />
    </PageSection>
  )
}
