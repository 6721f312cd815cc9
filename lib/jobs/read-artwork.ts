import { createHash } from 'node:crypto'
import { buildCopperStack, drawLayers, gatherFacts, measureOnPlan, readSet, unpackFiles } from '@/lib/artwork'
import { writePicture } from '@/lib/artwork-picture'
import type { JobHooks } from './kind'
import type { ArtworkOrder, ArtworkResult } from './orders'

/** Share of the time that reading takes; working out what copper covers takes most of the rest. */
const READING_FRACTION = 0.2
const COPPER_FRACTION = 0.7
/** Then comes what is measured on the plan; the picture is made last. */
const PLAN_FRACTION = 0.9

/** Reads a set of artwork files, lays it over the plan and draws it. What a person said of a file counts for the bytes that it was said of. */
export function readArtwork({ files: given, roles, ground }: ArtworkOrder, { onProgress }: JobHooks): ArtworkResult {
  const { files, refused } = unpackFiles(given)
  const hashes = new Map(files.map(({ name, bytes }) => [name, createHash('sha256').update(bytes).digest('hex')]))
  const said = new Map(
    roles
      .filter(({ fileName, sha256 }) => hashes.get(fileName) === sha256)
      .map(({ fileName, role, side, layerNumber }) => [fileName, { role, side, layerNumber }]),
  )
  const set = readSet(files, { roles: said, onProgress: (fraction) => onProgress(READING_FRACTION * fraction) })
  const stack = buildCopperStack(set, (fraction) =>
    onProgress(READING_FRACTION + (COPPER_FRACTION - READING_FRACTION) * fraction),
  )
  const facts = gatherFacts({ ...set, refused: [...refused, ...set.refused] }, (name) => hashes.get(name) ?? '', stack)
  const onPlan =
    ground === null
      ? null
      : measureOnPlan(set, stack, ground, (fraction) =>
          onProgress(COPPER_FRACTION + (PLAN_FRACTION - COPPER_FRACTION) * fraction),
        )
  const picture = writePicture(drawLayers(set, stack))
  onProgress(1)
  return { facts, onPlan, picture }
}
