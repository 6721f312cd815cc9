'use client'

import { useRouter } from 'next/navigation'
import { useState } from 'react'
import { Button } from '@/app/_components/ui/button'
import { FormError } from '@/app/_components/ui/form-error'
import { TextField } from '@/app/_components/ui/text-field'
import { useAction } from '@/app/_components/ui/use-action'
import { paths } from '@/lib/addresses'
import type { TableSheetKind } from '@/lib/fabrication'
import { restoreSheetVersion } from './actions'

interface RestoreVersionProps {
  readonly companyId: string
  readonly kind: TableSheetKind
  readonly version: number
  readonly newestVersion: number
  readonly today: string
}

/** Saves what an earlier version holds as a new one. */
export function RestoreVersion({ companyId, kind, version, newestVersion, today }: RestoreVersionProps) {
  const [issuedOn, setIssuedOn] = useState(today)
  const [note, setNote] = useState(`as version ${version}`)
  const router = useRouter()
  const { send, isPending, refusal } = useAction(restoreSheetVersion)
  return (
    <>
      <p className="small">
        The rows of version {version} become version {newestVersion + 1}. Versions {version + 1} to {newestVersion} stay
        in the list.
      </p>
      <div className="form-grid">
        <TextField label="Date of issue of the new version" type="date" value={issuedOn} onChange={setIssuedOn} />
        <TextField label="Note on the new version" isOptional value={note} onChange={setNote} />
      </div>
      <FormError refusal={refusal} />
      <div className="row">
        <Button
          isPending={isPending}
          onPress={() =>
            send({ companyId, kind, version, seenVersion: newestVersion, issuedOn, note }, () =>
              router.push(paths.companySheet(companyId, kind)),
            )
          }
        >
          Restore as version {newestVersion + 1}
        </Button>
      </div>
    </>
  )
}
