'use client'

import { Button } from '@/app/_components/ui/button'
import { saveFile } from '@/app/_components/ui/save-file'
import { type LaidPanel, writePanelCsv, writePanelDxf, writePanelSvg } from '@/lib/drawing'

const FILES = [
  { ending: 'dxf', name: 'DXF', type: 'image/vnd.dxf', write: writePanelDxf },
  { ending: 'svg', name: 'SVG', type: 'image/svg+xml', write: writePanelSvg },
  { ending: 'csv', name: 'CSV', type: 'text/csv;charset=utf-8', write: writePanelCsv },
] as const

/** Where parts lie on one panel, as files. They are written in the browser, of what the page shows. */
export function PanelDownloads({ panel, name }: { panel: LaidPanel; name: string }) {
  if (panel.nesting.placements.length === 0) return null
  return (
    <p className="row">
      {FILES.map(({ ending, name: kind, type, write }) => (
        <Button
          key={ending}
          weight="quiet"
          onPress={() => saveFile(`${toFileName(name)}.${ending}`, write(panel), type)}
          aria-label={`Placements, ${kind}, on ${panel.format.name}`}
        >
          Placements, {kind}
        </Button>
      ))}
    </p>
  )
}

const toFileName = (name: string): string => name.replace(/[^\p{L}\p{N}]+/gu, '-').replace(/^-|-$/g, '')
