import type { ItemProse } from '../define-item'

/** Of what order and drawing state beside the geometry, and of what a part meets in service. */
export const TERM_PROSE: Readonly<Record<string, ItemProse>> = {
  'test-terms': {
    why: 'A test without limits proves what the tester happens to be set to. A continuity limit below what the copper has rejects good parts.',
    howToCheck:
      'State test voltage, largest resistance and least isolation. Hold the voltage against the highest working voltage, and the resistance against the longest conductor.',
  },
  'test-access': {
    why: 'A probe that lands on unsupported film dents it or misses, and a mark within a bend is where a crack begins.',
    howToCheck: 'Put the probe points over zones and bends: each on a rigid or stiffened zone, none within a bend.',
  },
  marking: {
    why: 'A part that carries no revision and lot cannot be traced; ink within a bend cracks, and small letters run together.',
    howToCheck:
      'State what is marked on part or packing, in ink, copper or otherwise, on which kind of zone, and how large. Keep ink off lands.',
  },
  'finish-terms': {
    why: 'A finish by name alone leaves its thickness to the shop: contacts wear through, or nickel is thicker than a bend can bear.',
    howToCheck: 'State the specification and the least thickness of each metal. The zone states contacts of their own.',
  },
  'bow-and-twist': {
    why: 'Paste printing and placing need flat areas; a thin board with unequal faces curls.',
    howToCheck: 'State bow and twist for rigid and stiffened areas, measured on the delivered part or array.',
  },
  'via-structure': {
    why: 'Which layers a hole joins decides how often the part is pressed, drilled and plated. Without spans the shop assumes through holes.',
    howToCheck:
      'For each kind of plated hole state first and last layer, and whether it is open, covered, filled or capped.',
  },
  'rework-grade': {
    why: 'Each soldering loosens a land on film. Who replaces parts needs lands that bear it, larger and held down.',
    howToCheck: 'Count first soldering, removals and replacements that the product may see, and state both numbers.',
  },
  'first-article': {
    why: 'What nobody measures on the first lot is found in assembly. A flat measurement says nothing of the folded part.',
    howToCheck: 'Agree how many pieces are measured, by whom, flat and folded, and who cuts sections through holes.',
  },
  'change-control': {
    why: 'A review holds for the material, process and site that it looked at. After a silent change nobody knows what is built.',
    howToCheck: 'For material, process, site and panel agree: after approval, after notice, or at any time.',
  },
  substitutes: {
    why: 'Shops replace what is not on the shelf. Which replacements are harmless, the designer knows and the shop does not.',
    howToCheck:
      'For copper, films, adhesives and boards agree: ask first, any of the same sheet, or any equivalent. Foil that flexes in service is never free.',
  },
  substances: {
    why: 'Whether a part may be sold follows from it, and halogen-free films and adhesives are other materials.',
    howToCheck:
      'Ask the person responsible for compliance: substances kept out, substances declared, halogens. The law in force decides.',
  },
  precedence: {
    why: 'Order, drawing, artwork and standard are written by different people. Where they differ, the shop asks or guesses.',
    howToCheck: 'Agree for each pair which one wins. An agreed deviation goes before the drawing that it changes.',
  },
  'tooling-change': {
    why: 'Prototypes are often cut by laser and the series by a die, whose tolerances are several times wider.',
    howToCheck: 'Hold edge distances, corners and slits against both columns of the fabricator’s matrix.',
  },
  lessons: {
    why: 'A fault that was found on the part before costs most when it is built again.',
    howToCheck: 'Go through findings, queries and returns of the earlier part, and note for each what was done here.',
  },
  'flame-class': {
    why: 'A class belongs to a whole construction of one shop, not to a film. Where a product is sold by such a class, a part without it cannot be used.',
    howToCheck:
      'State the class, or that none is asked for. Ask the fabricator for the record of this very construction: layers, thicknesses, solder limits.',
  },
  outgassing: {
    why: 'In vacuum films and adhesives give off what then settles on optics and contacts.',
    howToCheck:
      'Enter both figures of the very material, as measured for its lot or maker’s record. Water vapour may be corrected for where the contract says so.',
  },
  'skin-contact': {
    why: 'What touches the body for long is evaluated for it, by time and kind of contact. Nickel beneath thin gold may reach the skin.',
    howToCheck:
      'State which face touches, how long in all, and who evaluated film, adhesive, ink and finish. Standards and law in force decide.',
  },
  'moisture-sweat': {
    why: 'Sweat and condensation creep along cut edges and between contacts; salt and voltage grow copper from one to the next.',
    howToCheck: 'Find each edge and contact that gets wet, what seals it, and how far copper stays from the edge.',
  },
  cleanliness: {
    why: 'Residue of soldering leaks current when damp, and cleaning that is not dried is worse than none.',
    howToCheck:
      'Agree a number for ionic residue, the cleaning, and temperature and time of drying, which every film and adhesive must bear.',
  },
  antenna: {
    why: 'Metal near an antenna detunes it, and a fold may bring a plane or stiffener close that the flat drawing shows far away.',
    howToCheck: 'Draw the folded state, measure from antenna to the nearest metal, and ask the antenna designer.',
  },
  'esd-entry': {
    why: 'A discharge takes the first conductor that it reaches; cut edges and contacts are where it enters.',
    howToCheck: 'Name where it can enter and the path to ground that it meets first.',
  },
  'pull-load': {
    why: 'Parts are pulled out of connectors by their film, which tears at the next corner.',
    howToCheck: 'State the force, and the tab or reinforced hole that is pulled.',
  },
  'cold-motion': {
    why: 'Films and adhesives stiffen and lose stretch in the cold. A flex test in a warm room says nothing about it.',
    howToCheck: 'State whether the part moves at its lowest temperature, and how cold flexing was tested.',
  },
  fluids: {
    why: 'Some adhesives swell in oil or alcohol, and some films turn brittle in sunlight.',
    howToCheck: 'List what reaches the part, and ask the makers of film and adhesive for their resistance to it.',
  },
}
