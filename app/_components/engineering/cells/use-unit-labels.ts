'use client'

import { getShownUnit } from '@/app/_components/ui/quantity'
import { useLengthUnit } from '@/app/_components/ui/unit-context'
import { getUnitLabel } from '@/lib/drawing'

/** Symbols for column heads: thickness and dimensions in plan may be read in different units. */
export function useUnitLabels(): { readonly thickness: string; readonly plan: string } {
  const { unit } = useLengthUnit()
  return { thickness: getUnitLabel(getShownUnit('um', unit)), plan: getUnitLabel(getShownUnit('mm', unit)) }
}
