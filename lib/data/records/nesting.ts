import 'server-only'
import { makeNester } from '@/lib/fabrication'

/**
 * Nests parts on panels, and remembers what it nested for as long as the server runs. A write looks up what an evaluation
 * needs in here; new outlines are nested before the transaction opens (`prepareNesting`), since nobody else can write
 * meanwhile. What is forgotten by a restart is nested again, in some tenths of a second for each panel format.
 */
export const nest = makeNester()
