/** Who knows the answer, where "the team" is too wide. Our sorting: common practice, no published source. */
export const ASKED_ROLES = {
  mechanical: 'mechanical engineer',
  layout: 'layout engineer',
  assembler: 'assembler',
  quality: 'quality engineer',
} as const
type AskedRole = keyof typeof ASKED_ROLES

/** By item: whom it is asked of beside the team's designer. */
export const ASKED_OF: Readonly<Record<string, readonly AskedRole[]>> = {
  'bake-before-assembly': ['assembler'],
  'bend-fit': ['mechanical'],
  'bend-use': ['mechanical'],
  'component-support': ['layout', 'assembler'],
  'coupon-test': ['quality'],
  'electrical-test': ['quality'],
  'flex-test-terms': ['mechanical', 'quality'],
  'fold-model': ['mechanical'],
  'fold-test': ['quality'],
  'leaf-length': ['mechanical'],
  'operating-temperature': ['mechanical'],
  packing: ['assembler', 'quality'],
  'panel-form': ['assembler'],
  'performance-class': ['quality'],
  'radius-holder': ['mechanical'],
  'registration-features': ['layout'],
  'stiffener-overlap': ['mechanical', 'layout'],
  'tolerance-scheme': ['mechanical', 'quality'],
  'transition-relief': ['mechanical'],
  'first-article': ['quality'],
  'change-control': ['quality'],
  'flame-class': ['quality'],
  substances: ['quality'],
  lessons: ['quality'],
  'test-terms': ['quality'],
  'test-access': ['layout'],
  'rework-grade': ['assembler'],
  'bow-and-twist': ['assembler'],
  marking: ['layout'],
  outgassing: ['quality'],
  'skin-contact': ['quality'],
  'moisture-sweat': ['mechanical'],
  cleanliness: ['assembler', 'quality'],
  'pull-load': ['mechanical', 'assembler'],
  'cold-motion': ['mechanical', 'quality'],
}

/** In words; empty where the item is anybody's. */
export function listAskedRoles(itemId: string): string[] {
  return (Object.hasOwn(ASKED_OF, itemId) ? (ASKED_OF[itemId] ?? []) : []).map((role) => ASKED_ROLES[role])
}
