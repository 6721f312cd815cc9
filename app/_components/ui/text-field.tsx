'use client'

import { Input } from 'react-aria-components/Input'
import { TextArea as AriaTextArea } from 'react-aria-components/TextArea'
import { TextField as AriaTextField } from 'react-aria-components/TextField'
import { FieldFrame, type FieldTexts } from './field-frame'

export interface TextFieldProps extends FieldTexts {
  name?: string
  value: string
  onChange: (value: string) => void
  onBlur?: () => void
  type?: 'text' | 'email' | 'password' | 'url' | 'date' | 'datetime-local' | 'search'
  autoComplete?: string
  isRequired?: boolean
  isReadOnly?: boolean
  isDisabled?: boolean
  autoFocus?: boolean
  maxLength?: number
  placeholder?: string
}

export function TextField({ type = 'text', label, hint, error, isOptional, placeholder, ...rest }: TextFieldProps) {
  return (
    <AriaTextField {...rest} type={type} isInvalid={error !== undefined} validationBehavior="aria" className="field">
      <FieldFrame label={label} hint={hint} error={error} isOptional={isOptional ?? false}>
        <Input className="input" placeholder={placeholder} />
      </FieldFrame>
    </AriaTextField>
  )
}

export function TextArea({
  label,
  hint,
  error,
  isOptional,
  rows = 4,
  placeholder,
  ...rest
}: Omit<TextFieldProps, 'type' | 'autoComplete'> & { rows?: number }) {
  return (
    <AriaTextField {...rest} isInvalid={error !== undefined} validationBehavior="aria" className="field">
      <FieldFrame label={label} hint={hint} error={error} isOptional={isOptional ?? false}>
        <AriaTextArea className="input" rows={rows} placeholder={placeholder} />
      </FieldFrame>
    </AriaTextField>
  )
}
