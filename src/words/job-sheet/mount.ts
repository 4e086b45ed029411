import type { ShaftMaterial } from '#shared/bearing/mounting-input.ts'
import type { RingName } from '#shared/bearing/refusal.ts'
import { SPECIES } from '#shared/data/species.ts'
import type { Mounting } from '#shared/making/mounting.ts'
import type { Shut } from '#shared/making/opening.ts'
import type { PlateMounting } from '#shared/making/plate-mounting.ts'
import { mm, type Units } from '#shared/units/length.ts'
import { INDOORS, UNSTATED_WOOD } from '#shared/wood/unstated.ts'
import { boardFigure, figure } from '#src/words/figure.ts'
import {
  boardsSentence,
  driveSentence,
  HELD,
  housingSentence,
  isUpperOpened,
  onShaftSentence,
  openedBy,
  pinSentence,
} from '#src/words/mounting.ts'
import type { Terms } from '#src/words/terms.ts'
import { nameInSentence } from '#src/words/wood-name.ts'
import { gluedShut, screwTools } from './joints.ts'
import type { OperationWords } from './operation.ts'

/* How a bearing that runs comes on its shaft and into its housing. */

/** What the plan of a mounting may leave open. */
export type LeftOpen = 'shaft-hold' | 'shaft-diameter' | 'housing-hold' | 'housing-thickness' | 'wood' | 'year'

interface MountFacts extends Mounting {
  /** Whether a seat takes holes. */
  readonly drills: boolean
  /** The ring whose halves nothing but glue will hold. */
  readonly loose: RingName | undefined
  /** What keeps the bearing shut once all of this is done. */
  readonly shut: Shut | undefined
  readonly usual: readonly LeftOpen[]
  /** What can only be read before it is shut: `the gap and the play`. */
  readonly measured: string
}

/** What is counted with because nobody chose it: another choice changes the seats. */
function countedWith(usual: readonly LeftOpen[], names: Readonly<Record<LeftOpen, string>>): string | undefined {
  if (usual.length === 0) return undefined
  const counted = usual.map((each) => names[each])
  return `the usual is assumed: ${counted.join('; ')}. Where yours differs, cut the seats to yours.`
}

const YEAR_OF_HOUSE = `a heated house, from ${INDOORS.min} to ${INDOORS.max} % relative humidity`
const WOOD_COUNTED = `for a wood that is not chosen, flat-sawn ${nameInSentence(SPECIES[UNSTATED_WOOD].name)}`

export function mount(
  { shaft, housing, drive, drills, loose, shut, usual, measured }: MountFacts,
  units: Units,
  terms: Terms,
): OperationWords {
  const holds = [shaft.hold, housing?.hold]
  const isGlued = holds.includes('glued')
  const held = [`${HELD[shaft.hold]} on the shaft`, ...(housing ? [`${HELD[housing.hold]} in the housing`] : [])]
  const counted = countedWith(usual, {
    'shaft-hold': `${HELD[shaft.hold]} on the shaft`,
    'shaft-diameter': `a ${shaft.material} shaft of ${figure(shaft.shaftDiameter, units)}`,
    'housing-hold': `${housing ? HELD[housing.hold] : ''} in the housing`,
    'housing-thickness': `a board ${figure(housing?.thickness ?? mm(0), units)} thick`,
    wood: WOOD_COUNTED,
    year: YEAR_OF_HOUSE,
  })
  const steps = [
    'Cut seats, keyways and holes with the bearing apart, and brush out the chips.',
    ...(loose === undefined
      ? isGlued
        ? ['Try every seat without glue first.']
        : []
      : [`Try every seat without glue. When all fit and the bearing runs, ${gluedShut(loose, terms)} Then mount it.`]),
    ...(shut === 'by-its-seats'
      ? [`Once the glue is hard, nobody opens it again: wax the ${terms.raceway.many} and measure ${measured} before.`]
      : []),
    `\nShaft: ${onShaftSentence(shaft, units, terms)}`,
    ...(housing ? [`\nHousing: ${housingSentence(housing, units)}`] : []),
    ...(drive ? [`\nTo turn it: ${driveSentence(drive, units)}`] : []),
  ]
  return {
    title: `${loose === undefined ? 'Mount it' : 'Glue it shut and mount it'}, ${held.join(' and ')}`,
    tool: [
      'lathe',
      ...(drills ? ['drill press'] : []),
      `${shaft.material} shaft of ${figure(shaft.shaftDiameter, units)}`,
      ...(housing
        ? [
            `board for the housing: ${figure(housing.thickness, units)} × ${boardFigure(housing.leastWidth, units)} across`,
          ]
        : []),
      'caliper',
      'mallet',
      ...(shaft.holder?.kind === 'pin' || housing?.holder?.kind === 'pin' ? ['fine saw'] : []),
      ...(holds.includes('keyed') ? ['chisel', 'file'] : []),
      ...(holds.includes('screwed') || drive?.kind === 'hub' ? ['screwdriver'] : []),
      ...(loose === undefined ? [] : ['glue']),
      ...(isGlued ? ['epoxy'] : []),
    ].join(', '),
    counted,
    how: steps.join(' ').replaceAll(' \n', '\n'),
    check: `Measure ${housing ? 'the shaft and both seats' : 'the shaft and its seat'} with the caliper in two directions before you put anything together. Once mounted, the bearing turns as freely as before, and no seat moves under your hand.`,
    mistake: {
      looksLike: 'It ran freely before, and is stiff once it is mounted.',
      costs: `A seat squeezes the ring${isGlued ? `, or glue has reached the ${terms.raceway.one}` : ''}: it wears or jams.`,
      remedy: `Take it ${loose === undefined ? 'apart' : 'off'}${isGlued ? ' before the glue sets' : ''}, and ease that seat${loose === undefined ? '' : ': the bearing itself stays shut'}.`,
    },
  }
}

/** What brings a pin to its length. */
const PIN_TOOLS: Readonly<Record<ShaftMaterial, readonly string[]>> = {
  wood: ['fine saw'],
  steel: ['hacksaw', 'vise', 'file'],
  brass: ['hacksaw', 'vise', 'file'],
}
const METAL_PIN = 'Buy the rod cut to length, or saw it in a vise with a hacksaw, and file off the burr.'

/** The same of a turntable between two boards. */
export function mountPlates(
  { pin, boards, screws, usual }: PlateMounting & { readonly usual: readonly LeftOpen[] },
  units: Units,
): OperationWords {
  const noun = pin.hold === 'retained' ? 'bolt' : 'pin'
  const counted = countedWith(usual, {
    'shaft-hold': `the pin ${HELD[pin.hold]}`,
    'shaft-diameter': `a ${pin.material} ${noun} of ${figure(pin.shaftDiameter, units)}`,
    'housing-hold': `the plates ${HELD[boards.hold]} to their boards`,
    'housing-thickness': `boards ${figure(boards.thickness, units)} thick`,
    wood: WOOD_COUNTED,
    year: YEAR_OF_HOUSE,
  })
  const bought = `${pin.material} ${noun} of ${figure(pin.shaftDiameter, units)} × ${figure(pin.length, units)}`
  const isGlued = pin.hold === 'glued' || boards.hold === 'glued'
  const isSawnMetal = pin.material !== 'wood' && pin.hold !== 'retained'
  const onBoards = `Boards: ${boardsSentence(boards, screws, units)}`
  const onPin = `Pin: ${isSawnMetal ? `${METAL_PIN} ` : ''}${pinSentence(pin, units)}`
  return {
    title: `Mount it between two boards, the plates ${boards.hold}`,
    tool: [
      'drill press',
      `two boards to mount on: ${figure(boards.thickness, units)} thick`,
      'caliper',
      ...(isUpperOpened(pin) ? openedBy(pin) : []),
      ...(pin.hold === 'retained'
        ? [`a ${bought} with washers and two nuts`]
        : [`a ${bought}`, ...PIN_TOOLS[pin.material]]),
      ...(screws ? [screwTools(screws, units, 2).replace('drill press, ', '')] : []),
      ...(isGlued ? ['epoxy'] : []),
    ].join(', '),
    counted,
    how: [
      'Drill with the turntable apart, and brush out the chips.',
      // A bolt goes through a board as well; a pin is flush with a back that its board covers.
      ...(pin.hold === 'retained' ? [onBoards, onPin] : [onPin, onBoards]),
      'Lay the balls in, and lower the upper plate with its board over the pin.',
    ].join('\n'),
    check: `${screws ? 'Every screw head lies below the face, and nothing' : 'Nothing'} stands above ${screws ? 'it' : 'the lower face'} but the pin. The turntable turns as freely as before, and the pin touches neither the upper plate nor the board on top.`,
    mistake: {
      looksLike: 'The upper plate scrapes on the pin at one place.',
      costs: 'It runs stiff, and the balls no longer carry it evenly.',
      remedy: 'Open its bore by a little more: the balls hold it in the middle.',
    },
  }
}
