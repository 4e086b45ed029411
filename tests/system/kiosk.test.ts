import type { Page } from 'playwright-core'
import { expect } from 'vitest'
import { ARRANGEMENT_NAMES } from '#shared/bearing/arrangements.ts'
import { STAGE_NAMES } from '#src/words/kiosk/page.ts'
import { ask } from '#tests/support/ask.ts'
import { eventually } from '#tests/support/eventually.ts'
import { violations, violationsOfColour } from './axe.ts'
import { boxesOf, colourOf, fontsOf } from './browser.ts'
import { inkOf, leastContrastOnBalls } from './ink.ts'
import { calm, FIRST, kioskAddress, openedJob, PUBLIC_URL, plain, sizeOf, stage, wordsOf } from './kiosk-page.ts'
import { testsThatNeed } from './needed.ts'

const { describe, test } = testsThatNeed('chromium')

describe('the bearing', () => {
  test('of a first visit runs all year in a heated room', async () => {
    const { page } = await openedJob()
    await calm(page)
    // Wider than the 0.88 mm of a place that nobody stated.
    expect(await sizeOf(page, 'ball gap')).toBe('1.60 mm ‡')
    await stage(page, 'Wood and place')
    await page.getByText('Leave it as designed').waitFor()
    await stage(page, 'Bearing')
    await page.getByText('glass', { exact: true }).click()
    await calm(page)
    expect(await wordsOf(page.locator('#bearing-name'))).toBe('12 glass balls of 16 mm, bore 12 mm')
  })

  test('follows the hand', async () => {
    const { page, faults } = await openedJob(FIRST)
    // Twelve balls of 16 mm close at 16 / (2 sin 15°) = 30.910 mm, and the gap is 0.4 mm more than the last ball needs.
    expect(await sizeOf(page, 'ball gap')).toBe('0.88 mm †')
    await page.getByLabel('one ball more').click()
    expect(await page.locator('[name=count]').inputValue()).toBe('13')
    await page.getByText('14 mm', { exact: true }).click()
    expect(await sizeOf(page, 'outer ring, groove depth')).toBe('2.80 mm †')
    expect(await wordsOf(page.locator('#bearing-name'))).toBe('13 wooden balls of 14 mm, bore 12 mm')
    await page.locator('[name=outerRing]').fill('25')
    expect(await sizeOf(page, 'outer ring, groove depth')).toBe('3.50 mm')
    await calm(page)
    expect(await wordsOf(page.locator('#drawing'))).toContain('13 wooden balls, Dw Ø14')
    for (const width of [1080, 1280]) {
      await page.setViewportSize({ width, height: 900 })
      for (const { text, size } of await fontsOf(page)) expect(size, text).toBeGreaterThan(10.9)
    }
    expect(faults).toEqual([])
  })

  test('every symbol at a size of the drawing stands beside its name in the table', async () => {
    for (const kind of ['', '&arrangement=thrust', '&arrangement=roller']) {
      const { page } = await openedJob(`${FIRST}${kind}`)
      await page.locator('#drawing svg').first().waitFor()
      await calm(page)
      const named = await page.locator('#sizes-to-cut tbody td:first-child').allTextContents()
      const drawn = (await page.locator('#drawing svg text').allTextContents()).map(plain)
      const symbols = drawn.flatMap((words) => /^\(?([A-Za-z]{1,3}\d?)(?:\/2)? S?[ØR]?\d/.exec(words)?.[1] ?? [])
      expect(symbols.length).toBeGreaterThan(5)
      // The ball is named where it is drawn.
      for (const symbol of symbols.filter((each) => each !== 'Dw')) expect(named).toContain(symbol)
    }
  })

  test('the notes of the drawing are as wide as all of its views, and folded on a telephone', async () => {
    const { page } = await openedJob(FIRST)
    await page.locator('#drawing li').last().waitFor()
    const widthOf = async (found: string) => (await page.locator(found).last().boundingBox())?.width ?? 0
    expect(await widthOf('#drawing ul')).toBeGreaterThan(0.9 * (await widthOf('#drawing')))
    const { page: small } = await openedJob(FIRST, { viewport: { width: 390, height: 844 } })
    await calm(small)
    expect(await small.locator('#drawing').count()).toBe(0)
    await small.getByText('Drawing and notes').click()
    await small.locator('#drawing').getByText('Wood:').waitFor()
  })

  test('the drawing has the light of the page, and is printed black on white', async () => {
    const { page } = await openedJob(FIRST, { colorScheme: 'dark' })
    await page.locator('#drawing svg').first().waitFor()
    const dark = await inkOf(page, '#drawing svg')
    expect(dark.ink).toBeGreaterThan(dark.paper)
    expect(dark.leastContrast).toBeGreaterThan(7)
    await page.emulateMedia({ colorScheme: 'light' })
    expect((await inkOf(page, '#drawing svg')).ink).toBeLessThan(0.2)
    await page.emulateMedia({ media: 'print', colorScheme: 'dark' })
    expect(await inkOf(page, '#drawing svg')).toEqual({ ink: 0, paper: 1, leastContrast: 21 })
  })

  test('the example is the tide clock of the README, whatever was chosen before', async () => {
    const { page } = await openedJob()
    await page.getByText('inches', { exact: true }).click()
    await page.getByRole('button', { name: 'tide clock of Larkmoor' }).click()
    await calm(page)
    expect(await wordsOf(page.locator('#bearing-name'))).toBe('14 glass balls of 14 mm, bore 10 mm')
    expect(await sizeOf(page, 'outer ring, groove depth')).toBe('2.80 mm †')
  })

  test('inches are what a rule shows; a fraction is read, and a comma for a point', async () => {
    const { page } = await openedJob()
    await page.getByText('inches', { exact: true }).click()
    await page.locator('[name=diameter]').fill('3/4')
    await page.locator('[name=count]').fill('10')
    // A groove 3/16 in deep takes 25 % of a 3/4 in ball (common practice, no source).
    await page.locator('[name=outerRing]').fill('25')
    expect(await sizeOf(page, 'outer ring, groove depth')).toBe('0.1875 in')
    await page.getByLabel('larger bore').click()
    expect(await page.locator('[name=bore]').inputValue()).toMatch(/^(\d+ )?\d+\/16$|^\d+$/)
    await page.locator('[name=bore]').fill('0,5')
    expect(await sizeOf(page, 'inner ring, bore')).toBe('0.5000 in')
  })

  test('what cannot be read, and what cannot be, is said, and nothing of the last bearing is left', async () => {
    const { page } = await openedJob()
    await page.locator('[name=diameter]').fill('1//2')
    expect(await page.locator('.fault', { hasText: 'such as 5/8' }).count()).toBe(1)
    expect(await page.locator('#sizes-to-cut').count()).toBe(0)
    await page.locator('[name=diameter]').fill('16')
    await page.locator('[name=count]').fill('300')
    expect(await page.locator('#sizes-to-cut, #drawing').count()).toBe(0)
    await stage(page, 'Sheets')
    expect(await page.locator('a.go').count()).toBe(0)
    await stage(page, 'Bearing')
    await page.locator('[name=count]').fill('12')
    await page.locator('[name=bore]').fill('60')
    expect(await wordsOf(page.locator('.refusals'))).toContain('cuts into the inner ring')
  })

  test('on a phone a refusal stays in sight, whatever field the hand is at', async () => {
    const { page } = await openedJob(FIRST, { viewport: { width: 390, height: 844 } })
    await page.locator('[name=bore]').fill('60')
    const refusal = page.locator('#bearing-name', { hasText: 'cuts into the inner ring' })
    for (const name of ['units', 'bore', 'innerRing']) {
      await page.locator(`[name=${name}]`).first().evaluate("(field) => field.scrollIntoView({ block: 'center' })")
      expect((await refusal.boundingBox())?.y, name).toBeWithin(844, 0)
    }
  })

  test('what came with a link and no longer applies is refused, and removed with one press', async () => {
    const { page } = await openedJob(`${FIRST}&split=inner-ring&making.screws.gauge=8`)
    await page.getByText('More choices').click()
    await page.locator('[name=split]').selectOption('none')
    await page
      .locator('#bearing-name', {
        hasText: 'Remove “Screws”, or state “Ring that is split”: it does not apply unless a ring is split.',
      })
      .waitFor()
    expect(await page.locator('#sizes-to-cut').count()).toBe(0)
    await page.getByRole('button', { name: 'Remove: Gauge of the screws: 8' }).click()
    await page.locator('#bearing-name', { hasText: '12 wooden balls' }).waitFor()
    expect(page.url()).not.toContain('screws')
  })

  test('what was measured of balls goes when the balls are others', async () => {
    const { page } = await openedJob(`${FIRST}&balls.diameters=${Array.from({ length: 12 }, () => 16.2).join()}`)
    expect(await wordsOf(page.locator('#bearing-name'))).toContain('16.2 mm')
    await page.getByText('20 mm', { exact: true }).click()
    expect(await wordsOf(page.locator('#bearing-name'))).toContain('12 wooden balls of 20 mm')
    expect(page.url()).not.toContain('diameters')
  })

  test('a warning offers the change that clears it', async () => {
    const { page } = await openedJob(`${FIRST}&bore=38`.replace('bore=12&', ''))
    const offered = page.locator('.warnings button').first()
    const before = await page.locator('.warnings li').allTextContents()
    await offered.click()
    expect((await page.locator('.warnings li').allTextContents()).length).toBeLessThan(before.length)
  })

  test('every other value is behind "more", for any kind of bearing', async () => {
    const { page } = await openedJob()
    await page.getByText('More choices').click()
    await page.locator('[name=ballGap]').fill('1.5')
    expect(await sizeOf(page, 'ball gap')).toBe('1.50 mm')
    for (const [kind, size] of [
      ['thrust', 'groove circle'],
      ['roller', 'track'],
      ['caged', 'cage'],
    ] as const) {
      await page.locator('[name=arrangement]').selectOption(kind)
      expect(await wordsOf(page.locator('#sizes-to-cut'))).toContain(size)
    }
  })

  test('another kind keeps name, wood and place, and says in a sentence what is gone', async () => {
    const { page } = await openedJob(`${FIRST}${YEAR}&making.name=Tide+clock&outerRing.grooveDepth=3.5`)
    await page.getByText('More choices').click()
    await page.locator('[name=arrangement]').selectOption('thrust')
    await calm(page)
    expect(await wordsOf(page.locator('#bearing-name'))).toMatch(/^Tide clock: Turntable: 12 wooden balls/)
    await page.getByText('so they are gone: Depth of the outer groove.').waitFor()
    await page.getByRole('button', { name: 'Undo' }).click()
    await calm(page)
    expect(await sizeOf(page, 'outer ring, groove depth')).toBe('3.50 mm')
  })

  test('what counts where a link states nothing is shown as chosen, and every field of a length has its unit', async () => {
    const { page } = await openedJob(FIRST.replace('&balls.material=wood', ''))
    await page.locator('#sizes-to-cut').waitFor()
    expect(await page.locator('[name=material]:checked').inputValue()).toBe('wood')
    await page.getByText('More choices').click()
    for (const [label, field] of [
      ['Other size (mm)', 'diameter'],
      ['Bore (mm)', 'bore'],
      ['Gap to aim for (mm)', 'ballGap'],
    ] as const)
      expect(await page.getByLabel(label, { exact: true }).getAttribute('name')).toBe(field)
  })

  test('a choice that there is not is a fault at its field, and the other steps send to that', async () => {
    const { page } = await openedJob(`${FIRST.replace('wood', 'lead')}&split=both`)
    const faultAt = (field: string) => page.locator(':is(fieldset, .field)', { has: page.locator(`[name=${field}]`) })
    await faultAt('material').getByText('Choose one of: wood, glass').waitFor()
    await page.getByText('More choices').click()
    await faultAt('split').getByText('Choose one of: inner ring').waitFor()
    expect(await page.locator('[name=material]:checked').count()).toBe(0)
    await stage(page, 'Balls on hand')
    await page.getByText('Correct this at “Bearing”: until then').waitFor()
  })

  test('plywood with a wood is a fault at the wood, in words that say where to remove it', async () => {
    const wood = 'making.woods.outerRing.species'
    const { page } = await openedJob(
      `${FIRST}&${wood}=maple-sugar&${wood.replace('species', 'construction')}=cross-laminated-ply&stage=place`,
    )
    const said =
      'Remove “Wood of the outer ring”: it does not apply to plywood. You find it at “Bearing”, under “Also stated by the link”.'
    await page.locator('#bearing-name', { hasText: said }).waitFor()
    expect(await wordsOf(page.locator('.field', { has: page.locator(`[name="${wood}"]`) }))).toContain(said)
    await page.getByRole('button', { name: 'Correct the bearing' }).click()
    await page.getByRole('button', { name: 'Remove: Wood of the outer ring' }).click()
    await page.locator('#bearing-name', { hasText: '12 wooden balls' }).waitFor()
  })

  test('a fault in a field that is out of sight is named at the top of every step', async () => {
    const { page } = await openedJob(`${FIRST}&ballGap=x&stage=lathe`)
    expect(await wordsOf(page.locator('#bearing-name'))).toMatch(/^Gap to aim for: Enter a length/)
  })

  test('units change, and a job that has begun stays what it is', async () => {
    const { page } = await openedJob(`${FIRST}&ballGap=1.5&outer=o13`)
    await page.getByText('inches', { exact: true }).click()
    expect(await sizeOf(page, 'ball gap')).toBe('0.0591 in')
    expect(await wordsOf(page.locator('#bearing-name'))).toBe('12 wooden balls of 0.6299 in, bore 0.4724 in')
    await stage(page, 'At the lathe')
    expect(await wordsOf(page.locator('#read-now'))).toContain('13 mm')
  })
})

/** Enters a reading of a kind; its figure by the keyboard. */
async function read(page: Page, kind: string, value?: string): Promise<void> {
  await page.locator('.reading .pick', { hasText: kind }).click()
  if (value !== undefined) await page.locator('[name=value]').fill(value)
  await page.getByRole('button', { name: 'Enter this reading' }).click()
}

const headline = (page: Page) => wordsOf(page.locator('#advice .headline'))

describe('at the lathe', () => {
  test('a whole ring: measure, cut, read again with all that was read before, until it fits', async () => {
    const { page, faults } = await openedJob(`${FIRST}&stage=lathe`)
    await page.getByText('Measure first').waitFor()
    // The set-block of the job sheet says so, too.
    await page
      .getByText('No groove yet? Cut with the sharp tool until 76.59 mm across the bottoms, then measure.')
      .waitFor()
    await page.getByText('Stop the lathe each time you measure.').waitFor()
    // Balls in a row say nothing of the groove: the blank may be fresh still.
    await page.getByText('A row of balls').click()
    await page.locator('[name=count]').fill('12')
    await page.locator('[name=value]').fill('192')
    await page.getByRole('button', { name: 'Enter this reading' }).click()
    await calm(page)
    expect(await wordsOf(page.locator('#advice'))).toContain('No groove yet?')
    await page.getByRole('button', { name: /^Remove: A row/ }).click()
    await read(page, 'the opening where it should go', '13')
    await calm(page)
    expect(await wordsOf(page.locator('#advice'))).not.toContain('No groove yet?')
    // Of the groove itself nothing was read: a size to stop at would be a guess.
    expect(await headline(page)).toMatch(/^(Cut|Sand) 0\.\d+ mm of depth$/)
    await read(page, 'Across the bottoms', '76.7')
    await calm(page)
    expect(await headline(page)).toMatch(/^(Cut|Sand) until 77\.\d\d mm across the bottoms$/)
    const asked = page.waitForRequest((request) => request.url().endsWith('/v1/fit-correction'))
    await page.locator('#cut-done').click()
    expect((await asked).postDataJSON()).toMatchObject({
      ring: 'outer',
      readings: [],
      earlier: [
        {
          readings: [
            { kind: 'last-ball-opening', value: 13, ballsLeftOut: 1 },
            { kind: 'groove-bottom-diameter', value: 76.7 },
          ],
          thenRemoved: {},
        },
      ],
    })
    await read(page, 'All balls are in', '1')
    await page.getByText('It fits: stop here').waitFor()
    expect(await page.locator('#read-before li').count()).toBe(1)
    // All of it is in the address: a reload loses nothing.
    await page.reload()
    await page.getByText('It fits: stop here').waitFor()
    expect(await wordsOf(page.locator('#read-before li'))).toMatch(
      /: 13 mm; .*: 76.7 mm; then took off 0\.\d+ mm of depth with the/,
    )
    expect(faults).toEqual([])
  })

  test('the form opens at the reading that the large line asks for, and no answer changes it under a hand', async () => {
    const { page } = await openedJob(`${FIRST}&stage=lathe&ring=inner&outer=r`)
    await calm(page)
    const kind = () => page.locator('[name=kind]:checked').inputValue()
    expect(await wordsOf(page.locator('#advice .summary'))).toMatch(/Measure the groove .* with a caliper/)
    expect(await kind()).toBe('groove-bottom-diameter')
    await page.getByText('outer ring', { exact: true }).click()
    await calm(page)
    expect(await wordsOf(page.locator('#advice .summary'))).toContain('Leave out one ball')
    expect(await kind()).toBe('last-ball-opening')
    // Where nothing is asked for any more, at the one that was read last.
    await read(page, 'All balls are in', '1')
    await calm(page)
    expect(await headline(page)).toBe('It fits: stop here')
    expect(await kind()).toBe('ball-gap')
    await page.getByText('A row of balls').click()
    await page.locator('[name=value]').fill('192')
    await page.getByText('other balls that you have').click()
    await page.locator('[name=onHand]').fill('16.5 x 12')
    await calm(page)
    expect(await kind()).toBe('ball-row')
  })

  test.each([
    { width: 1280, height: 800 },
    { width: 1080, height: 1920 },
  ])('the large line, the figure and its keys are on one screen of $width × $height', async (viewport) => {
    const { page } = await openedJob(`${FIRST}&stage=lathe&outer=o13`, { viewport })
    await calm(page)
    for (const shown of ['#advice .headline', '[name=value]', '.keypad', '.entry .go']) {
      const box = await page.locator(shown).boundingBox()
      expect(box?.y, shown).toBeGreaterThan(0)
      expect((box?.y ?? 0) + (box?.height ?? Number.NaN), shown).toBeLessThanOrEqual(viewport.height)
    }
  })

  test('on a phone the figure and its keys come right after the advice', async () => {
    const viewport = { width: 390, height: 844 }
    const { page } = await openedJob(`${FIRST}&stage=lathe&ring=inner&outer=g1`, { viewport })
    await calm(page)
    const [line, keys] = [await page.locator('.headline').boundingBox(), await page.locator('.keypad').boundingBox()]
    expect((keys?.y ?? Number.NaN) + (keys?.height ?? 0) - (line?.y ?? 0)).toBeLessThan(viewport.height)
  })

  test('no line ends between a figure and its unit', async () => {
    const { page } = await openedJob('v=1&units=in&balls.count=10&balls.diameter=5/8&bore=1/2&stage=lathe&outer=o1/2')
    await calm(page)
    const texts = [
      await page.locator('#advice .headline').textContent(),
      await page.locator('#advice .summary').textContent(),
    ]
    for (const text of texts) expect(text).toMatch(/\d\u00a0in (of depth|more)/)
    // What the form begins with is what the large line says.
    expect(texts[0]).toContain(` ${await page.locator('[name=radial]').inputValue()}\u00a0in of depth`)
  })

  test('an outer ring that fits leads to the inner ring, and that to the last steps', async () => {
    const { page } = await openedJob(`${FIRST}&stage=lathe&outer=g1,g1&inner=y0.3,y0.3`)
    await page.getByRole('button', { name: 'Next: the inner ring' }).click()
    await page.locator('#advice', { hasText: 'inner ring' }).waitFor()
    expect(page.url()).toContain('ring=inner')
    await page.locator('#fitted').click()
    expect(page.url()).toContain('stage=assembly')
  })

  test('of a bearing that cannot be made the first thing to do is to correct it', async () => {
    const { page } = await openedJob(`${FIRST.replace('bore=12', 'bore=60')}&stage=lathe`)
    expect(await page.locator('main .go').allTextContents()).toEqual(['Correct the bearing'])
    await page.locator('main .go').click()
    expect(await page.locator('[name=bore]').count()).toBe(1)
    expect(await page.locator('.steps .go').count()).toBe(0)
  })

  test('readings have the numbers of their blanks on the job sheet', async () => {
    const { at, page } = await openedJob(`${FIRST}&stage=lathe&ring=inner`)
    await calm(page)
    const query = 'units=mm&balls.count=12&balls.diameter=16&balls.material=wood&bore=12'
    const { operations } = JSON.parse((await ask(`${at}/v1/job-sheet?${query}`)).text)
    const blanks = operations.flatMap(({ readings }: { readings: object[] }) => readings)
    const play = blanks.filter(({ kind, ring }: Record<string, unknown>) => kind === 'radial-play' && ring === 'inner')
    const label = (await wordsOf(page.locator('.pick', { hasText: 'Play of the inner ring' }))) ?? ''
    expect(play.length).toBeGreaterThan(1)
    expect([...label.matchAll(/\((\d+)\)/g)].map(([, number]) => Number(number))).toEqual(
      play.map(({ number }: { number: number }) => number),
    )
  })

  test('an inner ring waits for its outer one, and is cut once something of that is entered', async () => {
    const { page } = await openedJob(`${FIRST}&stage=lathe&ring=inner&inner=y0.1`)
    await page.locator('#advice .headline').waitFor()
    expect(await headline(page)).toBe('First the outer ring')
    expect(await wordsOf(page.locator('#advice'))).not.toMatch(/sand|cut until/i)
    await page.getByRole('button', { name: 'To the outer ring' }).click()
    expect(await page.locator('[name=ring]:checked').inputValue()).toBe('outer')
    await page.goto('about:blank')
    const { page: known } = await openedJob(`${FIRST}&stage=lathe&ring=inner&outer=g1&inner=y0.1`)
    await known.locator('#advice .headline').waitFor()
    expect(await headline(known)).toMatch(/^(Sand|Cut) 0\.\d+ mm of depth$/)
  })

  test('an inner ring is not cut to the design while its outer one is too deep, until its play is read', async () => {
    for (const inner of ['', '&inner=d48']) {
      const { page } = await openedJob(`${FIRST}&stage=lathe&ring=inner&outer=g4.2${inner}`)
      await page.getByText('is too deep, so the design').waitFor()
      expect(await headline(page)).toBe('First the outer ring')
      expect(await wordsOf(page.locator('#advice'))).not.toMatch(/sand|cut until/i)
      expect(await page.locator('#cut-done').isVisible()).toBe(false)
    }
    const { page: known } = await openedJob(`${FIRST}&stage=lathe&ring=inner&outer=g4.2&inner=y0.1`)
    await known.locator('#advice .headline').waitFor()
    await calm(known)
    expect(await headline(known)).not.toBe('First the outer ring')
  })

  test('readings that do not agree are to be checked: no size to cut to and no certainty stand there', async () => {
    const { page } = await openedJob(`${FIRST}&stage=lathe&outer=o13,g0.5,d76.9`)
    await page.locator('#advice .headline').waitFor()
    expect(await headline(page)).toBe('Check the readings')
    expect(await wordsOf(page.locator('#advice .summary'))).toMatch(/^Do not cut\. Check the readings/)
    expect(await page.locator('#advice .risk').count()).toBe(0)
  })

  test('a lone reading is held against the plan, and the form opens at what it was more likely', async () => {
    const { page } = await openedJob(`${FIRST}&stage=lathe&outer=o19`)
    await calm(page)
    expect(await headline(page)).toBe('Check the reading')
    expect(await wordsOf(page.locator('#advice'))).toMatch(/does not fit the plan of this bearing/)
    expect(await page.locator('[name=kind]:checked').inputValue()).toBe('ball-gap')
    const { page: wide } = await openedJob(`${FIRST}&stage=lathe&outer=g15.5`)
    await calm(wide)
    // One ball may be out still: the ring is not called lost.
    expect(await headline(wide)).toBe('Check the reading')
    expect(await wide.locator('.rescue').count()).toBe(0)
    expect(await wide.locator('[name=kind]:checked').inputValue()).toBe('last-ball-opening')
  })

  test.each([
    ['nothing read', ''],
    ['in band', '&outer=o12~s0.6;g1.6'],
    ['too deep', '&outer=g8'],
    ['readings that do not fit', '&outer=o19'],
    ['the outer ring first', '&ring=inner&inner=y0.1'],
  ])('where no cut is advised none is offered loudly: %s', async (_, readings) => {
    const { page } = await openedJob(`${FIRST}&stage=lathe${readings}`)
    await calm(page)
    expect(await page.locator('#cut-done').isVisible()).toBe(false)
    expect(await page.locator('#cut-done.go').count()).toBe(0)
    await page.getByText('More: a cut that you made, or sanding').click()
    expect(await page.locator('#cut-done').isVisible()).toBe(true)
    // What was used last, or what a groove begins with.
    expect(await page.locator('[name=tool]:checked').inputValue()).toBe('sharp-tool')
  })

  test('of a groove of which only a word is known, nothing is said that would be a guess', async () => {
    const { page } = await openedJob(`${FIRST}&stage=lathe&outer=r`)
    await calm(page)
    expect(await headline(page)).toBe('Measure first')
    expect(await wordsOf(page.locator('.lathe'))).not.toContain('The gap is now about')
  })

  test('balls on hand are told to the service, and what cannot be read is said', async () => {
    const { page } = await openedJob(`${FIRST}&stage=lathe&outer=g8`)
    await page.getByText('other balls that you have').click()
    const asked = page.waitForRequest((request) => (request.postData() ?? '').includes('ballsOnHand'))
    await page.locator('[name=onHand]').fill('16,5 x 12; 17 mm × 20; many')
    expect((await asked).postDataJSON().ballsOnHand).toEqual([
      { diameter: 16.5, quantity: 12 },
      { diameter: 17, quantity: 20 },
    ])
    expect(await page.getByText('“many” is no size').count()).toBe(1)
  })

  test('too deep: the ways out that are possible, in order', async () => {
    const { page } = await openedJob(`${FIRST}&stage=lathe&outer=g8`)
    await page.getByText('Too deep: stop').waitFor()
    expect(await page.locator('.rescue li').count()).toBeGreaterThan(3)
    expect(await page.locator('.rescue p').count()).toBe(0)
  })

  test('too deep: of the balls that the maker has, why they do not serve', async () => {
    const { page } = await openedJob(`${FIRST}&stage=lathe&outer=g8&onHand=12x17`)
    const why = page.locator('.rescue p')
    await why.waitFor()
    expect(await wordsOf(why)).toMatch(/^None of the other balls that you have make a full set: those of 12 mm would/)
  })

  test('an outer ring whose balls a cage keeps apart is cut to its size', async () => {
    const { page } = await openedJob(`${FIRST}&arrangement=caged&stage=lathe`)
    expect(await headline(page)).toMatch(/^Cut until [\d.]+ mm across the bottoms$/)
    expect(await page.locator('.reading, #cut-done, .refusals').count()).toBe(0)
    await page.getByRole('button', { name: 'Next: the inner ring' }).click()
    expect(await page.locator('[name=ring]:checked').inputValue()).toBe('inner')
    // There the plug that the outer ring came to is entered.
    await page.locator('.pick', { hasText: 'A plug inside the seated balls' }).waitFor()
  })

  test('a split inner ring that may be too deep: what its mating faces can do stands there, once its play was read', async () => {
    const { page } = await openedJob(`${FIRST}&radialInternalClearance=0.7&stage=lathe&ring=inner&outer=g1&inner=y1.4`)
    await calm(page)
    expect(await wordsOf(page.locator('#advice .summary'))).toMatch(/^Do not cut any more: .* in another direction/)
    expect(await wordsOf(page.locator('#advice'))).toMatch(/If it is too deep: sand [\d.]+ mm off the mating faces/)
    await page.goto('about:blank')
    const { page: fits } = await openedJob(
      `${FIRST}&radialInternalClearance=0.7&stage=lathe&ring=inner&outer=g1&inner=y0.8`,
    )
    await calm(fits)
    expect(await wordsOf(fits.locator('#advice'))).not.toContain('mating faces')
  })

  test.each([
    { arrangement: 'caged', told: /^The cage comes once both rings fit/, first: 'Make the two rings of the cage' },
    { arrangement: 'roller', told: /^The two cheeks come once both tracks fit/, first: /^Make the two cheeks/ },
    { arrangement: 'thrust', told: /cut to a depth of [\d.]+ mm/, first: 'Cut the groove to its depth' },
  ])(
    '$arrangement: what is made besides is told, its sizes are a tap away, and the next step begins with it',
    async (each) => {
      const { page } = await openedJob(`${FIRST}&arrangement=${each.arrangement}&stage=lathe`)
      await calm(page)
      expect(await wordsOf(page.locator('#besides'))).toMatch(each.told)
      await page.locator('#besides button').click()
      expect(page.url()).toContain('stage=sheets')
      await page
        .getByRole('button', { name: /Put together/ })
        .first()
        .click()
      await page.locator('.operations h3').first().waitFor()
      expect(await wordsOf(page.locator('.operations h3').first())).toMatch(each.first)
    },
  )

  test('the inner ring has readings of its own, and knows what the outer ring said of the balls', async () => {
    const { page } = await openedJob(`${FIRST}&stage=lathe&outer=g1`)
    await page.getByText('inner ring', { exact: true }).click()
    const asked = page.waitForRequest((request) => (request.postData() ?? '').includes('radial-play'))
    await read(page, 'Play of the inner ring', '0,1')
    expect((await asked).postDataJSON()).toMatchObject({
      ring: 'inner',
      readings: [
        { kind: 'ball-gap', value: 1 },
        { kind: 'radial-play', value: 0.1 },
      ],
    })
    await calm(page)
    expect(await headline(page)).toMatch(/mm of depth$/)
  })

  test('figures by large keys; a plug, a row and a depth have their second figure', async () => {
    const { page } = await openedJob('v=1&units=in&balls.count=10&balls.diameter=5/8&bore=1/2&stage=lathe')
    for (const key of ['3', '/', '8']) await page.getByRole('button', { name: key, exact: true }).click()
    expect(await page.locator('[name=value]').inputValue()).toBe('3/8')
    await page.getByRole('button', { name: 'delete the last sign' }).click()
    expect(await page.locator('[name=value]').inputValue()).toBe('3/')
    await page.getByText('A row of balls').click()
    await page.locator('[name=value]').fill('6 1/4')
    await page.locator('[name=count]').fill('10')
    await page.getByRole('button', { name: 'Enter this reading' }).click()
    await page.getByText('A plug inside').click()
    await page.locator('[name=value]').fill('1 3/8')
    await page.getByText('is snug').click()
    await page.getByRole('button', { name: 'Enter this reading' }).click()
    expect((await page.locator('#read-now li').allTextContents()).map(plain)).toEqual([
      expect.stringContaining('6 1/4 in, 10 balls'),
      expect.stringContaining('1 3/8 in, is snug'),
    ])
    expect(new URL(page.url()).hash).toContain('outer=w6+1/4*10,p1+3/8*snug')
  })

  test('with millimetres the keys are those of a decimal, all of one size', async () => {
    const { page } = await openedJob(`${FIRST}&stage=lathe`)
    const keys = page.locator('.keypad button')
    await keys.first().waitFor()
    expect((await keys.allTextContents()).join(' ')).toBe('7 8 9 4 5 6 1 2 3 . 0 ⌫')
    const sizes = (await boxesOf(keys)).map(({ width, height }) => `${Math.round(width)} ${Math.round(height)}`)
    expect(new Set(sizes).size).toBe(1)
    for (const key of ['1', '2', '.', '5']) await page.getByRole('button', { name: key, exact: true }).click()
    await page.getByRole('button', { name: 'delete the last sign' }).click()
    expect(await page.locator('[name=value]').inputValue()).toBe('12.')
  })

  test('a figure that cannot be read is said, and nothing is advised for it', async () => {
    const { page } = await openedJob(`${FIRST}&stage=lathe`)
    await read(page, 'All balls are in', 'x')
    expect(await wordsOf(page.locator('.reading .fault').first())).toContain('Enter a length')
    await read(page, 'All balls are in', '900')
    await page.locator('#advice .refusals').waitFor()
    expect(await headline(page)).toBe('Check the reading')
    expect(await wordsOf(page.locator('#advice'))).toContain('Do not cut.')
  })
})

/** Of the tide clock's makers, who are made up. */
const WOODS =
  '&making.woods.outerRing.species=maple-sugar&making.woods.innerRing.species=maple-sugar&making.woods.balls.species=birch-paper' +
  '&making.climate.today.relativeHumidity=50'
const MONTHS = `${WOODS}&making.climate.months=38,38,42,45,50,58,60/24,62/24,56,50,44,40`
const YEAR = `${WOODS}&making.climate.relativeHumidity.min=40&making.climate.relativeHumidity.max=55`
const LOT = '16,16.1,15.9,16,16.05,15.95,16,16,16.1,15.9,16,16,16.2,15.8'

describe('a whole job', () => {
  test('from the balls to the last word, with a ring that went too deep on the way', async () => {
    const { page, faults } = await openedJob(FIRST)
    await stage(page, 'Balls on hand')
    await page.locator('[name=lot]').fill(LOT.replaceAll(',', '\n'))
    await page.getByRole('button', { name: 'Design for these balls' }).click()
    await stage(page, 'Will it run?')
    await page
      .getByText(/A ball gap from [\d.]+\smm to [\d.]+\smm is good/)
      .first()
      .waitFor()
    await stage(page, 'Sheets')
    expect(await page.locator('.sheet a.go').count()).toBe(12)
    await stage(page, 'At the lathe')
    await page.getByText('Measure first').waitFor()
    await read(page, 'the opening where it should go', '13')
    await calm(page)
    expect(await headline(page)).toMatch(/^(Cut|Sand) until/)
    await page.locator('#cut-done').click()
    // The tool went too far.
    await read(page, 'All balls are in', '3.5')
    await page.getByText('Too deep: stop').waitFor()
    expect(await wordsOf(page.locator('.rescue li').first())).not.toBe('')
    // Another ring: nothing that was said of the spoilt one is left.
    await page.getByRole('button', { name: 'Start this ring again' }).click()
    await page.getByText('Measure first').waitFor()
    expect(await page.locator('.rescue, #read-before, #read-now li').count()).toBe(0)
    await read(page, 'the opening where it should go', '13')
    await calm(page)
    await page.locator('#cut-done').click()
    await read(page, 'All balls are in', '1')
    await page.getByText('It fits: stop here').waitFor()
    await page.getByText('inner ring', { exact: true }).click()
    await page.locator('#advice .headline').waitFor()
    // The play that the design asks for is 0.4 mm.
    for (const play of ['0.4', '0.45', '0.4']) await read(page, 'Play of the inner ring', play)
    await page.getByText('It fits: stop here').waitFor()
    await stage(page, 'Put together')
    await page.getByText('run it in by hand').waitFor()
    await stage(page, 'Care')
    await page.getByRole('heading', { name: 'Look after it' }).waitFor()
    expect(faults).toEqual([])
  })
})

/** Whether two balls of the picture cover each other. */
const overlapping = (page: Page): Promise<boolean> =>
  page.locator('.front svg .ball').evaluateAll((balls) => {
    const rings = balls.map((ball) =>
      ['cx', 'cy', 'r'].map((name) => Number((ball as unknown as Attributes).getAttribute(name))),
    )
    return rings.some(([x = 0, y = 0, r = 0], index) =>
      rings.some(([u = 0, v = 0, s = 0], other) => other > index && Math.hypot(x - u, y - v) < r + s),
    )
  })
type Attributes = { getAttribute(name: string): string | null }

describe('before the lathe', () => {
  test('wood and place: what the year does, and its advice taken with one press', async () => {
    const { page, faults } = await openedJob(`${FIRST}${YEAR}&radialInternalClearance=0.05&stage=place`)
    await page.locator('#take-advice').waitFor()
    expect(await page.locator('[name="making.woods.outerRing.species"]').inputValue()).toBe('maple-sugar')
    // What is left open is counted as something, and the page says as what.
    const counted = page.locator('[name="making.woods.outerRing.construction"] option').first()
    await eventually(async () => expect(await wordsOf(counted)).toMatch(/^usual: .* board$/))
    expect(await wordsOf(page.locator('.summary'))).toMatch(/of 100/)
    expect(await wordsOf(page.locator('main'))).not.toContain('`')
    await page.locator('#take-advice').click()
    await calm(page)
    const runs = (await page.locator('.strip svg').getAttribute('aria-label')) ?? ''
    expect(runs).toMatch(/^today: [\d.]+ % run then, driest: [\d.]+ % run then, dampest: [\d.]+ % run then$/)
    // The sizes of the first stage are those that the year asks for.
    await stage(page, 'Bearing')
    await calm(page)
    expect(await page.locator('#sizes-to-cut').count()).toBe(1)
    expect(faults).toEqual([])
  })

  test('wood and place: boards that the year needs are not called usual, and stand beside what counts on them', async () => {
    const { page } = await openedJob(
      `${FIRST}${WOODS}&making.climate.relativeHumidity.min=35&making.climate.relativeHumidity.max=60&stage=place`,
    )
    const counted = page.locator('[name="making.woods.outerRing.construction"]')
    await page.getByText('This counts on quarter-sawn boards for the outer ring and the inner ring').waitFor()
    expect(await wordsOf(counted.locator('option').first())).toBe('counted on: quarter-sawn board, as the year needs')
    expect(await page.locator('.result p', { hasText: 'cut exactly to size' }).locator('small').count()).toBe(0)
  })

  test('wood and place: plywood takes no wood, and what cannot be read is said where the year would be', async () => {
    const { page } = await openedJob(`${FIRST}${YEAR}&stage=place`)
    await page.locator('.strip svg').waitFor()
    await page.locator('[name="making.woods.outerRing.construction"]').selectOption('cross-laminated-ply')
    await calm(page)
    expect(await page.locator('[name="making.woods.outerRing.species"]').inputValue()).toBe('')
    expect(await page.locator('.refusals').count()).toBe(0)
    await page.locator('.strip svg').waitFor()
    await page.locator('[name="making.climate.relativeHumidity.min"]').fill('x')
    await page.getByText('Correct the field marked in red').waitFor()
    expect(await page.getByText('fill in the three humidities').count()).toBe(0)
  })

  test('the year month by month: a strip of twelve, asked for once all are there; sheets still open', async () => {
    const { at, page } = await openedJob(`${FIRST}${WOODS}&stage=place`)
    await page.getByText('month by month').click()
    for (let month = 1; month <= 12; month += 1) {
      expect(await page.locator('.strip').count()).toBe(0)
      await page.locator(`[name=humidity-${month}]`).fill(String(38 + month))
    }
    await page.locator('[name=temperature-7]').fill('24,5')
    await page.locator('.strip svg').waitFor()
    await calm(page)
    expect(await page.locator('.strip svg text').allTextContents()).toEqual([...'JFMAMJJASOND'])
    await stage(page, 'Sheets')
    const link = page.locator('.sheet a.go').first()
    await link.waitFor()
    expect((await ask(at + ((await link.getAttribute('href')) ?? ''))).status).toBe(200)
  })

  test('a bearing for some balls and a place: the best, and a table of all, each to be taken', async () => {
    const { page, faults } = await openedJob(FIRST)
    await page.getByText('find a bearing that').click()
    await page.locator('[name=findSizes]').fill('14; 16')
    await page.locator('[name=findCounts]').fill('10; 12; 14')
    await page.locator('[name=findOutside]').fill('110')
    await page.locator('.found li').first().waitFor()
    expect(await page.locator('#size-table tbody tr').count()).toBe(6)
    const best = (await wordsOf(page.locator('.found li').first())) ?? ''
    const [, count, size] = /^(\d+) balls of (\d+) mm/.exec(best) ?? []
    await page.locator('.found button').first().click()
    expect(await wordsOf(page.locator('#bearing-name'))).toBe(`${count} wooden balls of ${size} mm, bore 12 mm`)
    await page.getByText('Read as: 14 mm; 16 mm.').waitFor()
    await page.getByText('Read as: 10; 12; 14.').waitFor()
    await page.locator('#size-table').getByLabel('Take this bearing: 14 of 14 mm').click()
    expect(await wordsOf(page.locator('#bearing-name'))).toBe('14 wooden balls of 14 mm, bore 12 mm')
    await page.locator('[name=findCounts]').fill('8 to 11')
    await page.getByText('Read as: 8 to 11.').waitFor()
    await calm(page)
    expect(await page.locator('#size-table tbody tr').count()).toBe(8)
    await page.locator('[name=findSizes]').fill('14; x')
    await page.getByText('Enter sizes as a list such as 14; 16; 20').waitFor()
    expect(await page.locator('.found, #size-table').count()).toBe(0)
    expect(faults).toEqual([])
  })

  test('whoever takes a bearing that was found gets the figures that stand beside it, with the wood and the place', async () => {
    const sought = '&findSizes=14;16,5&findCounts=9,12&findOutside=130&outerRing.wall=13&ballGap=1.3'
    for (const kind of ['', '&arrangement=thrust', YEAR]) {
      const { page, faults } = await openedJob(
        `${FIRST}${kind}${kind === '&arrangement=thrust' ? '&findSizes=14;16&findCounts=9,12&findOutside=160' : sought}`,
      )
      await page.locator('.found li').first().waitFor()
      await calm(page)
      const outside = /Outside diameter|outside diameter/
      const shown = () => wordsOf(page.locator('#sizes-to-cut tr', { hasText: outside }).first().locator('td').nth(2))
      const rows = await page
        .locator('#size-table tbody tr')
        .evaluateAll((all) =>
          all.map((row) =>
            Array.from(
              (row as unknown as { children: Iterable<{ textContent: string }> }).children,
              ({ textContent }) => textContent,
            ),
          ),
        )
      expect(rows).toHaveLength(4)
      for (const [name = '', , wide = ''] of rows) {
        await page.locator('#size-table').getByLabel(`: ${name}`).click()
        await calm(page)
        expect(Number.parseFloat((await shown()) ?? ''), `${kind} ${name}`).toBeCloseTo(Number.parseFloat(wide), 2)
      }
      const best = await wordsOf(page.locator('.found li').first())
      await page.locator('.found button').first().click()
      await calm(page)
      expect(best).toContain(`, ${Number.parseFloat((await shown()) ?? '')} mm outside`)
      expect(/run all year at your place/.test(best)).toBe(kind === YEAR)
      expect(faults).toEqual([])
    }
  })

  test('balls on hand: which, in what order, and the bearing for them', async () => {
    const { page } = await openedJob(`${FIRST}&stage=balls`)
    await page.getByText('0 of 12 balls measured').waitFor()
    await page.locator('[name=lot]').fill(`${LOT.replaceAll(',', '\n').replaceAll('.', ',')}\nx`)
    await page.getByText('Ball 15 of your list, “x”, is no length.').waitFor()
    await page.locator('[name=lot]').fill(LOT.replaceAll(',', '\n').replaceAll('.', ','))
    await page.locator('.front svg').waitFor()
    expect(await page.locator('.front svg text').allTextContents()).toHaveLength(12)
    const balls = await boxesOf(page.locator('.front svg circle'))
    expect(Math.max(...balls.map(({ width }) => width))).toBeGreaterThan(Math.min(...balls.map(({ width }) => width)))
    expect(await overlapping(page)).toBe(false)
    for (const colorScheme of ['dark', 'light'] as const) {
      await page.emulateMedia({ colorScheme })
      expect(await leastContrastOnBalls(page)).toBeGreaterThan(7)
    }
    await page.getByRole('button', { name: 'Design for these balls' }).click()
    expect(new URL(page.url()).hash).toMatch(/balls\.diameters=(1[56][\d.]*,){11}1[56]/)
    await page.reload()
    expect((await page.locator('[name=lot]').inputValue()).split('\n')).toHaveLength(14)
  })

  test('balls on hand: what the year decided stays with the balls, and what changes is said before', async () => {
    const { page } = await openedJob()
    const sizes = ['ball gap', 'play, side to side'] as const
    await calm(page)
    // A value that is stated has no sign of where it comes from.
    const sizeAlone = async (size: string) => (await sizeOf(page, size)).replace(/ [†‡]$/, '')
    const before = await Promise.all(sizes.map(sizeAlone))
    const groove = 'outer ring, groove bottom diameter'
    const was = await sizeAlone(groove)
    await stage(page, 'Balls on hand')
    // Far more alike than balls that nobody measured: the year alone would decide otherwise for them.
    await page.locator('[name=lot]').fill('16.3\n16.28\n16.32\n16.3\n16.31\n16.29\n16.3\n16.3\n16.3\n16.3\n16.3\n16.3')
    const promised = page.getByText('Press it only before you cut the rings')
    await promised.waitFor()
    const words = await wordsOf(promised)
    await page.getByRole('button', { name: 'Design for these balls' }).click()
    await stage(page, 'Bearing')
    await calm(page)
    expect(await Promise.all(sizes.map(sizeAlone))).toEqual(before)
    const is = await sizeAlone(groove)
    expect(is).not.toBe(was)
    expect(words).toContain(`${groove} from ${was} to ${is}`)
    expect(new URL(page.url()).hash).toContain('making.woods.outerRing.construction=quarter-sawn')
  })

  test('will it run: the spread with its band, and a load', async () => {
    const { page } = await openedJob(`${FIRST}&stage=run`)
    await page
      .getByText(/A ball gap from 0\.48\smm to 2\.48\smm is good\. A smaller one is good only if the last ball goes in/)
      .first()
      .waitFor()
    const before = await wordsOf(page.locator('.summary'))
    await page.locator('[name=grooveScatter]').fill('0,02')
    await calm(page)
    expect(await wordsOf(page.locator('.summary'))).not.toBe(before)
    await page.locator('[name=load]').fill('20')
    await page.getByText('Load it with at most').waitFor()
    expect(await page.locator('.warnings', { hasText: 'marks' }).count()).toBe(0)
  })

  test('will it run: what the answers warn of is on the page, and again at the care', async () => {
    const { page } = await openedJob(`${FIRST}&stage=run&load=2000&grooveScatter=0.3`)
    const warnings = page.locator('.warnings')
    await warnings.getByText('The inner ring binds in').waitFor()
    await warnings.getByText('this load leaves marks').waitFor()
    await stage(page, 'Care')
    await warnings.getByText('this load leaves marks').waitFor()
    expect(await warnings.getByText('The inner ring binds in').count()).toBe(0)
  })

  test.each(ARRANGEMENT_NAMES)(
    'will it run: of a %s bearing, a load that is too much comes first, in the colour of a fault',
    async (arrangement) => {
      const { page } = await openedJob(`${FIRST}&arrangement=${arrangement}&stage=run&load=20000`)
      await page.locator('.summary.fault').waitFor()
      await calm(page)
      const first = page.locator('.summary').first()
      expect(await wordsOf(first)).toMatch(/^Your load of .* is too much, .*: do not load it so/)
      const fault = await colourOf(first)
      expect(await colourOf(page.locator('.warnings li').first())).toBe(fault)
      await page.locator('[name=load]').fill('5')
      await calm(page)
      expect(await page.locator('.result .fault').allTextContents()).toEqual([])
      expect(await colourOf(page.locator('.summary').first())).not.toBe(fault)
      expect(await page.locator('.cautions').textContent()).toMatch(/Never drive it with a drill or a motor\..*people/)
    },
  )

  test('of a cage nothing is asked that only a full ring of balls has, and the page says why', async () => {
    const { page, faults } = await openedJob(`${FIRST}&arrangement=caged&stage=balls&lot=${LOT}`)
    await page.getByText('The cage keeps the balls apart').waitFor()
    expect(await page.locator('[name=lot]').count()).toBe(0)
    await stage(page, 'Bearing')
    await page.getByText('find a bearing that').click()
    await page.locator('[name=findSizes]').fill('14; 16')
    await page.locator('[name=findCounts]').fill('8; 9')
    await page.locator('[name=findOutside]').fill('140')
    await page.locator('.found li').first().waitFor()
    await calm(page)
    expect(await page.locator('#size-table, .refusals').count()).toBe(0)
    expect(faults).toEqual([])
  })

  test.each([
    { what: 'an answer', path: '**/v1/tolerance-check', name: 'Will it run?', shown: '.result figure' },
    { what: 'a drawing', path: '**/v1/drawings/assembly.html?**', name: 'Bearing', shown: '#drawing svg' },
  ])('a service that has too much to do is asked again, when it says: $what', async ({ path, name, shown }) => {
    // A service worker would ask by itself, past the route below.
    const { page } = await openedJob(`${FIRST}&stage=care`, { serviceWorkers: 'block' })
    let asked = 0
    await page.route(path, (route) => {
      asked += 1
      if (asked > 2) return route.continue()
      const headers = { 'retry-after': '1', 'content-type': 'application/problem+json' }
      return route.fulfill({ status: 503, headers, body: '{"detail":"Too much to do."}' })
    })
    await stage(page, name)
    await page.locator(shown).first().waitFor()
    expect(asked).toBe(3)
  })

  test.each([
    ['caged', 'The cage keeps the balls apart, so no gap has to fit'],
    ['roller', 'The roller gap fits in'],
    ['thrust', 'the space between the plates alone fits'],
  ])('will it run: a %s bearing, too', async (arrangement, words) => {
    const { page } = await openedJob(`${FIRST}&arrangement=${arrangement}&stage=run`)
    await page.locator('.result', { hasText: words }).waitFor()
    expect((await page.locator('.lead').textContent())?.includes('how often')).toBe(arrangement !== 'caged')
    await page.locator('[name=load]').fill('x')
    expect(await page.getByText('Enter a number from').count()).toBe(1)
  })

  test.each(['radial', 'roller', 'thrust', 'caged'])(
    'will it run: each field for a %s bearing changes a question',
    async (arrangement) => {
      const { page } = await openedJob(`${FIRST}&arrangement=${arrangement}&stage=run`, { serviceWorkers: 'block' })
      const asked: (string | null)[] = []
      page.on('request', (request) => asked.push(request.method() === 'POST' ? request.postData() : null))
      await calm(page)
      const names = await page
        .locator('.columns input')
        .evaluateAll((inputs) => inputs.map((input) => input.getAttribute('name')))
      expect(names.length).toBeGreaterThan(0)
      for (const name of names) {
        asked.length = 0
        await page.locator(`[name=${name}]`).fill('0.37')
        await calm(page)
        expect(
          asked.filter((body) => body?.includes('0.37')),
          name ?? '',
        ).not.toEqual([])
      }
    },
  )

  test('will it run: no column of the spread has the colour of a good one beyond the lines, which have their unit', async () => {
    const { page } = await openedJob(`${FIRST}&stage=run`)
    const figure = page.locator('.result figure')
    await figure.waitFor()
    const lines = await figure
      .locator('.end')
      .evaluateAll((paths) => paths.map((path) => path.getBoundingClientRect().x))
    const [low = Number.NaN, high = Number.NaN] = lines
    const good = await figure
      .locator('rect.part-1:not(.maybe)')
      .evaluateAll((columns) =>
        columns.map((column) => column.getBoundingClientRect()).map(({ x, width }) => [x, x + width]),
      )
    expect(good.length).toBeGreaterThan(3)
    for (const [from = Number.NaN, to = Number.NaN] of good) {
      expect(from).toBeGreaterThan(low - 1)
      expect(to).toBeLessThan(high + 1)
    }
    for (const text of await figure.locator('text').allTextContents()) expect(text).toMatch(/\smm$/)
  })

  test('sheets: one button each, for this bearing, and each opens', async () => {
    const { at, page } = await openedJob(`${FIRST}&making.name=Tide+clock&stage=sheets`)
    await page.getByText('Letter', { exact: true }).click()
    const links = await page.locator('.sheet a.go').all()
    expect(links).toHaveLength(12)
    for (const link of links) {
      const href = (await link.getAttribute('href')) ?? ''
      expect(href).toContain('paper=letter')
      expect((await ask(at + href)).status).toBe(200)
    }
  })

  test('a code leads back to this bearing, and pages of others show it from there, where the service knows its own address', async () => {
    const { at, page } = await openedJob(`${FIRST}&stage=sheets&outer=o12`)
    expect(await page.locator('.code svg').getAttribute('aria-label')).toContain('12 wooden balls of 16 mm')
    // A code of 300 bytes has at most 61 modules a side, and a quiet zone of 4 round it (ISO/IEC 18004).
    const side = Number((await page.locator('.code svg').getAttribute('viewBox'))?.split(' ').at(-1))
    expect(side).toBeLessThanOrEqual(61 + 8)
    const snippets = async () => {
      const areas = await page.locator('.embed textarea').all()
      return Promise.all(areas.map((area) => area.inputValue()))
    }
    for (const snippet of await snippets()) expect(snippet).toContain(`src="${PUBLIC_URL}/`)
    await page.evaluate("document.querySelector('meta[name=public-url]').content = ''")
    await stage(page, 'Bearing')
    await stage(page, 'Sheets')
    expect(await page.locator('.code').count()).toBe(0)
    for (const snippet of await snippets()) expect(snippet).toContain(`src="${at}/`)
  })

  test('what a browser prints of the page says that it is not to scale', async () => {
    const { page } = await openedJob(FIRST)
    expect(await page.locator('.print-only').isVisible()).toBe(false)
    await page.emulateMedia({ media: 'print' })
    expect(await page.locator('.print-only').isVisible()).toBe(true)
    expect(await page.locator('nav').isVisible()).toBe(false)
  })

  test('how a bearing is held is chosen where it is put together: what is not glued can be opened again', async () => {
    const { page } = await openedJob(`${FIRST}&stage=assembly`)
    const mount = page.locator('.operations > li', { hasText: 'Mount it' })
    await mount.getByText('nobody opens it again').waitFor()
    const holds = ['shaft', 'housing'].map((at) => page.locator(`[name="making.mounting.${at}.hold"] option`).first())
    for (const hold of holds) expect(await hold.textContent()).toBe('usual: glued')
    await page.locator('[name="making.mounting.shaft.hold"]').selectOption('screwed')
    await mount.getByText('screwed on the shaft').first().waitFor()
    expect(await mount.getByText('nobody opens it again').count()).toBe(0)
    await stage(page, 'Bearing')
    expect(await page.getByText('Also stated').count()).toBe(0)
  })

  test('the last steps: how it is put together, and how it is kept', async () => {
    const { page } = await openedJob(`${FIRST}${YEAR}&load=20&stage=assembly`)
    await page.getByText('run it in by hand').waitFor()
    expect(await page.locator('.operations > li').count()).toBeGreaterThan(2)
    expect(await wordsOf(page.locator('.operations h3').first())).toContain('finish')
    await stage(page, 'Care')
    await page.getByText(/the bearing runs from [\d.]+\s%/).waitFor()
    await page.getByText('Load it with at most').waitFor()
  })
})

describe('nothing on the page comes from another bearing', () => {
  /** What a hand may do next, at whichever stage. */
  const MOVES: readonly ((page: Page) => Promise<unknown>)[] = [
    (page) => page.getByLabel('one ball more').click(),
    (page) => page.locator('[name=count]').fill('20'),
    (page) => page.locator('[name=diameter]').fill('20'),
    (page) => page.locator('[name=bore]').fill('60'),
    (page) => page.locator('[name=bore]').fill('14'),
    (page) => page.getByText('glass', { exact: true }).click(),
    (page) => page.getByText('inches', { exact: true }).click(),
    (page) => page.locator('[name=innerRing]').fill('33'),
    (page) => page.getByRole('button', { name: 'Undo' }).click(),
    (page) => page.getByRole('button', { name: 'tide clock of Larkmoor' }).click(),
  ]
  const whole = (page: Page) => wordsOf(page.locator('#page'))

  /** A tab in which every visit is a first one: what a tab keeps for itself is gone before the page looks for it. */
  async function forgetfulTab(page: Page): Promise<Page> {
    const tab = await page.context().newPage()
    await tab.addInitScript('sessionStorage.clear()')
    return tab
  }

  type Beside = { readonly page: Page; readonly fresh: Page; readonly at: string }

  /** Every stage of these names shows what it shows on a fresh page: the address is another, so that all of it loads anew. */
  async function isFresh({ page, fresh, at }: Beside, names: readonly string[], after: string): Promise<void> {
    for (const name of names) {
      await stage(page, name)
      await calm(page)
      await fresh.goto(`${at}/?${encodeURIComponent(`${after}, ${name}`)}${new URL(page.url()).hash}`)
      await fresh.locator('h1').waitFor()
      await calm(fresh)
      expect(await whole(page), `${after}, ${name}`).toBe(await whole(fresh))
    }
  }

  test('by whatever way a bearing was reached, every stage shows what a fresh page shows', async () => {
    const { at, page } = await openedJob(`${FIRST}&stage=lathe&outer=o12`)
    const fresh = await forgetfulTab(page)
    for (const [index, move] of MOVES.entries()) {
      await stage(page, 'At the lathe')
      if (index % 2 === 0) await page.locator('#advice .summary, #advice .refusals, main > .fault').first().waitFor()
      const advice = await page.locator('#advice .summary').allTextContents()
      await stage(page, 'Bearing')
      await move(page)
      await stage(page, 'At the lathe')
      // Even before there is an answer.
      for (const old of advice) expect(await page.locator('#advice .summary').allTextContents()).not.toContain(old)
      // Every stage after some of the moves: all of them after all would take minutes.
      const names = Object.values(STAGE_NAMES).filter((name, at) => name === 'At the lathe' || (at + index) % 3 === 0)
      await isFresh({ page, fresh, at }, names, `move ${index}`)
    }
  })

  /** The answers of the three fields that are not of the bearing: a search, a year by its months, other balls on hand. */
  const OTHER_FIELDS = [
    { at: 'Bearing', answers: '.found li', fields: { findSizes: '14; 20', findOutside: '120', bore: '14' } },
    { at: 'Wood and place', answers: '.result li', fields: { 'humidity-7': '70', 'temperature-7': '30' } },
    { at: 'At the lathe', answers: '.rescue li, #advice .summary', fields: { onHand: '16.5 x 12; 17 x 20' } },
  ] as const

  test('nor from what was sought, from another year, or from other balls on hand', async () => {
    const sought = 'findSizes=14;16&findCounts=10;12&findOutside=110'
    const { at, page } = await openedJob(`${FIRST}${MONTHS}&outer=g8&onHand=17+x+12&${sought}`)
    const fresh = await forgetfulTab(page)
    for (const { at: name, answers, fields } of OTHER_FIELDS) {
      for (const [field, text] of Object.entries(fields)) {
        await stage(page, name)
        await page.locator(answers).first().waitFor()
        await page.locator(`[name=${field}]`).fill(text)
        // Even before there is an answer.
        expect(await page.locator(answers).count(), field).toBe(0)
        await isFresh({ page, fresh, at }, [name], field)
      }
    }
  })
})

test('that the service is out of reach is said once, and what harms is still said', async () => {
  const { page } = await openedJob(FIRST)
  await page.route('**/v1/**', (route) => route.abort())
  await page.goto(`${page.url().replace(/#.*/, '')}?away#${FIRST}${YEAR}`)
  for (const name of Object.values(STAGE_NAMES)) {
    await stage(page, name)
    await page.locator('#bearing-name', { hasText: 'The service cannot be reached' }).waitFor()
    await calm(page)
    expect(await page.getByText('cannot be reached').count(), name).toBe(1)
    await page.getByText('Wood dust harms').waitFor()
  }
  // A bearing that the page works out by itself is there, and so are its questions to the service.
  await page.goto(`${page.url().replace(/#.*/, '')}2#${FIRST}&load=20&lot=${LOT}`)
  for (const name of Object.values(STAGE_NAMES).slice(2)) {
    await stage(page, name)
    await page.getByText('cannot be reached').waitFor()
    await calm(page)
    expect(await page.getByText('cannot be reached').count(), name).toBe(1)
  }
  await stage(page, 'Sheets')
  expect(await page.locator('.sheet .out').count()).toBe(12)
  await page.getByText('Sheets are dimmed').waitFor()
})

test('what is only good to know is called so on every step, and never a warning', async () => {
  const { page } = await openedJob(`${FIRST}&balls.material=wood`)
  const headings = await page.locator('.warnings h3').allTextContents()
  expect(headings).toEqual(['Good to know'])
  for (const name of Object.values(STAGE_NAMES).slice(1)) {
    await stage(page, name)
    await page.getByText('There is 1 note about this bearing').waitFor()
  }
})

test('what the first step warns of is told at every later one, the gravest in full', async () => {
  const { page } = await openedJob(`${FIRST}&width=6`)
  const all = await page.locator('.warnings li:not(.note)').count()
  expect(all).toBeGreaterThan(1)
  for (const name of Object.values(STAGE_NAMES).slice(1)) {
    await stage(page, name)
    await page.getByText(`There are ${all} warnings about this bearing`).waitFor()
    await page.locator('.carried li').first().waitFor()
  }
  await page.getByRole('button', { name: 'Read them at' }).click()
  await page.locator('.warnings li').first().waitFor()
  expect(await page.locator('.carried').count()).toBe(0)
})

describe('the job', () => {
  test('comes back by Undo, by its link, and in a new tab', async () => {
    const { at, page } = await openedJob(FIRST)
    await page.getByLabel('one ball more').click()
    await page.getByLabel('larger bore').click()
    await page.getByRole('button', { name: 'Undo' }).click()
    expect(await wordsOf(page.locator('#bearing-name'))).toBe('13 wooden balls of 16 mm, bore 12 mm')
    const other = await page.context().newPage()
    await other.goto(at)
    expect(await wordsOf(other.locator('#bearing-name'))).toBe('13 wooden balls of 16 mm, bore 12 mm')
    // The two do not change each other, but this one says what the other has done.
    expect(await wordsOf(page.locator('.other'))).toBe('')
    await other.getByLabel('larger bore').click()
    await page.getByText('Another tab of this browser').waitFor()
    expect(await wordsOf(page.locator('#bearing-name'))).toContain('bore 12 mm')
    await page.getByRole('button', { name: 'Take over' }).click()
    expect(await wordsOf(page.locator('#bearing-name'))).toContain('bore 13 mm')
    expect(await wordsOf(page.locator('.other'))).toBe('')
    await page.getByRole('button', { name: 'Undo' }).click()
    await page.reload()
    expect(await wordsOf(page.locator('#bearing-name'))).toContain('bore 12 mm')
  })

  test('a link that is followed on the open page is shown, and Undo leads back', async () => {
    const { page } = await openedJob()
    await page.evaluate("location.hash = 'v=1&units=in&balls.count=10&balls.diameter=5/8&bore=1/2&outer=zz'")
    await page.getByText('10 wooden balls of 5/8 in, bore 1/2 in').waitFor()
    expect(await page.getByText('could not be read').count()).toBe(1)
    await page.getByRole('button', { name: 'Undo' }).click()
    // Its year is worked out again.
    await calm(page)
    expect(await wordsOf(page.locator('#bearing-name'))).toContain('12 wooden balls of 16 mm')
  })
})

describe('for everyone', () => {
  const STATES: Readonly<Record<string, string>> = {
    'no bearing': `${FIRST}&balls.count=300`.replace('balls.count=12&', ''),
    'a refusal': FIRST.replace('bore=12', 'bore=60'),
    ...Object.fromEntries(Object.keys(STAGE_NAMES).map((name) => [name, `${FIRST}&stage=${name}`])),
    'a year': `${FIRST}${YEAR}&stage=place`,
    'twelve months': `${FIRST}${MONTHS}&stage=place`,
    'a bearing sought': `${FIRST}&findSizes=14;16&findCounts=10;12&findOutside=110`,
    'balls on hand': `${FIRST}&stage=lathe&outer=g8&onHand=17+x+12`,
    'balls laid round': `${FIRST}&stage=balls&lot=${LOT}`,
    'a load': `${FIRST}&stage=run&load=20`,
    'a cut': `${FIRST}&stage=lathe&outer=o9~s0.6;o12`,
    'too deep': `${FIRST}&stage=lathe&outer=g8`,
    'the inner ring': `${FIRST}&stage=lathe&ring=inner&outer=g1&inner=y0.1`,
  }

  test('the checker finds nothing in any state, in light colours and in dark', async () => {
    const { at, page } = await openedJob()
    for (const [name, fragment] of Object.entries(STATES)) {
      await page.emulateMedia({ colorScheme: 'light' })
      await page.goto(`${at}/?${name.replaceAll(' ', '-')}#${fragment}`)
      await page.locator('h1').waitFor()
      await calm(page)
      expect(await violations(page), name).toEqual([])
      await page.emulateMedia({ colorScheme: 'dark' })
      expect(await violationsOfColour(page), `${name}, dark`).toEqual([])
    }
  })

  test('by keyboard alone', async () => {
    const { page } = await openedJob()
    await page.locator('[name=size][value="16"]').focus()
    await page.keyboard.press('ArrowRight')
    expect(await page.locator('[name=diameter]').inputValue()).toBe('20')
    await page.locator('[name=outerRing]').focus()
    await page.keyboard.press('ArrowRight')
    expect(await wordsOf(page.locator('.slide output').first())).toBe('21 %')
    await page.getByRole('navigation').getByRole('button', { name: 'At the lathe' }).focus()
    await page.keyboard.press('Enter')
    await page.locator('[name=value]').focus()
    await page.keyboard.type('13')
    await page.keyboard.press('Enter')
    expect(await page.locator('#read-now li').count()).toBe(1)
  })

  test('on a screen on end, at twice the size of 1280 pixels, and on a phone, nothing is cut off, and every target takes a finger', async () => {
    const { at, page } = await openedJob()
    for (const name of Object.keys(STAGE_NAMES)) {
      await page.goto(`${at}/?${name}#${FIRST}&stage=${name}&outer=o12`)
      await page.locator('h1').waitFor()
      await calm(page)
      for (const viewport of [
        { width: 1080, height: 1920 },
        { width: 640, height: 450 },
        { width: 390, height: 844 },
      ]) {
        await page.setViewportSize(viewport)
        expect(await page.evaluate('document.documentElement.scrollWidth'), name).toBeLessThanOrEqual(viewport.width)
        const targets = await boxesOf(page.locator('button:visible, .pick span:visible, .go:visible, summary:visible'))
        for (const { text, width, height } of targets) expect(Math.min(width, height), text).toBeGreaterThanOrEqual(44)
      }
    }
  })
})

test.each(['radial', 'roller', 'thrust', 'caged'])(
  'the sizes of a bearing of kind %s are no wider than a phone',
  async (kind) => {
    const { page } = await openedJob(
      `v=1&units=mm&balls.count=24&balls.diameter=16&bore=40&finishAllowance=0.05&arrangement=${kind}`,
      {
        viewport: { width: 360, height: 800 },
      },
    )
    await page.locator('#sizes-to-cut').waitFor()
    await calm(page)
    expect(await page.evaluate('document.documentElement.scrollWidth')).toBe(360)
  },
)

describe('what is served', () => {
  test('the page is of one piece, and may run its own scripts and nothing else', async () => {
    const page = await ask(await kioskAddress())
    expect(page.headers['content-type']).toBe('text/html; charset=utf-8')
    expect(page.headers['content-security-policy']).toMatch(
      /^default-src 'none'; style-src 'sha256-[^']+'; script-src 'sha256-[^']+' 'sha256-[^']+'; /,
    )
    expect(page.text).not.toContain('JobStore')
  })

  test.each(['/', '/service-worker.js'])('%s is checked at every visit, and sent only when it is new', async (path) => {
    const at = (await kioskAddress()) + path
    const { headers } = await ask(at)
    expect(headers['cache-control']).toBe('no-cache')
    const again = await ask(at, { headers: { 'if-none-match': String(headers['etag']) } })
    expect(again).toMatchObject({ status: 304, text: '' })
  })

  test.each(['/kiosk/main.tsx', '/src/server.ts', '/package.json', '/..%2fpackage.json'])(
    'no file of the project can be had: %s',
    async (path) => {
      expect((await ask((await kioskAddress()) + path)).status).toBe(404)
    },
  )
})
