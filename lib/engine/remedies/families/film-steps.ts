/** Films that clads and coverlays are ordinarily sold with, um. Common practice, no published source. */
export const FILM_STEPS_UM = [12.5, 25, 50, 75, 125] as const
/** Sheets of the same nominal thickness differ by less than this between makers' lists. */
export const SAME_SHEET_UM = 2
/** Thicker films than the next two stiffen the bend more than they help. */
const FILM_STEPS_UP = 2

/** The thinner films that are sold, and the next thicker ones. */
export function listFilmSteps(thicknessUm: number): readonly number[] {
  const thinner = FILM_STEPS_UM.filter((stepUm) => stepUm < thicknessUm - SAME_SHEET_UM)
  const thicker = FILM_STEPS_UM.filter((stepUm) => stepUm > thicknessUm + SAME_SHEET_UM)
  return [...thinner, ...thicker.slice(0, FILM_STEPS_UP)]
}
