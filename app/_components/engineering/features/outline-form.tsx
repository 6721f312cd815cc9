'use client'

import { useMemo, useState } from 'react'
import { Button } from '@/app/_components/ui/button'
import { type Columns, DataRow, DataTable } from '@/app/_components/ui/data-table'
import { PageSection } from '@/app/_components/ui/section'
import { TextArea } from '@/app/_components/ui/text-field'
import { useLengthUnit } from '@/app/_components/ui/unit-context'
import { drawOutline, SCREEN_PALETTE } from '@/lib/drawing'
import { type Design, FEATURE_FIELDS, listChoices, NOT_STATED, type Outline } from '@/lib/engine'
import { getShownUnit, getUnitSymbol } from '@/lib/engine/units'
import { FormCells, makePlaces, OptionalChoiceCell, PlanLengthCell, useUnitLabels } from '../cells'
import { replaceAt, useDraft, useEdit } from '../draft'
import { PictureView, useWidth } from '../pictures'
import { RowAct } from '../row-act'
import { readCorners } from './read-corners'

/** Longer outlines come from a file or a spreadsheet; a field for each corner would only slow the page. */
const MAX_FIELDS = 80

/** The picture shrinks on a phone, and leaves room for the corners beside it on a wide screen. */
const PICTURE_WIDTH_PX = { least: 280, most: 460 }

const ROLLING_DIRECTION = FEATURE_FIELDS.outline.fields.rollingDirection

const setOutline =
  (outline: Outline | null) =>
  (design: Design): Design => ({ ...design, features: { ...design.features, outline } })

/** The part's outline in the flat: what it is nested by on panels. */
export function OutlineForm() {
  const { state, isReadOnly } = useDraft()
  const edit = useEdit()
  const outline = state.design.features.outline
  return (
    <PageSection
      title="Outline"
      actions={
        !isReadOnly &&
        outline !== null && <Button onPress={() => edit('outline-removed', setOutline(null))}>Remove outline</Button>
      }
    >
      {outline === null ? (
        <p className="empty">
          No outline yet. Parts are nested on panels by their outline; without one, the zones’ bounding rectangle is
          used where it is unambiguous.
        </p>
      ) : (
        <OutlineDetails outline={outline} />
      )}
      {!isReadOnly && <PasteCorners outline={outline} />}
    </PageSection>
  )
}

function OutlineDetails({ outline }: { outline: Outline }) {
  const { unit } = useLengthUnit()
  const { live } = useDraft()
  const edit = useEdit()
  const { ref, widthPx } = useWidth<HTMLDivElement>(PICTURE_WIDTH_PX.most)
  const pictureWidthPx = Math.max(PICTURE_WIDTH_PX.least, Math.min(PICTURE_WIDTH_PX.most, widthPx))
  const picture = useMemo(
    () => drawOutline(outline, { palette: SCREEN_PALETTE, widthPx: pictureWidthPx, unit }),
    [outline, pictureWidthPx, unit],
  )
  const at = makePlaces(['features', 'outline'], 'outline', 'the outline')
  const issues = live.issues.filter(({ path }) => path[0] === 'features' && path[1] === 'outline')
  return (
    <>
      {issues.map(({ message }) => (
        <p key={message} className="field-error" role="alert">
          {message}
        </p>
      ))}
      <FormCells>
        <div className="form-grid">
          <OptionalChoiceCell
            label={ROLLING_DIRECTION.label}
            at={at('rollingDirection')}
            value={outline.rollingDirection}
            emptyLabel={NOT_STATED}
            choices={listChoices(ROLLING_DIRECTION)}
            onChange={(rollingDirection) =>
              edit(at('rollingDirection').key, setOutline({ ...outline, rollingDirection }))
            }
          />
        </div>
      </FormCells>
      <p className="small muted">
        Conductors that cross a bend along the foil’s rolling direction last longer. With a direction set, parts are
        placed on panels in that direction only.
      </p>
      <div className="outline-parts" ref={ref}>
        <PictureView picture={picture} />
        {outline.verticesMm.length <= MAX_FIELDS && <CornerTable outline={outline} />}
      </div>
    </>
  )
}

function CornerTable({ outline }: { outline: Outline }) {
  const units = useUnitLabels()
  const { isReadOnly } = useDraft()
  const edit = useEdit()
  const { verticesMm } = outline
  const setVertices = (key: string, changed: Outline['verticesMm']) =>
    edit(key, setOutline({ ...outline, verticesMm: changed }))
  const columns = {
    corner: { head: 'Corner', isNumeric: true },
    x: { head: 'x', unit: units.plan, isNumeric: true, className: 'cell-number' },
    y: { head: 'y', unit: units.plan, isNumeric: true, className: 'cell-number' },
    ...(isReadOnly ? {} : { acts: { head: 'Acts', isHeadHidden: true, className: 'row-acts no-print' } }),
  } satisfies Columns
  return (
    <DataTable label="Corners of the outline" columns={columns} isGrid isStacked={false}>
      {verticesMm.map(([x, y], index) => {
        const at = makePlaces(['features', 'outline', 'verticesMm', index], `outline.${index}`, `corner ${index + 1}`)
        return (
          <DataRow
            // biome-ignore lint/suspicious/noArrayIndexKey: a corner has no identity but its place in the outline.
            key={index}
            columns={columns}
            cells={{
              corner: index + 1,
              x: (
                <PlanLengthCell
                  label={`x, ${units.plan}`}
                  at={at(0)}
                  value={x}
                  onChange={(next) => setVertices(at(0).key, replaceAt(verticesMm, index, [next, y]))}
                />
              ),
              y: (
                <PlanLengthCell
                  label={`y, ${units.plan}`}
                  at={at(1)}
                  value={y}
                  onChange={(next) => setVertices(at(1).key, replaceAt(verticesMm, index, [x, next]))}
                />
              ),
              acts: (
                <>
                  <RowAct
                    label={`Insert a corner after corner ${index + 1}`}
                    onPress={() => {
                      const [nextX, nextY] = verticesMm[(index + 1) % verticesMm.length] ?? [x, y]
                      setVertices(`outline-add-${index}`, [
                        ...verticesMm.slice(0, index + 1),
                        [(x + nextX) / 2, (y + nextY) / 2],
                        ...verticesMm.slice(index + 1),
                      ])
                    }}
                  >
                    insert
                  </RowAct>
                  <RowAct
                    label={`Remove corner ${index + 1}`}
                    isDisabled={verticesMm.length <= 3}
                    onPress={() =>
                      setVertices(
                        `outline-remove-${index}`,
                        verticesMm.filter((_, other) => other !== index),
                      )
                    }
                  >
                    remove
                  </RowAct>
                </>
              ),
            }}
          />
        )
      })}
    </DataTable>
  )
}

function PasteCorners({ outline }: { outline: Outline | null }) {
  const edit = useEdit()
  const { unit: chosenUnit } = useLengthUnit()
  const unit = getShownUnit('mm', chosenUnit)
  const [text, setText] = useState('')
  const [reason, setReason] = useState<string | null>(null)
  const take = () => {
    const read = readCorners(text, unit)
    setReason(read.ok ? null : read.reason)
    if (!read.ok) return
    edit(
      'outline-pasted',
      setOutline({ verticesMm: read.verticesMm, rollingDirection: outline?.rollingDirection ?? null }),
    )
    setText('')
  }
  return (
    <details className="no-print" open={outline === null}>
      <summary>Paste corners from a spreadsheet</summary>
      <div className="stack">
        <TextArea
          label={`Corners, x and y in ${getUnitSymbol(unit)}, one per line`}
          hint="Two columns, in order around the part in either direction. Replace a curve by corners outside it."
          rows={5}
          value={text}
          onChange={setText}
          error={reason ?? undefined}
          placeholder={'0\t0\n80\t0\n80\t20'}
        />
        <div className="row">
          <Button onPress={take} isDisabled={text.trim() === ''}>
            {outline === null ? 'Use these corners' : 'Replace the outline with these corners'}
          </Button>
        </div>
      </div>
    </details>
  )
}
