'use client'

import { useRouter } from 'next/navigation'
import { useState } from 'react'
import { Button } from '@/app/_components/ui/button'
import { NumberField } from '@/app/_components/ui/number-field'

/** For how many good parts the page prices. */
export function QuantityForm({ address, quantity }: { address: string; quantity: number | null }) {
  const router = useRouter()
  const [value, setValue] = useState<number | null>(quantity)
  const [error, setError] = useState<string | null>(null)
  return (
    <form
      className="row no-print row-end"
      onSubmit={(event) => {
        event.preventDefault()
        const isWhole = value === null || (Number.isInteger(value) && value >= 1 && value <= 1_000_000_000)
        setError(isWhole ? null : 'Enter a whole number of at least 1, or leave it blank.')
        if (isWhole) router.push(value === null ? address : `${address}?quantity=${value}`)
      }}
    >
      <NumberField label="Good parts ordered" value={value} onChange={setValue} error={error ?? undefined} />
      <Button type="submit">Recalculate</Button>
    </form>
  )
}
