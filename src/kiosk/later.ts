import { qrCode } from '#src/drawings/qr-code.ts'
import { asArrangement } from '#src/kiosk/job/other-arrangement.ts'
import { inOtherUnits } from '#src/kiosk/job/units.ts'
import { fetchDrawing } from './fetch-drawing.ts'
import type { Later } from './second-script.ts'

/* The second script of the page, in the same document behind the first: the first drawing does not wait for it. */

Object.assign(globalThis, { later: { qrCode, asArrangement, inOtherUnits, fetchDrawing } satisfies Later })
