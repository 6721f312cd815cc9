'use client'

import type { ReactNode } from 'react'
import { type Control, type FieldPath, type FieldValues, useController } from 'react-hook-form'
import { CheckboxField, RadioField } from './choice-fields'
import { NumberField } from './number-field'
import { type Option, SelectField } from './select-field'
import { TextArea, TextField, type TextFieldProps } from './text-field'

/** Fields tied to a form by name. `TOut` is what the form's schema makes of its input. */
interface BoundTo<TIn extends FieldValues, TOut> {
  control: Control<TIn, unknown, TOut>
  name: FieldPath<TIn>
}

type TextTexts = Omit<TextFieldProps, 'name' | 'value' | 'onChange' | 'onBlur' | 'error'>

export function FormText<TIn extends FieldValues, TOut>({ control, name, ...rest }: BoundTo<TIn, TOut> & TextTexts) {
  const { field, fieldState } = useController({ control, name })
  return (
    <TextField
      {...rest}
      name={field.name}
      value={typeof field.value === 'string' ? field.value : ''}
      onChange={field.onChange}
      onBlur={field.onBlur}
      error={fieldState.error?.message}
    />
  )
}

export function FormTextArea<TIn extends FieldValues, TOut>({
  control,
  name,
  ...rest
}: BoundTo<TIn, TOut> & Omit<TextTexts, 'type' | 'autoComplete'> & { rows?: number }) {
  const { field, fieldState } = useController({ control, name })
  return (
    <TextArea
      {...rest}
      name={field.name}
      value={typeof field.value === 'string' ? field.value : ''}
      onChange={field.onChange}
      onBlur={field.onBlur}
      error={fieldState.error?.message}
    />
  )
}

export function FormNumber<TIn extends FieldValues, TOut>({
  control,
  name,
  ...rest
}: BoundTo<TIn, TOut> & { label: string; hint?: ReactNode; unit?: string; isOptional?: boolean }) {
  const { field, fieldState } = useController({ control, name })
  return (
    <NumberField
      {...rest}
      name={field.name}
      value={typeof field.value === 'number' ? field.value : null}
      onChange={field.onChange}
      onBlur={field.onBlur}
      error={fieldState.error?.message}
    />
  )
}

interface ChoiceTexts<T extends string> {
  label: string
  hint?: ReactNode
  options: readonly (Option<T> & { note?: string; isDisabled?: boolean })[]
}

export function FormSelect<TIn extends FieldValues, TOut, T extends string>({
  control,
  name,
  options,
  ...rest
}: BoundTo<TIn, TOut> & ChoiceTexts<T> & { isOptional?: boolean; placeholder?: string }) {
  const { field, fieldState } = useController({ control, name })
  const chosen = options.find((option) => option.value === field.value)
  return (
    <SelectField
      {...rest}
      name={field.name}
      options={options}
      value={chosen?.value ?? null}
      onChange={field.onChange}
      error={fieldState.error?.message}
    />
  )
}

export function FormRadio<TIn extends FieldValues, TOut, T extends string>({
  control,
  name,
  options,
  ...rest
}: BoundTo<TIn, TOut> & ChoiceTexts<T>) {
  const { field, fieldState } = useController({ control, name })
  const chosen = options.find((option) => option.value === field.value)
  return (
    <RadioField
      {...rest}
      name={field.name}
      options={options}
      value={chosen?.value ?? null}
      onChange={field.onChange}
      error={fieldState.error?.message}
    />
  )
}

export function FormCheckbox<TIn extends FieldValues, TOut>({
  control,
  name,
  children,
}: BoundTo<TIn, TOut> & { children: ReactNode }) {
  const { field } = useController({ control, name })
  return (
    <CheckboxField name={field.name} isSelected={field.value === true} onChange={field.onChange}>
      {children}
    </CheckboxField>
  )
}
