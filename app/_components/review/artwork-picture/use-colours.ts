import { type RefObject, useEffect, useState } from 'react'
import { LAYER_COLOURS, type LayerColour } from '@/lib/artwork-picture'

export type Colours = Readonly<Record<LayerColour, readonly [red: number, green: number, blue: number]>>

/** The colours of layers as the style sheet has them in the theme that is shown, each part from 0 to 1; read again where the theme changes. */
export function useColours(host: RefObject<HTMLElement | null>): Colours | null {
  const [colours, setColours] = useState<Colours | null>(null)
  useEffect(() => {
    const read = () => {
      if (host.current !== null) setColours(readColours(host.current))
    }
    read()
    const scheme = window.matchMedia('(prefers-color-scheme: dark)')
    scheme.addEventListener('change', read)
    const watcher = new MutationObserver(read)
    watcher.observe(document.documentElement, { attributes: true, attributeFilter: ['data-theme'] })
    return () => {
      scheme.removeEventListener('change', read)
      watcher.disconnect()
    }
  }, [host])
  return colours
}

function readColours(host: HTMLElement): Colours {
  const probe = document.createElement('span')
  probe.className = 'layer-swatch'
  host.append(probe)
  const entries = LAYER_COLOURS.map((name) => {
    probe.dataset['colour'] = name
    const [red = 0, green = 0, blue = 0] = (getComputedStyle(probe).backgroundColor.match(/[\d.]+/g) ?? []).map(Number)
    return [name, [red / 255, green / 255, blue / 255] as const]
  })
  probe.remove()
  return Object.fromEntries(entries) as Colours
}
