'use client'

import { usePathname, useRouter } from 'next/navigation'
import { Button } from '@/app/_components/ui/button'
import { SelectField } from '@/app/_components/ui/select-field'
import type { RevisionTrailView } from '@/lib/data'
import type { TrailFilter } from '@/lib/review'

interface TrailFilterFormProps {
  readonly filter: TrailFilter
  readonly choices: RevisionTrailView['choices']
}

/** By person, act and thing. The filter stands in the address, so that it can be passed on. */
export function TrailFilterForm({ filter, choices }: TrailFilterFormProps) {
  const router = useRouter()
  const pathname = usePathname()
  const set = (change: Partial<TrailFilter>) => {
    const chosen = Object.entries({ ...filter, ...change }).filter(([, value]) => value !== '')
    const query = new URLSearchParams(chosen).toString()
    router.replace(query === '' ? pathname : `${pathname}?${query}`)
  }
  const isSet = Object.values(filter).some((value) => value !== '')
  return (
    <search className="row row-end no-print">
      <SelectField
        label="Person"
        value={filter.person === '' ? null : filter.person}
        onChange={(person) => set({ person })}
        options={choices.people.map((value) => ({ value, label: value }))}
        placeholder="Everybody"
      />
      <SelectField
        label="Act"
        value={filter.act === '' ? null : filter.act}
        onChange={(act) => set({ act })}
        options={choices.acts.map((value) => ({ value, label: value.replaceAll('-', ' ') }))}
        placeholder="All acts"
      />
      <SelectField
        label="About"
        value={filter.thing === '' ? null : filter.thing}
        onChange={(thing) => set({ thing })}
        options={choices.things.map((value) => ({ value, label: value }))}
        placeholder="Everything"
      />
      {isSet && (
        <Button weight="quiet" onPress={() => set({ person: '', act: '', thing: '' })}>
          Show all
        </Button>
      )}
    </search>
  )
}
