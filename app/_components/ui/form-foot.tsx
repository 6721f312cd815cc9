'use client'

import type { ReactNode } from 'react'
import type { ShownRefusal } from './action-result'
import { Button, type ButtonWeight } from './button'
import { FormError } from './form-error'

interface FormFootProps {
  readonly refusal: ShownRefusal | null
  readonly isPending: boolean
  /** On the button. */
  readonly label: ReactNode
  readonly pendingLabel: string
  readonly weight?: ButtonWeight
  /** Said beside the button once it is done. */
  readonly done?: string | false
}

/** The end of a form: why the server refused, the button, and what came of it. */
export function FormFoot({ refusal, isPending, label, pendingLabel, weight = 'plain', done }: FormFootProps) {
  return (
    <>
      <FormError refusal={refusal} />
      <div className="row">
        <Button type="submit" weight={weight} isPending={isPending} pendingLabel={pendingLabel}>
          {label}
        </Button>
        {done !== undefined && (
          <span role="status" className="muted">
            {done}
          </span>
        )}
      </div>
    </>
  )
}
