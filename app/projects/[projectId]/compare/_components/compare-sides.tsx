'use client'

import { useRouter } from 'next/navigation'
import { Button } from '@/app/_components/ui/button'
import { SelectField } from '@/app/_components/ui/select-field'
import { paths } from '@/lib/addresses'
import type { ComparableView } from '@/lib/data'

interface CompareSidesProps {
  projectId: string
  options: readonly ComparableView[]
  from: string | null
  to: string | null
}

/** What is compared with what. A choice changes the address at once. */
export function CompareSides({ projectId, options, from, to }: CompareSidesProps) {
  const router = useRouter()
  const choices = options.map(({ ref, label }) => ({ value: ref, label }))
  const go = (sides: { from: string; to: string }) => {
    const address = new URL(paths.compare(projectId, sides), window.location.href)
    const present = new URL(window.location.href).searchParams
    for (const name of ['show', 'area']) {
      const value = present.get(name)
      if (value !== null) address.searchParams.set(name, value)
    }
    router.push(`${address.pathname}${address.search}`)
  }
  const first = options[0]?.ref ?? ''
  return (
    <div className="row filters no-print">
      <SelectField
        label="Before"
        value={from}
        options={choices}
        onChange={(chosen) => go({ from: chosen, to: to ?? first })}
      />
      <SelectField
        label="After"
        value={to}
        options={choices}
        onChange={(chosen) => go({ from: from ?? first, to: chosen })}
      />
      <Button onPress={() => go({ from: to ?? first, to: from ?? first })} isDisabled={from === null || to === null}>
        Swap
      </Button>
    </div>
  )
}
