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
  readonly pendingLabel?: string
  readonly weight?: ButtonWeight
  /** Said beside the button once it is done. */
  readonly done?: string | false
  /** Another act, beside the button. */
  readonly also?: ReactNode
  /** Leaves the form as it was. */
  readonly onCancel?: () => void
}

/** The end of a form: why the server refused, the button, and what came of it. */
export function FormFoot(props: FormFootProps) {
  const { refusal, isPending, label, pendingLabel, weight = 'plain', done, also, onCancel } = props
  return (
    <>
      <FormError refusal={refusal} />
      <div className="row">
        <Button
          type="submit"
          weight={weight}
          isPending={isPending}
          {...(pendingLabel === undefined ? {} : { pendingLabel })}
        >
          {label}
        </Button>
        {also}
        {onCancel !== undefined && (
          <Button weight="quiet" onPress={onCancel} isDisabled={isPending}>
            Cancel
          </Button>
        )}
        {done !== undefined && (
          <span role="status" className="muted">
            {done}
          </span>
        )}
      </div>
    </>
  )
}
