'use client'

import { Button } from '@/app/_components/ui/button'
import { useLengthUnit } from '@/app/_components/ui/unit-context'
import { type Design, type FieldNode, PLAN_FIELDS, type Plan } from '@/lib/engine'
import { digitsOfEnteredLength, getShownUnit, getUnitSymbol } from '@/lib/engine/units'
import { type PointMm, planSchema } from '@/lib/plan'
import type { PlanEdit, PlanListKey } from '@/lib/plan/edit'
import {
  type Choice,
  FieldCell,
  type FieldValue,
  FormCells,
  makePlaces,
  OptionalChoiceCell,
  type Place,
} from '../cells'
import { useDraft, useEdit } from '../draft'
import { planOf, withEdit } from './additions'
import { BELONGS, nameEntry } from './belongs'
import { PlaceInput } from './place-input'
import { TargetForm } from './target-form'
import type { PlanEditor } from './use-plan-editor'

type Fields = Readonly<Record<string, unknown>>

/** Shown as points, which are chosen, moved and typed there. */
const POINTS: ReadonlySet<string> = new Set(['id', 'nodes', 'fromMm', 'toMm', 'atMm', 'markMm', 'firstContactMm'])
/** Points that may be missing, and what each is measured from. */
const OPTIONAL_POINTS: ReadonlySet<string> = new Set(['toMm', 'atMm', 'firstContactMm'])
/** Two lengths that are no place: a size, or a step from one to the next. */
const PAIRS: ReadonlySet<string> = new Set(['sizeMm', 'columnStepMm', 'rowStepMm', 'contactStepMm'])

/** All that an entry of the plan says beside where it lies, by the dictionary and its schema. */
export function EntryFields({ editor, list, id }: { editor: PlanEditor; list: PlanListKey; id: string }) {
  const { state } = useDraft()
  const edit = useEdit()
  const index = planOf(state.design)[list].findIndex((each) => each.id === id)
  const entry = planOf(state.design)[list][index]
  if (entry === undefined) return null
  const fields = entry as unknown as Fields
  const words: Readonly<Record<string, FieldNode>> = PLAN_FIELDS[list].entry
  const schema = planSchema.shape[list].unwrap().shape as unknown as Readonly<
    Record<string, { safeParse(value: unknown): { readonly success: boolean } }>
  >
  const at = makePlaces(['plan', list, index], `plan.${list}.${id}`, nameEntry(state.design, list, entry))
  const set = (field: string, value: unknown) =>
    edit(`plan.${list}.${id}.${field}`, (design) =>
      withEdit(design, { act: 'change', list, id, fields: { [field]: value } } as PlanEdit),
    )
  return (
    <FormCells>
      <div className="plan-fields">
        {Object.keys(words).map((field) => {
          const word = words[field]
          const rule = schema[field]
          const value = fields[field]
          if (word === undefined || rule === undefined || field === BELONGS[list]?.field) return null
          if (OPTIONAL_POINTS.has(field) && rule.safeParse(null).success) {
            return (
              <OptionalPoint
                key={field}
                editor={editor}
                label={word.label}
                isKnown={value !== null}
                onChange={(isKnown) => set(field, isKnown ? startOf(fields) : null)}
              />
            )
          }
          if (POINTS.has(field)) return null
          if (list === 'connectorEnds' && field === 'target') {
            return (
              <TargetForm
                key={field}
                index={index}
                end={entry as Plan['connectorEnds'][number]}
                name={nameEntry(state.design, list, entry)}
                isReadOnly={editor.isReadOnly}
                onChange={(next) => set(field, next)}
              />
            )
          }
          if (field === 'anchorsMm') {
            return (
              <Anchors
                key={field}
                editor={editor}
                label={word.label}
                value={value as readonly PointMm[]}
                startMm={startOf(fields)}
                onChange={(next) => set(field, next)}
              />
            )
          }
          if (PAIRS.has(field)) {
            return (
              <Pair
                key={field}
                editor={editor}
                at={at(field)}
                label={word.label}
                value={value as PointMm | null}
                onChange={(next) => set(field, next)}
              />
            )
          }
          if (field === 'layerId') {
            return (
              <OptionalChoiceCell
                key={field}
                label={word.label}
                at={at(field)}
                value={value as string | null}
                choices={listLayers(state.design, list)}
                emptyLabel={list === 'routes' ? "the conductor's own" : 'not known'}
                onChange={(next) => set(field, next)}
              />
            )
          }
          return (
            <FieldCell
              key={field}
              words={word}
              schema={rule}
              at={at(field)}
              value={value as FieldValue}
              isLong={list === 'notes' && field === 'text'}
              onChange={(next) => set(field, next)}
            />
          )
        })}
      </div>
    </FormCells>
  )
}

function startOf({ fromMm, atMm }: Fields): PointMm {
  const known = Array.isArray(fromMm) ? fromMm : Array.isArray(atMm) ? atMm : [0, 0]
  return [Number(known[0]), Number(known[1])]
}

function listLayers({ construction }: Design, list: PlanListKey): readonly Choice<string>[] {
  const kinds = list === 'routes' ? ['conductor'] : ['coverlay-film', 'solder-mask']
  return construction.layers
    .filter(({ kind }) => kinds.includes(kind))
    .map(({ id, name }) => ({ value: id, label: name }))
}

interface OptionalPointProps {
  readonly editor: PlanEditor
  readonly label: string
  readonly isKnown: boolean
  readonly onChange: (isKnown: boolean) => void
}

function OptionalPoint({ editor, label, isKnown, onChange }: OptionalPointProps) {
  if (editor.isReadOnly) return isKnown ? null : <p className="small muted">{label}: not known</p>
  return (
    <div className="row">
      <Button onPress={() => onChange(!isKnown)}>
        {isKnown ? `Without: ${label.toLowerCase()}` : `Place: ${label.toLowerCase()}`}
      </Button>
    </div>
  )
}

interface PairProps {
  readonly editor: PlanEditor
  readonly at: Place
  readonly label: string
  readonly value: PointMm | null
  readonly onChange: (value: PointMm | null) => void
}

/** What a pair begins with once somebody says that it is known: a length that is then typed. */
const FIRST_PAIR_MM: PointMm = [1, 1]

function Pair({ editor, at, label, value, onChange }: PairProps) {
  const { issueByPath } = useDraft()
  const unit = getShownUnit('mm', useLengthUnit().unit)
  const issue = [at.path, `${at.path}[0]`, `${at.path}[1]`].map((path) => issueByPath.get(path)).find((each) => each)
  return (
    <fieldset className="field plan-pair">
      <legend className="field-label">{label}</legend>
      {value === null ? (
        <>
          <span className="muted">not known</span>
          {!editor.isReadOnly && <Button onPress={() => onChange(FIRST_PAIR_MM)}>State {label.toLowerCase()}</Button>}
        </>
      ) : editor.isReadOnly ? (
        <span className="num">
          {value.map((mm) => digitsOfEnteredLength(mm, 'mm', unit)).join(', ')} {getUnitSymbol(unit)}
        </span>
      ) : (
        <>
          <PlaceInput label={label} atMm={value} unit={unit} onChange={onChange} />
          <Button onPress={() => onChange(null)}>Not known</Button>
        </>
      )}
      {issue !== undefined && <span className="field-error cell-error">{issue}</span>}
    </fieldset>
  )
}

interface AnchorsProps {
  readonly editor: PlanEditor
  readonly label: string
  readonly value: readonly PointMm[]
  readonly startMm: PointMm
  readonly onChange: (value: readonly PointMm[]) => void
}

function Anchors({ editor, label, value, startMm, onChange }: AnchorsProps) {
  const unit = getShownUnit('mm', useLengthUnit().unit)
  return (
    <fieldset className="field plan-pair">
      <legend className="field-label">{label}</legend>
      {value.map((atMm, index) => (
        // biome-ignore lint/suspicious/noArrayIndexKey: an anchor has no identity but its place in the list.
        <span key={index} className="row">
          <PlaceInput
            label={`Anchor ${index + 1}`}
            atMm={atMm}
            unit={unit}
            isReadOnly={editor.isReadOnly}
            onChange={(next) => onChange(value.map((each, other) => (other === index ? next : each)))}
          />
          {!editor.isReadOnly && (
            <Button onPress={() => onChange(value.filter((_, other) => other !== index))}>
              Remove anchor {index + 1}
            </Button>
          )}
        </span>
      ))}
      {!editor.isReadOnly && <Button onPress={() => onChange([...value, startMm])}>Add an anchor</Button>}
    </fieldset>
  )
}
