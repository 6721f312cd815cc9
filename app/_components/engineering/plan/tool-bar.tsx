'use client'

import { useEffect, useRef } from 'react'
import { Button } from '@/app/_components/ui/button'
import { CheckboxField } from '@/app/_components/ui/choice-fields'
import { useLengthUnit } from '@/app/_components/ui/unit-context'
import { formatEnteredLength, getShownUnit } from '@/lib/engine/units'
import { PLAN_LISTS } from '@/lib/plan/edit'
import { FACE_WORDS, FACES } from './faces'
import { LIST_WORDS, TOOLS } from './tools'
import type { PlanEditor } from './use-plan-editor'

/** Usual steps of metric drawings, and the tenth of an inch of older parts. */
const GRIDS_MM = [0.1, 0.5, 1, 2.54, 5]

/** What to draw, on what grid, and what is shown. */
export function ToolBar({ editor }: { editor: PlanEditor }) {
  const chooseRef = useRef<HTMLButtonElement>(null)
  const hadTool = useRef(false)
  const isDrawing = editor.tool !== null
  const unit = getShownUnit('mm', useLengthUnit().unit)
  useEffect(() => {
    // The panel that had the focus is gone with what was drawn: the keyboard goes on from here.
    if (hadTool.current && !isDrawing && document.activeElement === document.body) chooseRef.current?.focus()
    hadTool.current = isDrawing
  }, [isDrawing])
  const { plan, tool, start, gridMm, setGrid, hidden, setHidden, hiddenFaces, setHiddenFaces } = editor
  const lists = PLAN_LISTS.filter((list) => plan[list].length > 0)
  const toggle = (list: (typeof lists)[number], isShown: boolean) => {
    const next = new Set(hidden)
    if (isShown) next.delete(list)
    else next.add(list)
    setHidden(next)
  }
  return (
    <div className="plan-tools no-print">
      <fieldset className="plan-choices">
        <legend className="sr-only">Draw</legend>
        <button
          ref={chooseRef}
          type="button"
          className="choice"
          aria-pressed={tool === null}
          onClick={() => {
            start(null)
          }}
        >
          Choose and move
        </button>
        {TOOLS.map((each) => (
          <button
            key={each.key}
            type="button"
            className="choice"
            aria-pressed={tool?.key === each.key}
            onClick={() => start(each)}
          >
            {each.label}
          </button>
        ))}
      </fieldset>
      <label className="plan-grid small">
        Grid and step of the arrow keys{' '}
        <select
          className="input"
          value={gridMm === null ? '' : String(gridMm)}
          onChange={(event) => setGrid(event.target.value === '' ? null : Number(event.target.value))}
        >
          <option value="">no grid</option>
          {GRIDS_MM.map((stepMm) => (
            <option key={stepMm} value={String(stepMm)}>
              {formatEnteredLength(stepMm, 'mm', unit)}
            </option>
          ))}
        </select>
      </label>
      {lists.length > 0 && (
        <details className="small">
          <summary>Shown</summary>
          <div className="row">
            {lists.map((list) => (
              <CheckboxField key={list} isSelected={!hidden.has(list)} onChange={(isShown) => toggle(list, isShown)}>
                {LIST_WORDS[list]}
              </CheckboxField>
            ))}
            {FACES.map((face) => (
              <CheckboxField
                key={face}
                isSelected={!hiddenFaces.has(face)}
                onChange={(isShown) =>
                  setHiddenFaces(new Set(FACES.filter((each) => (each === face ? !isShown : hiddenFaces.has(each)))))
                }
              >
                {FACE_WORDS[face]}
              </CheckboxField>
            ))}
          </div>
        </details>
      )}
      {(hidden.size > 0 || hiddenFaces.size > 0) && (
        <Button
          weight="quiet"
          onPress={() => {
            setHidden(new Set())
            setHiddenFaces(new Set())
          }}
        >
          Show all
        </Button>
      )}
    </div>
  )
}
