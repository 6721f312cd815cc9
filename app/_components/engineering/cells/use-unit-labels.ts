'use client'

import { useLengthUnit } from '@/app/_components/ui/unit-context'
import { getShownUnit, getUnitSymbol } from '@/lib/engine/units'

/** Symbols for column heads: thickness and dimensions in plan may be read in different units. */
export function useUnitLabels(): { readonly thickness: string; readonly plan: string } {
  const { unit } = useLengthUnit()
  return { thickness: getUnitSymbol(getShownUnit('um', unit)), plan: getUnitSymbol(getShownUnit('mm', unit)) }
}
