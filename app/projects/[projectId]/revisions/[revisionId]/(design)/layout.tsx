import type { ReactNode } from 'react'
import { DraftHolder } from '@/app/_components/engineering/draft/draft-holder'

/** The pages on which the design is edited share one draft: what was typed on one of them is there on the next, and one save stores it all. */
export default function DesignLayout({ children }: { children: ReactNode }) {
  return <DraftHolder>{children}</DraftHolder>
}
