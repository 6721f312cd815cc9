import { readFileSync } from 'node:fs'
import { parseHTML } from 'linkedom'
import { nameConductorLayers, PRINT_PALETTE } from '@/lib/drawing'
import { type Design, type Evaluation, evaluate, parseDesignText } from '@/lib/engine'

export interface DrawnDesign {
  readonly design: Design
  readonly evaluation: Evaluation
}

export function loadDesign(fileName: string): DrawnDesign {
  const parsed = parseDesignText(readFileSync(new URL(`../../../seed/designs/${fileName}`, import.meta.url), 'utf8'))
  if (!parsed.ok) throw new Error(`${fileName}: ${parsed.issues.map((issue) => issue.message).join('; ')}`)
  return { design: parsed.value, evaluation: evaluate(parsed.value) }
}

/** A document for the charting library outside a browser; its type is that of the browser's, of which it has enough. */
export function makeDocument(): Document {
  return parseHTML('<!doctype html><html><body></body></html>').document
}

export function makeOptions(design: Design) {
  return {
    palette: PRINT_PALETTE,
    unit: 'um' as const,
    designations: nameConductorLayers(design.construction),
  }
}
