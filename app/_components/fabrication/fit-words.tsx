import { type MarkedVerdict, VerdictMark } from '@/app/_components/ui/verdict-mark'
import type { CapabilityVerdict } from '@/lib/fabrication/matrix'

const MARKS: Readonly<Record<CapabilityVerdict, { readonly mark: MarkedVerdict; readonly word: string }>> = {
  comfortable: { mark: 'meets', word: 'Comfortable' },
  stretch: { mark: 'thin-margin', word: 'Stretch' },
  outside: { mark: 'fails', word: 'Outside' },
  'not-stated': { mark: 'not-computed', word: 'Not stated' },
}

/** Where a value falls in a matrix, as a word and a shape. */
export function CapabilityMark({ verdict }: { verdict: CapabilityVerdict }) {
  const { mark, word } = MARKS[verdict]
  return <VerdictMark verdict={mark} word={word} />
}
