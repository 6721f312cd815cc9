import { CAUTIONS } from '@/lib/engine/cautions'
import { expect, test } from './fixtures'
