'use client'

import { useId, useState } from 'react'
import { Group } from 'react-aria-components/Group'
import { Input } from 'react-aria-components/Input'
import { TextField as AriaTextField } from 'react-aria-components/TextField'
import { formatLength, parseLength } from '@/lib/engine/units'
import { FieldFrame, type FieldTexts } from './field-frame'
import { useLengthUnit } from './unit-context'

interface LengthFieldProps extends FieldTexts {
  name?: string
  /** Length in um, or null while unknown. */
  valueUm: number | null
  onChange: (valueUm: number | null) => void
  isReadOnly?: boolean
}

const SYMBOL = { mm: 'mm', um: 'µm', mil: 'mil' } as const

/** Shortest form of the number in the chosen unit, without its symbol. */
function toText(valueUm: number | null, unit: 'mm' | 'um' | 'mil'): string {
  if (valueUm === null) return ''
  const number = formatLength(valueUm, unit).split(' ')[0] ?? ''
  return number.includes('.') ? number.replace(/\.?0+$/, '') : number
}

/**
 * A length in the unit of the header's switch. A unit typed with the number (`6 mil`) wins over the switch; what cannot
 * be read stays as typed, with the reason.
 */
export function LengthField({
  label,
  hint,
  error,
  isOptional,
  valueUm,
  onChange,
  isReadOnly,
  ...rest
}: LengthFieldProps) {
  const { unit } = useLengthUnit()
  const [draft, setDraft] = useState<{ text: string; unit: string } | null>(null)
  const [misread, setMisread] = useState<string | undefined>(undefined)
  const unitId = useId()
  // A draft typed under another unit would change its meaning when the switch moves: show the kept length instead.
  const text = draft !== null && draft.unit === unit ? draft.text : toText(valueUm, unit)
  const commit = () => {
    if (draft === null) return
    if (draft.text.trim() === '') {
      setMisread(undefined)
      setDraft(null)
      onChange(null)
      return
    }
    const parsed = parseLength(draft.text, unit)
    if (!parsed.ok) {
      setMisread(parsed.message)
      return
    }
    setMisread(undefined)
    setDraft(null)
    onChange(parsed.valueUm)
  }
  const shownError = misread ?? error
  return (
    <AriaTextField
      {...rest}
      isReadOnly={isReadOnly ?? false}
      value={text}
      onChange={(next) => setDraft({ text: next, unit })}
      onBlur={commit}
      onKeyDown={(event) => {
        if (event.key === 'Enter') commit()
      }}
      isInvalid={shownError !== undefined}
      validationBehavior="aria"
      className="field"
      aria-describedby={unitId}
    >
      <FieldFrame label={label} hint={hint} error={shownError} isOptional={isOptional ?? false}>
        <Group className="with-unit">
          <Input className="input input-num" inputMode="decimal" />
          <span className="unit" id={unitId}>
            {SYMBOL[unit]}
          </span>
        </Group>
      </FieldFrame>
    </AriaTextField>
  )
}
