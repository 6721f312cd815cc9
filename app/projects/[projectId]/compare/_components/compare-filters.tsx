'use client'

import { usePathname, useRouter, useSearchParams } from 'next/navigation'
import { COMPARISON_PARTS, type ComparisonPart } from '@/app/_components/review/comparison-parts'
import { ChoiceGroup } from '@/app/_components/ui/choice-group'
import type { InputChange } from '@/lib/review'

interface CompareFiltersProps {
  part: ComparisonPart | null
  area: InputChange['area'] | null
  counts: Readonly<Record<ComparisonPart, number>>
  /** Parts of the design in which something differs. */
  areas: readonly InputChange['area'][]
}

const PART_WORDS: Record<ComparisonPart, string> = {
  inputs: 'Inputs',
  verdicts: 'Verdicts',
  numbers: 'Numbers',
  answers: 'Answers',
}

/** Which part of the comparison is shown; the choice stands in the address. */
export function CompareFilters({ part, area, counts, areas }: CompareFiltersProps) {
  const router = useRouter()
  const pathname = usePathname()
  const present = useSearchParams()
  const set = (name: 'show' | 'area', value: string) => {
    const next = new URLSearchParams(present)
    if (value === 'all') next.delete(name)
    else next.set(name, value)
    router.replace(`${pathname}?${next}`, { scroll: false })
  }
  return (
    <div className="row filters no-print">
      <ChoiceGroup
        label="What to show"
        value={part ?? 'all'}
        options={[
          { value: 'all', label: 'All' },
          ...COMPARISON_PARTS.map((name) => ({ value: name, label: `${PART_WORDS[name]} (${counts[name]})` })),
        ]}
        onChange={(value) => set('show', value)}
      />
      {areas.length > 1 && (part === null || part === 'inputs') && (
        <ChoiceGroup
          label="Part of the design"
          value={area ?? 'all'}
          options={[{ value: 'all', label: 'All parts' }, ...areas.map((name) => ({ value: name, label: name }))]}
          onChange={(value) => set('area', value)}
        />
      )}
    </div>
  )
}
