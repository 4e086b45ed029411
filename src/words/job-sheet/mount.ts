import type { RingName } from '#shared/bearing/refusal.ts'
import type { Mounting } from '#shared/making/mounting.ts'
import type { PlateMounting } from '#shared/making/plate-mounting.ts'
import type { Units } from '#shared/units/length.ts'
import {
  boardsSentence,
  driveSentence,
  HELD,
  housingSentence,
  onShaftSentence,
  pinSentence,
} from '#src/words/mounting.ts'
import type { Terms } from '#src/words/terms.ts'
import { gluedShut, screwTools } from './joints.ts'
import type { OperationWords } from './operation.ts'

/* How a bearing that runs comes on its shaft and into its housing. */

interface MountFacts extends Mounting {
  /** Whether a seat takes holes. */
  readonly drills: boolean
  /** The ring whose halves nothing but glue will hold. */
  readonly loose: RingName | undefined
}

export function mount(
  { shaft, housing, drive, drills, loose }: MountFacts,
  units: Units,
  terms: Terms,
): OperationWords {
  const holds = [shaft.hold, housing?.hold]
  const isGlued = holds.includes('glued')
  const held = [`${HELD[shaft.hold]} on the shaft`, ...(housing ? [`${HELD[housing.hold]} in the housing`] : [])]
  const steps = [
    'Cut seats, keyways and holes with the bearing apart, and brush out the chips.',
    ...(loose === undefined
      ? []
      : [`Try every seat without glue. When all fit and the bearing runs, ${gluedShut(loose, terms)} Then mount it.`]),
    `Shaft: ${onShaftSentence(shaft, units, terms)}`,
    ...(housing ? [`Housing: ${housingSentence(housing, units)}`] : []),
    ...(drive ? [`To turn it: ${driveSentence(drive, units)}`] : []),
    ...(isGlued && loose === undefined ? ['Try every seat without glue first.'] : []),
  ]
  return {
    title: `${loose === undefined ? 'Mount it' : 'Glue it shut and mount it'}, ${held.join(' and ')}`,
    tool: [
      'lathe',
      ...(drills ? ['drill press'] : []),
      'caliper',
      'mallet',
      ...(holds.includes('keyed') ? ['chisel', 'file'] : []),
      ...(holds.includes('screwed') || drive?.kind === 'hub' ? ['screwdriver'] : []),
      ...(loose === undefined ? [] : ['glue']),
      ...(isGlued ? ['epoxy'] : []),
    ].join(', '),
    how: steps.join(' '),
    check: `Measure ${housing ? 'the shaft and both seats' : 'the shaft and its seat'} with the caliper in two directions before you put anything together. Once mounted, the bearing turns as freely as before, and no seat moves under your hand.`,
    mistake: {
      looksLike: 'It ran freely before, and is stiff once it is mounted.',
      costs: `A seat squeezes the ring${isGlued ? `, or glue has reached the ${terms.raceway.one}` : ''}. Take it ${loose === undefined ? 'apart' : 'off'}${isGlued ? ' before the glue sets' : ''}, and ease that seat${loose === undefined ? '' : ': the bearing itself stays shut'}.`,
    },
  }
}

/** The same of a turntable between two boards. */
export function mountPlates({ pin, boards, screws }: PlateMounting, units: Units): OperationWords {
  const isGlued = pin.hold === 'glued' || boards.hold === 'glued'
  return {
    title: `Mount it between two boards, the plates ${boards.hold}`,
    tool: [
      'drill press',
      'caliper',
      'a bit for the upper bore',
      pin.hold === 'retained' ? 'a bolt with washers and two nuts' : 'a pin',
      ...(screws ? [screwTools(screws, 2).replace('drill press, ', '')] : []),
      ...(isGlued ? ['epoxy'] : []),
    ].join(', '),
    how: `Drill with the turntable apart, and brush out the chips. Boards: ${boardsSentence(boards, screws, units)} Pin: ${pinSentence(pin, units)} Lay the balls in, and lower the upper plate with its board over the pin.`,
    check: `${screws ? 'Every screw head lies below the face, and nothing' : 'Nothing'} stands above ${screws ? 'it' : 'the lower face'} but the pin. The turntable turns as freely as before, and the pin touches neither the upper plate nor the board on top.`,
    mistake: {
      looksLike: 'The upper plate scrapes on the pin at one place.',
      costs:
        'It runs stiff, and the balls no longer carry it evenly. Open its bore by a little more: the balls hold it in the middle.',
    },
  }
}
