'use client'

import { CheckboxField, RadioField } from '@/app/_components/ui/choice-fields'
import type { DoneOptions } from '@/lib/data'
import type { DoneInput } from '@/lib/inputs'

type Kind = DoneInput['kind']

const LABELS: Readonly<Record<Kind, string>> = {
  fields: 'a change of the design',
  proposal: 'an accepted proposal',
  file: 'a file',
  action: 'an action',
  'no-change': 'no change, for the reason given',
}

interface DoneFieldProps {
  options: DoneOptions
  /** Which kinds count here; those without anything to point to are left out. */
  kinds: readonly Kind[]
  value: DoneInput | undefined
  onChange: (value: DoneInput | undefined) => void
  error?: string | undefined
}

/** Points to what was done: the changes of the design since, an accepted proposal, a file, an action. */
export function DoneField({ options, kinds, value, onChange, error }: DoneFieldProps) {
  const offered = kinds.filter((kind) => countOf(options, kind) > 0)
  return (
    <div className="stack">
      {offered.length === 0 && (
        <p className="muted">Nothing has changed since: change the design or accept a proposal first.</p>
      )}
      {offered.length > 0 && (
        <RadioField
          label="What was done"
          value={value?.kind ?? null}
          onChange={(kind) => onChange(makeFirst(options, kind))}
          options={offered.map((kind) => ({ value: kind, label: LABELS[kind] }))}
          error={error}
        />
      )}
      {value?.kind === 'fields' && (
        <fieldset className="stack">
          <legend className="label">Changes since then</legend>
          {options.changes.map(({ place, sentence }) => (
            <CheckboxField
              key={place}
              isSelected={value.places.includes(place)}
              onChange={(isSelected) =>
                onChange({
                  kind: 'fields',
                  places: isSelected ? [...value.places, place] : value.places.filter((other) => other !== place),
                })
              }
            >
              {sentence}
            </CheckboxField>
          ))}
        </fieldset>
      )}
      {value?.kind === 'proposal' && (
        <RadioField
          label="Proposal"
          value={value.proposalId}
          onChange={(proposalId) => onChange({ kind: 'proposal', proposalId })}
          options={options.proposals.map(({ id, title }) => ({ value: id, label: title }))}
        />
      )}
      {value?.kind === 'file' && (
        <RadioField
          label="File"
          value={value.sha256}
          onChange={(sha256) => onChange({ kind: 'file', sha256 })}
          options={options.files.map(({ sha256, fileName }) => ({ value: sha256, label: fileName }))}
        />
      )}
      {value?.kind === 'action' && (
        <RadioField
          label="Action"
          value={value.actionId}
          onChange={(actionId) => onChange({ kind: 'action', actionId })}
          options={options.actions.map(({ id, text }) => ({ value: id, label: text }))}
        />
      )}
    </div>
  )
}

function countOf(options: DoneOptions, kind: Kind): number {
  switch (kind) {
    case 'fields':
      return options.changes.length
    case 'proposal':
      return options.proposals.length
    case 'file':
      return options.files.length
    case 'action':
      return options.actions.length
    case 'no-change':
      return options.mayStayUnchanged ? 1 : 0
  }
}

/** A kind with nothing chosen yet, but for the one thing that there is. */
function makeFirst({ proposals, files, actions }: DoneOptions, kind: Kind): DoneInput | undefined {
  switch (kind) {
    case 'fields':
      return { kind, places: [] }
    case 'proposal':
      return { kind, proposalId: only(proposals)?.id ?? '' }
    case 'file':
      return { kind, sha256: only(files)?.sha256 ?? '' }
    case 'action':
      return { kind, actionId: only(actions)?.id ?? '' }
    case 'no-change':
      return { kind }
  }
}

const only = <T,>(list: readonly T[]): T | undefined => (list.length === 1 ? list[0] : undefined)
