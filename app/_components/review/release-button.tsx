'use client'

import { useState } from 'react'
import { Button } from '@/app/_components/ui/button'
import { Cautions } from '@/app/_components/ui/cautions'
import { SideDialog } from '@/app/_components/ui/dialog'
import { FormError } from '@/app/_components/ui/form-error'
import { useActionForm } from '@/app/_components/ui/use-action-form'
import type { SecondFactorView } from '@/lib/data'
import { releaseInput } from '@/lib/inputs'
import { releaseRevision } from './actions'
import { ConfirmFields, forgetConfirmation, UNCONFIRMED } from './confirm-fields'
import { Meaning } from './meaning'
import { ReleaseTermsFields } from './release-terms-fields'

interface ReleaseButtonProps {
  revisionId: string
  version: number
  factor: SecondFactorView
  /** Label of the revision in force that this one replaces; null where it is the first. */
  replaces: string | null
}

/** Asks first, and for the person again, saying what will happen. */
export function ReleaseButton({ revisionId, version, factor, replaces }: ReleaseButtonProps) {
  const [isAsking, setIsAsking] = useState(false)
  const { form, submit, isPending, refusal } = useActionForm({
    schema: releaseInput,
    action: releaseRevision,
    defaultValues: {
      revisionId,
      seenVersion: version,
      isConditional: false,
      purpose: null,
      quantityLimit: null,
      validUntil: '',
      conditions: '',
      changeNumber: '',
      reason: '',
      effectivity: '',
      ...UNCONFIRMED,
    },
    onDone: () => setIsAsking(false),
  })
  const setOpen = (isOpen: boolean) => {
    forgetConfirmation(form)
    setIsAsking(isOpen)
  }
  return (
    <div className="stack">
      <Cautions />
      <div className="row">
        <Button weight="strong" onPress={() => setOpen(true)}>
          Release
        </Button>
      </div>
      <SideDialog title="Release this revision?" isOpen={isAsking} onOpenChange={setOpen} isBusy={isPending}>
        <Meaning of="release" />
        <form className="form" onSubmit={submit}>
          <ReleaseTermsFields form={form} replaces={replaces} />
          <ConfirmFields form={form} factor={factor} />
          <FormError refusal={refusal} />
          <div className="row">
            <Button type="submit" weight="strong" isPending={isPending} pendingLabel="Releasing…">
              Release
            </Button>
            <Button onPress={() => setOpen(false)} isDisabled={isPending}>
              Cancel
            </Button>
          </div>
        </form>
      </SideDialog>
    </div>
  )
}
