'use client'

import { useController, useWatch } from 'react-hook-form'
import { CheckboxField } from '@/app/_components/ui/choice-fields'
import { FormNumber, FormSelect, FormTextArea } from '@/app/_components/ui/form-fields'
import { findFieldPattern, isNumericField, listFieldPatterns } from '@/lib/engine'
import { getUnitSymbol } from '@/lib/engine/units'
import type { ItemControl } from './controls'
import { KindSelect } from './kind-select'

const NUMERIC = listFieldPatterns()
  .filter(isNumericField)
  .map(({ pattern, label }) => ({ value: pattern, label }))

const SENSES = [
  { value: 'at-least', label: 'at least' },
  { value: 'at-most', label: 'at most' },
  { value: 'within', label: 'between' },
] as const

/** A question for a person, who shows evidence; or a field of the design against a limit, which the program compares. */
export function OwnCheckFields({ control }: { control: ItemControl }) {
  const { field: check } = useController({ control, name: 'item.check' })
  const { field: evidence } = useController({ control, name: 'item.evidence' })
  const chosen = useWatch({ control, name: 'item.check.field' })
  const sense = useWatch({ control, name: 'item.check.sense' })
  const unit = typeof chosen === 'string' ? findFieldPattern(chosen)?.node.unit : undefined
  const isComputed = check.value !== undefined
  const unitText = unit === undefined ? {} : { unit: getUnitSymbol(unit) }
  return (
    <>
      <CheckboxField
        isSelected={isComputed}
        onChange={(isSelected) => {
          check.onChange(isSelected ? { ...EMPTY_CHECK } : undefined)
          if (isSelected) evidence.onChange('')
        }}
      >
        Compared by the program: a field of the design against a limit
      </CheckboxField>
      {isComputed ? (
        <>
          <FormSelect control={control} name="item.check.field" label="Field" options={NUMERIC} />
          <KindSelect control={control} name="item.check.where" pattern={typeof chosen === 'string' ? chosen : ''} />
          <FormSelect control={control} name="item.check.sense" label="Limit" options={SENSES} />
          <FormNumber
            control={control}
            name="item.check.value"
            label={sense === 'within' ? 'Lower end' : 'Value'}
            {...unitText}
          />
          {sense === 'within' && (
            <FormNumber control={control} name="item.check.upperValue" label="Upper end" {...unitText} />
          )}
        </>
      ) : (
        <FormTextArea control={control} name="item.evidence" label="Evidence required for an answer" rows={2} />
      )}
    </>
  )
}

const EMPTY_CHECK = {
  field: NUMERIC[0]?.value ?? '',
  where: null,
  sense: 'at-least',
  value: null,
  upperValue: null,
}
