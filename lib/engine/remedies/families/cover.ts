import type { DielectricLayer } from '../../design'
import { editLayers, leaveOutOfZone, resize } from '../edits'
import { type Candidate, type Family, type PresentLayer, type Subject, writeUm } from '../subject'
import { FILM_STEPS_UM, listFilmSteps, SAME_SHEET_UM } from './film-steps'

/** Adhesives that coverlay is ordinarily sold with, um. Common practice, no published source. */
const ADHESIVE_STEPS_UM = [12.5, 25, 37.5, 50] as const
/** Thinner adhesives than these two steps down hardly ever encapsulate the copper that the present one was chosen for. */
const ADHESIVE_STEPS_DOWN = 2

type Side = 'top' | 'bottom'
const SIDES: readonly Side[] = ['top', 'bottom']

/** Layers between a face of the zone and its first copper, outermost first. */
function listOutsideCopper({ layers, conductors }: Subject, side: Side): readonly PresentLayer[] {
  const ordered = side === 'top' ? layers : layers.toReversed()
  const ids = new Set(conductors.map(({ layer }) => layer.id))
  const firstCopper = ordered.findIndex(({ layer }) => ids.has(layer.id))
  return ordered.slice(0, Math.max(0, firstCopper))
}

function findCoverFilm(outside: readonly PresentLayer[]): DielectricLayer | null {
  for (const { layer } of outside) if (layer.kind === 'coverlay-film') return layer
  return null
}

/** The adhesive of the coverlay film: right inside it. */
function findCoverAdhesive(outside: readonly PresentLayer[]): DielectricLayer | null {
  const at = outside.findIndex(({ layer }) => layer.kind === 'coverlay-film')
  const next = at < 0 ? undefined : outside[at + 1]?.layer
  return next?.kind === 'adhesive' ? next : null
}

function setThickness(subject: Subject, sheet: DielectricLayer, thicknessUm: number) {
  return editLayers(subject.design, (layer) => (layer.id === sheet.id ? resize(sheet, thicknessUm) : layer))
}

/** Thinner or thicker coverlay film, which moves the neutral axis towards or away from a face; on both sides it stays where it is. */
export const coverlayFilm: Family = (subject) => [...coverOneSide(subject), ...coverBothSides(subject)]

function coverBothSides(subject: Subject): Candidate[] {
  const [top, bottom] = SIDES.map((side) => findCoverFilm(listOutsideCopper(subject, side)))
  if (top == null || bottom == null || top.id === bottom.id) return []
  return FILM_STEPS_UM.filter(
    (stepUm) =>
      Math.abs(stepUm - top.thicknessUm) > SAME_SHEET_UM && Math.abs(stepUm - bottom.thicknessUm) > SAME_SHEET_UM,
  )
    .filter((stepUm) => stepUm < Math.max(top.thicknessUm, bottom.thicknessUm))
    .map((stepUm) => ({
      id: `coverlay-film:both-${stepUm}`,
      family: 'coverlay-film',
      title: 'Thinner coverlay film on both sides',
      detail: [top, bottom]
        .map((film) => `${film.name}: ${writeUm(film.thicknessUm)} to ${writeUm(stepUm)}`)
        .join('; '),
      cautions: [],
      forbiddenBy: [],
      edited: editLayers(subject.design, (layer) =>
        layer.id === top.id ? resize(top, stepUm) : layer.id === bottom.id ? resize(bottom, stepUm) : layer,
      ),
      touches: SIDES.map((side) => `coverlay-film-${side}`),
    }))
}

const coverOneSide: Family = (subject) =>
  SIDES.flatMap((side): Candidate[] => {
    const film = findCoverFilm(listOutsideCopper(subject, side))
    if (film === null) return []
    return listFilmSteps(film.thicknessUm).map((stepUm) => ({
      id: `coverlay-film:${side}-${stepUm}`,
      family: 'coverlay-film',
      title: stepUm < film.thicknessUm ? 'Thinner coverlay film' : 'Thicker coverlay film',
      detail: `${film.name} (${side} side): ${writeUm(film.thicknessUm)} to ${writeUm(stepUm)}`,
      cautions: [],
      forbiddenBy: [],
      edited: setThickness(subject, film, stepUm),
      touches: [`coverlay-film-${side}`],
    }))
  })

/** Thinner coverlay adhesive, as far as it still encapsulates the copper. */
export const coverlayAdhesive: Family = (subject) =>
  SIDES.flatMap((side): Candidate[] => {
    const adhesive = findCoverAdhesive(listOutsideCopper(subject, side))
    if (adhesive === null) return []
    return ADHESIVE_STEPS_UM.filter((stepUm) => stepUm < adhesive.thicknessUm - SAME_SHEET_UM)
      .slice(-ADHESIVE_STEPS_DOWN)
      .map((stepUm) => ({
        id: `coverlay-adhesive:${side}-${stepUm}`,
        family: 'coverlay-adhesive',
        title: 'Thinner coverlay adhesive',
        detail: `${adhesive.name} (${side} side): ${writeUm(adhesive.thicknessUm)} to ${writeUm(stepUm)}`,
        cautions: [],
        forbiddenBy: [],
        edited: setThickness(subject, adhesive, stepUm),
        touches: [`coverlay-adhesive-${side}`],
      }))
  })

/** Coverlay left off a face whose copper is gone: the base film covers the conductors there. */
export const coverlayLeftOff: Family = (subject) =>
  SIDES.flatMap((side): Candidate[] => {
    const outside = listOutsideCopper(subject, side)
    const film = findCoverFilm(outside)
    if (film === null || !outside.some(({ layer }) => layer.kind === 'base-film')) return []
    const adhesive = findCoverAdhesive(outside)
    const layerIds = new Set([film.id, ...(adhesive === null ? [] : [adhesive.id])])
    return [
      {
        id: `coverlay-left-off:${side}`,
        family: 'coverlay-left-off',
        title: 'No coverlay on the bare side of the bend',
        detail: `${subject.zone.name}: ${adhesive === null ? film.name : `${film.name} and ${adhesive.name}`} left out (${side} side, no copper there)`,
        cautions: ['Keep the edge of the coverlay out of the bend.'],
        forbiddenBy: [],
        edited: leaveOutOfZone(subject.design, subject.zone.id, layerIds),
        touches: [`coverlay-film-${side}`, `coverlay-adhesive-${side}`],
      },
    ]
  })
