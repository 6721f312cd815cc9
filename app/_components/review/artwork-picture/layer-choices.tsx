'use client'

import { Button } from '@/app/_components/ui/button'
import { CheckboxField } from '@/app/_components/ui/choice-fields'
import { colourOf, type DrawnLayer } from '@/lib/artwork-picture'

interface LayerChoicesProps {
  readonly layers: readonly DrawnLayer[]
  /** File names of the layers that are seen. */
  readonly seen: ReadonlySet<string>
  readonly onChange: (seen: ReadonlySet<string>) => void
}

/** Which layers are seen, with their colours; the list says by name what the colours show. */
export function LayerChoices({ layers, seen, onChange }: LayerChoicesProps) {
  const change = (fileName: string, isSeen: boolean) => {
    const next = new Set(seen)
    if (isSeen) next.add(fileName)
    else next.delete(fileName)
    onChange(next)
  }
  return (
    <ul className="artwork-layers" aria-label="Layers">
      {layers.map(({ head }) => (
        <li key={head.fileName}>
          {head.leftOutReason === null ? (
            <>
              <CheckboxField isSelected={seen.has(head.fileName)} onChange={(is) => change(head.fileName, is)}>
                <span className="layer-swatch" data-colour={colourOf(head)} aria-hidden="true" /> {head.fileName}{' '}
                <span className="small muted">{describeLayer(head)}</span>
              </CheckboxField>
              <Button weight="quiet" onPress={() => onChange(new Set([head.fileName]))}>
                Alone<span className="sr-only">: {head.fileName}</span>
              </Button>
            </>
          ) : (
            <span className="small muted">
              {head.fileName} is not drawn: {head.leftOutReason}.
            </span>
          )}
        </li>
      ))}
    </ul>
  )
}

function describeLayer({ role, side, copperPlace }: DrawnLayer['head']): string {
  if (role === null) return 'nobody knows what it is for'
  return [role, ...(side === null ? [] : [side]), ...(copperPlace === null ? [] : [`layer ${copperPlace + 1}`])].join(
    ', ',
  )
}
