'use client'

import { useState } from 'react'
import { ActionButton } from '@/app/_components/ui/action-button'
import { Button } from '@/app/_components/ui/button'
import { FormError } from '@/app/_components/ui/form-error'
import { FormTextArea } from '@/app/_components/ui/form-fields'
import { useActionForm } from '@/app/_components/ui/use-action-form'
import type { StandingView } from '@/lib/data'
import { takeOffReleaseInput } from '@/lib/inputs'
import type { StandingKind } from '@/lib/review'
import { putBackOnRelease, takeOffRelease } from './actions'

const WORDS: Readonly<Record<StandingKind, string>> = {
  silent: 'has not declared',
  yes: 'declares the present content buildable',
  'conditions-open': 'conditions not decided yet',
  'conditions-declined': 'a condition was declined; no plain yes',
  unclear: 'buildable, with a note that may be a condition',
  no: 'declares the present content not buildable',
  outdated: 'declared earlier content, not the present content',
  'taken-off': 'off this release',
}

interface ReleaseFabricatorsProps {
  revisionId: string
  version: number
  standings: readonly StandingView[]
  mayChoose: boolean
}

/** How each fabricator stands to the present content, and which are off this release. */
export function ReleaseFabricators({ revisionId, version, standings, mayChoose }: ReleaseFabricatorsProps) {
  return (
    <ul className="plain-list">
      {standings.map(({ company, kind, takenOffBecause, takenOffBy }) => (
        <li key={company.id}>
          <strong>{company.name}</strong>: {WORDS[kind]}
          {kind === 'taken-off' && `, by ${takenOffBy}: ${takenOffBecause}`}
          {mayChoose &&
            (kind === 'taken-off' ? (
              <ActionButton action={putBackOnRelease} input={{ revisionId, companyId: company.id }} weight="quiet">
                Put back on this release
              </ActionButton>
            ) : (
              <TakeOff
                key={`${version}`}
                revisionId={revisionId}
                companyId={company.id}
                name={company.name}
                version={version}
              />
            ))}
        </li>
      ))}
    </ul>
  )
}

interface TakeOffProps {
  revisionId: string
  companyId: string
  name: string
  version: number
}

function TakeOff({ revisionId, companyId, name, version }: TakeOffProps) {
  const [isOpen, setIsOpen] = useState(false)
  const { form, submit, isPending, refusal } = useActionForm({
    schema: takeOffReleaseInput,
    action: takeOffRelease,
    defaultValues: { revisionId, companyId, seenVersion: version, reason: '' },
    onDone: () => setIsOpen(false),
  })
  if (!isOpen) {
    return (
      <Button weight="quiet" onPress={() => setIsOpen(true)} aria-label={`Take off this release: ${name}`}>
        Take off this release
      </Button>
    )
  }
  return (
    <form className="form no-print" onSubmit={submit}>
      <FormTextArea
        control={form.control}
        name="reason"
        label={`Reason for taking ${name} off this release`}
        hint="They get no package and read this reason. It is printed in the report."
        rows={2}
      />
      <FormError refusal={refusal} />
      <div className="row">
        <Button type="submit" isPending={isPending}>
          Take off this release
        </Button>
        <Button weight="quiet" onPress={() => setIsOpen(false)}>
          Cancel
        </Button>
      </div>
    </form>
  )
}
