'use client'

import { Button } from '@/app/_components/ui/button'
import type { Design } from '@/lib/engine'
import { listStartingConstructions } from '@/lib/engine/starting-constructions'

interface StartingListProps {
  /** Name that the design made from one gets. */
  designName: string
  onUse: (design: Design, from: string) => void
}

/** The ready-made constructions. A part of the browser's load that is fetched when somebody asks for them. */
export default function StartingList({ designName, onUse }: StartingListProps) {
  return (
    <ul>
      {listStartingConstructions().map((starting) => (
        <li key={starting.id} className="starting-item">
          <div>
            <strong>{starting.name}</strong>
            <p className="small muted">{starting.purpose}</p>
          </div>
          <Button onPress={() => onUse(starting.makeDesign(designName), starting.name)}>
            Use<span className="sr-only"> {starting.name}</span>
          </Button>
        </li>
      ))}
    </ul>
  )
}
