import { type Columns, DataRow, DataTable } from '@/app/_components/ui/data-table'
import type { ArtworkFacts, OnPlanFacts, OnPlanHatch } from '@/lib/artwork'
import { asCount, asEntered, asResult, countOf, inSentence } from '@/lib/engine/units'

interface ArtworkOnPlanProps {
  facts: ArtworkFacts
  onPlan: OnPlanFacts | null
  names: PlanNames
}

/** Names by ids; a zone and a bend may have the same id. */
export interface PlanNames {
  readonly zones: ReadonlyMap<string, string>
  readonly bends: ReadonlyMap<string, string>
}

/** What copper and holes do: on each layer, against the nets, and on the plan in each bend. */
export function ArtworkOnPlan({ facts, onPlan, names }: ArtworkOnPlanProps) {
  return (
    <>
      <CopperTable facts={facts} onPlan={onPlan} names={names} />
      <Nets nets={facts.nets} />
      {onPlan !== null && <Placement onPlan={onPlan} />}
      {onPlan !== null && onPlan.bands.length > 0 && <BendTable onPlan={onPlan} names={names} />}
    </>
  )
}

type PlaceMm = readonly [number, number]
const say = ([x, y]: PlaceMm): string => `(${inSentence(x)}, ${inSentence(y)})`
/** A figure with the place where it was found. */
const least = (found: { readonly mm: number; readonly atMm: PlaceMm } | null | undefined): string | null =>
  found == null ? null : `${asEntered(Math.round(found.mm * 1e4) / 1e4)} at ${say(found.atMm)}`

const COPPER_COLUMNS = {
  file: { head: 'Copper', isRowHead: true },
  area: { head: 'Area', unit: 'mm²', isNumeric: true },
  shares: { head: 'Share of each zone' },
  narrowest: { head: 'Narrowest conductor', unit: 'mm' },
  space: { head: 'Least space', unit: 'mm' },
  ring: { head: 'Least land round a plated hole', unit: 'mm' },
  outline: { head: 'Distance to the outline', unit: 'mm' },
  copper: { head: 'Narrowest copper', unit: 'mm' },
  slit: { head: 'Narrowest slit', unit: 'mm' },
} satisfies Columns

function CopperTable({ facts, onPlan, names }: ArtworkOnPlanProps) {
  const layers = facts.files.flatMap(({ name, copper }) => (copper === null ? [] : [{ name, copper }]))
  if (layers.length === 0) return null
  return (
    <>
      <h3>Copper, measured</h3>
      <p className="small muted">
        Places are in the coordinates of the file, those to the outline in the plan’s. Spaces, copper and slits are
        looked for up to 0.25 mm, the outline up to 1 mm; an empty cell means that nothing comes nearer.
      </p>
      <DataTable label="Copper as it was measured" columns={COPPER_COLUMNS}>
        {layers.map(({ name, copper }) => {
          const placed = onPlan?.layers.find(({ fileName }) => fileName === name)
          return (
            <DataRow
              key={name}
              columns={COPPER_COLUMNS}
              cells={{
                file: name,
                area: inSentence(copper.areaMm2),
                shares: (placed?.zones ?? [])
                  .map(
                    ({ zoneId, copperFraction }) =>
                      `${names.zones.get(zoneId) ?? zoneId} ${asResult(copperFraction * 100, 'pct')}`,
                  )
                  .join(', '),
                narrowest: least(copper.narrowest),
                space: least(copper.leastSpace),
                ring: least(copper.leastRing),
                outline: least(placed?.toOutline),
                copper: least(copper.etching?.leastCopper),
                slit: least(copper.etching?.leastSlot),
              }}
            />
          )
        })}
      </DataTable>
    </>
  )
}

function Nets({ nets }: { nets: ArtworkFacts['nets'] }) {
  if (nets === null) return null
  return (
    <>
      <h3>Nets against copper</h3>
      <ul>
        {nets.sources.map(({ fileName, netCount, placeCount, onCopperCount, openCount, shortCount }) => (
          <li key={fileName ?? ''}>
            {fileName ?? 'Nets that the copper layers name'}: {countOf(netCount, 'net')} at{' '}
            {countOf(placeCount, 'place')}, of which {asCount(onCopperCount)} lie on copper;{' '}
            {countOf(openCount, 'open')}, {countOf(shortCount, 'short')}.
          </li>
        ))}
      </ul>
    </>
  )
}

function Placement({ onPlan: { registration, unplacedReason } }: { onPlan: OnPlanFacts }) {
  if (registration === null) {
    return <p>Nothing was measured on the plan: {unplacedReason}. Copper in zones and bends is not known.</p>
  }
  const { isMirrored, turnDeg, shiftMm, farthestMm, farthestAtMm, isUnique } = registration
  return (
    <>
      <h3>On the plan</h3>
      <p>
        The outline of the artwork lies on that of the plan
        {isMirrored ? ', mirrored' : ''}
        {turnDeg === 0 ? '' : `, turned by ${turnDeg}°`}
        {shiftMm[0] === 0 && shiftMm[1] === 0 ? '' : `, shifted by ${say(shiftMm)} mm`}; they are at most{' '}
        {inSentence(farthestMm, 'mm')} apart, at {say(farthestAtMm)}.
        {isUnique ? '' : ' It fits in other positions too, and nothing says which one is meant.'}
      </p>
    </>
  )
}

const BEND_COLUMNS = {
  bend: { head: 'Bend', isRowHead: true },
  layer: { head: 'Copper' },
  share: { head: 'Share', unit: '%', isNumeric: true },
  angle: { head: 'Least angle to the axis', unit: '°' },
  narrowest: { head: 'Narrowest', unit: 'mm' },
  space: { head: 'Least space', unit: 'mm' },
  hatch: { head: 'Hatch' },
  found: { head: 'What does not run straight through' },
} satisfies Columns

function BendTable({ onPlan, names }: Pick<ArtworkOnPlanProps, 'names'> & { onPlan: OnPlanFacts }) {
  return (
    <DataTable label="Copper in the bends" columns={BEND_COLUMNS}>
      {onPlan.bands.flatMap((band) =>
        band.layers.map((layer) => (
          <DataRow
            key={`${band.lineId} ${band.basis} ${layer.fileName}`}
            columns={BEND_COLUMNS}
            cells={{
              bend: names.bends.get(band.bendId) ?? band.bendId,
              layer: layer.fileName,
              share: inSentence(layer.copperFraction * 100),
              angle:
                layer.leastAngle === null
                  ? null
                  : `${inSentence(layer.leastAngle.deg)} at ${say(layer.leastAngle.atMm)}`,
              narrowest:
                layer.narrowest === null ? null : least({ mm: layer.narrowest.widthMm, atMm: layer.narrowest.atMm }),
              space: least(layer.leastSpace),
              hatch: sayHatch(layer.hatch),
              found: listFound(layer, band).join('; ') || 'nothing found',
            }}
          />
        )),
      )}
    </DataTable>
  )
}

/** Bar over pitch, and the angle to the axis. */
function sayHatch(hatch: OnPlanHatch | null): string | null {
  if (hatch === null) return null
  const { barMm, pitchMm, angleDeg, atMm } = hatch
  return `${asEntered(Math.round(barMm * 1e3) / 1e3)} at a pitch of ${inSentence(Math.round(pitchMm * 1e3) / 1e3, 'mm')}, ${inSentence(Math.round(angleDeg * 10) / 10, 'deg')}, at ${say(atMm)}`
}

type Band = OnPlanFacts['bands'][number]

function listFound(layer: Band['layers'][number], { holes }: Band): string[] {
  const counted = (word: string, count: number, atMm: PlaceMm | null, many = `${word}s`): string[] =>
    count === 0 ? [] : [`${countOf(count, word, many)}${atMm === null ? '' : `, first at ${say(atMm)}`}`]
  return [
    ...counted('change of direction', layer.turnCount, layer.largestTurn?.atMm ?? null, 'changes of direction'),
    ...counted('change of width', layer.widthChangeCount, layer.widthChange?.atMm ?? null, 'changes of width'),
    ...counted('end', layer.ends.count, layer.ends.firstAtMm),
    ...counted('junction', layer.junctions.count, layer.junctions.firstAtMm),
    ...counted('pad', layer.pads.count, layer.pads.firstAtMm),
    ...counted('hole', holes.count, holes.firstAtMm),
  ]
}
